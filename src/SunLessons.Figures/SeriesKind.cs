namespace SunLessons.Figures;

/// <summary>How the values of a series are drawn.</summary>
public enum SeriesKind
{
    /// <summary>A line through the points in their order; it is broken where a value is not a number.</summary>
    Line,

    /// <summary>A marker at each point and no line.</summary>
    Points,

    /// <summary>A line with a marker at each point.</summary>
    LineWithPoints,

    /// <summary>A bar from zero to each value.</summary>
    Bars,

    /// <summary>A line with the space between it and zero lightly filled.</summary>
    Area,

    /// <summary>A closed outline, lightly filled: the edge of a plate, a shadow.</summary>
    Shape,
}
