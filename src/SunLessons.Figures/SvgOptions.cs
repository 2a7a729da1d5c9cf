namespace SunLessons.Figures;

/// <summary>How large an SVG is drawn, and with what.</summary>
public sealed record SvgOptions
{
    /// <summary>The width in CSS pixels, 240 to 4000; 640 unless said.</summary>
    public double Width { get; init; } = 640;

    /// <summary>The height in CSS pixels aimed at, 200 to 4000; 400 unless said. Figures of equal scales take what they need.</summary>
    public double Height { get; init; } = 400;

    /// <summary>The letter size in CSS pixels, 8 to 64; 16 unless said.</summary>
    public double LetterSize { get; init; } = 16;

    /// <summary>Whether all lines are black, for paper; otherwise the palette is used. Dashes and markers tell lines apart in both.</summary>
    public bool BlackOnly { get; init; }

    /// <summary>What ids begin with; give another one to every drawing of a page. Null makes one from the figure's words.</summary>
    public string? IdPrefix { get; init; }
}
