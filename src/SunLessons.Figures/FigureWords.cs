namespace SunLessons.Figures;

/// <summary>Words for a figure that nobody described: plain, but true to its numbers.</summary>
internal static class FigureWords
{
    public static string Describe(Figure figure)
    {
        var kind = figure.Series.Length == 0 ? Worded($"Empty figure")
            : figure.EqualScales ? Worded($"Drawing to scale")
            : figure.Series.Any(s => s.Kind == SeriesKind.Bars) ? Worded($"Bar chart")
            : figure.Series.All(s => s.Kind == SeriesKind.Points) ? Worded($"Points")
            : Worded($"Line graph");
        var what = figure.ShowsAxes ? Worded($" of {figure.Y.Title} against {figure.X.Title}") : "";
        var names = string.Join(", ", figure.Series.Select(s => s.Name).Where(n => n.Length > 0));
        return $"{kind}{what}: {(names.Length > 0 ? names : figure.Title)}.";
    }

    public static string Summarise(Figure figure)
    {
        var parts = figure.Series.Where(s => s.Name.Length > 0 && s.Kind != SeriesKind.Shape).Select(s => Extent(figure, s)).ToArray();
        return parts.Length == 0 ? $"{figure.Title}." : string.Join(" ", parts);
    }

    private static string Extent(Figure figure, Series series)
    {
        var drawn = Enumerable.Range(0, series.Count).Where(i => !double.IsNaN(series.X[i]) && !double.IsNaN(series.Y[i])).ToArray();
        if (drawn.Length == 0)
        {
            return Worded($"{series.Name}: nothing to draw.");
        }

        var low = drawn.MinBy(i => series.Y[i]);
        var high = drawn.MaxBy(i => series.Y[i]);
        return series.Y[low] == series.Y[high]
            ? Worded($"{series.Name}: {figure.Y.Say(series.Y[low])} at {figure.X.Say(series.X[low])}{(drawn.Length > 1 ? Worded($" and everywhere else") : "")}.")
            : Worded($"{series.Name}: from {figure.Y.Say(series.Y[low])} at {figure.X.Say(series.X[low])} to {figure.Y.Say(series.Y[high])} at {figure.X.Say(series.X[high])}.");
    }
}
