namespace SunLessons.Figures.Layout;

/// <summary>How one series of a figure looks after everything left open was decided by its order.</summary>
internal readonly record struct Look(Ink Ink, LineStyle Line, MarkerShape Marker, double Width)
{
    public static IReadOnlyList<Look> Of(Figure figure)
    {
        var lines = figure.Series.Count(HasLine);
        var looks = new List<Look>();
        var i = 0;
        foreach (var series in figure.Series)
        {
            // An outline is the ground the rest stands on: it is black and takes nothing from the order.
            looks.Add(series.Kind == SeriesKind.Shape
                ? new Look(series.Ink ?? Ink.Black, series.Line ?? LineStyle.Solid, MarkerShape.None, series.Strong ? 4 : 2)
                : new Look(
                    series.Ink ?? (i < 4 ? (Ink)i : Ink.Black),
                    series.Line ?? (HasLine(series) ? (LineStyle)(i % 4) : LineStyle.Solid),
                    series.Marker ?? DefaultMarker(series, i, lines),
                    series.Strong ? 4 : 2.5));
            i += series.Kind == SeriesKind.Shape ? 0 : 1;
        }

        return looks;
    }

    private static bool HasLine(Series series) => series.Kind is SeriesKind.Line or SeriesKind.LineWithPoints or SeriesKind.Area;

    private static MarkerShape DefaultMarker(Series series, int order, int lines) => series.Kind switch
    {
        SeriesKind.Points or SeriesKind.LineWithPoints => (MarkerShape)(1 + order % 4),

        // A line alone needs no marker to be known; several do, where they have enough points to carry some.
        SeriesKind.Line when lines > 1 && series.Count > 8 => (MarkerShape)(1 + order % 4),
        _ => MarkerShape.None,
    };
}
