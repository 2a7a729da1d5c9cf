namespace SunLessons.Figures;

/// <summary>The dashes of a line, so that no line is known by its colour alone.</summary>
public enum LineStyle
{
    /// <summary>Unbroken.</summary>
    Solid,

    /// <summary>Long dashes.</summary>
    Dash,

    /// <summary>Dots.</summary>
    Dot,

    /// <summary>A dash and a dot in turn.</summary>
    DashDot,
}
