namespace SunLessons.Figures.Layout;

/// <summary>From where to where an axis runs.</summary>
internal readonly record struct Extent(double Min, double Max)
{
    public double Length => Max - Min;

    public double Middle => (Min + Max) / 2;

    /// <summary>Takes the ends the axis gives; those it leaves open come from the data, with room, at a round value.</summary>
    public static Extent Of(Figure figure, bool across)
    {
        var axis = across ? figure.X : figure.Y;
        if (axis.Kind == AxisKind.Names)
        {
            return new Extent(axis.Min ?? -0.6, axis.Max ?? axis.Names.Length - 0.4);
        }

        var (least, most) = axis is { Min: not null, Max: not null } ? (0, 0) : Drawn(figure, across);
        var low = axis.Min ?? (least <= most ? least : 0);
        var high = axis.Max ?? (least <= most ? most : low + 1);
        if (high <= low)
        {
            // One value only: half a unit, or a twentieth of it, to each side.
            var half = Math.Max(0.5, Math.Abs(low) * 0.05);
            (low, high) = (axis.Min ?? low - half, axis.Max ?? high + half);
            if (high <= low)
            {
                high = low + 1;
            }
        }

        // Words beside a point at the very top or bottom need a line's height of room there.
        var worded = figure.Notes.Length > 0 || figure.Series.Any(s => s.Kind is SeriesKind.Points or SeriesKind.Bars && s.DirectLabel.Length > 0);
        var room = (high - low) * (figure.EqualScales ? 0.06 : across ? 0.0 : worded ? 0.12 : 0.05);
        var step = Ticks.Step(axis, low, high, figure.EqualScales ? 20 : 8);
        return new Extent(
            axis.Min ?? (figure.EqualScales || across ? low - room : Math.Floor((low == 0 ? low : low - room) / step) * step),
            axis.Max ?? (figure.EqualScales || across ? high + room : Math.Ceiling((high == 0 ? high : high + room) / step) * step));
    }

    // The least and the greatest of all that is drawn along an axis, the wrong way round when nothing is. Point by point and without a list of them:
    // it is asked for every drawing, of thousands of points.
    private static (double Least, double Most) Drawn(Figure figure, bool across)
    {
        var (least, most) = (double.PositiveInfinity, double.NegativeInfinity);
        void Take(double value)
        {
            if (double.IsFinite(value))
            {
                least = Math.Min(least, value);
                most = Math.Max(most, value);
            }
        }

        foreach (var series in figure.Series)
        {
            foreach (var value in (across ? series.X : series.Y).AsSpan())
            {
                if (value < least || value > most)
                {
                    Take(value);
                }
            }
        }

        foreach (var note in figure.Notes)
        {
            Take(across ? note.X : note.Y);
        }

        foreach (var mark in figure.Marks)
        {
            if (mark.Across != across)
            {
                Take(mark.At);
            }
        }

        if (!across && figure.Series.Any(s => s.Kind is SeriesKind.Bars or SeriesKind.Area))
        {
            Take(0);
        }

        return (least, most);
    }

    /// <summary>Widens both ways to a length.</summary>
    public Extent WidenedTo(double length) => length <= Length ? this : new Extent(Middle - length / 2, Middle + length / 2);
}
