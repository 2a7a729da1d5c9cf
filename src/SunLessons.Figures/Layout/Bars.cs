namespace SunLessons.Figures.Layout;

/// <summary>One bar in drawing units: its sides, where it stands and where it ends.</summary>
internal readonly record struct Bar(double Left, double Right, double Foot, double End)
{
    public double Middle => (Left + Right) / 2;
}

/// <summary>The bars of a series: runs of bars at the same positions stand side by side.</summary>
internal static class Bars
{
    public static IReadOnlyList<Bar> Of(PlotFrame frame, int order)
    {
        var series = frame.Figure.Series[order];
        var runs = Enumerable.Range(0, frame.Figure.Series.Length).Where(i => frame.Figure.Series[i].Kind == SeriesKind.Bars).ToArray();
        var place = Array.IndexOf(runs, order);
        var positions = series.X.Where(double.IsFinite).Order().ToArray();
        var full = positions.Zip(positions.Skip(1), (a, b) => b - a).Where(d => d > 0).DefaultIfEmpty(1).Min() * 0.72;
        var one = full / runs.Length;
        var plot = frame.Plot;
        return [.. Enumerable.Range(0, series.Count)
            .Where(i => double.IsFinite(series.X[i]) && double.IsFinite(series.Y[i]))
            .Select(i => new Bar(
                Math.Clamp(frame.PixelX(series.X[i] - full / 2 + place * one), plot.Left, plot.Right),
                Math.Clamp(frame.PixelX(series.X[i] - full / 2 + (place + 1) * one), plot.Left, plot.Right),
                Math.Clamp(frame.PixelY(0), plot.Top, plot.Bottom),
                Math.Clamp(frame.PixelY(series.Y[i]), plot.Top, plot.Bottom)))];
    }
}
