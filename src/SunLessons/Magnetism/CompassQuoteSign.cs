namespace SunLessons.Magnetism;

/// <summary>What a plain or signed number means when a source quotes a variation (magnetic declination) without a letter.</summary>
public enum CompassQuoteSign
{
    /// <summary>East is positive, west negative: today's usual rule, and this library's.</summary>
    EastPositive,

    /// <summary>West is positive, east negative: found in older tables (common practice, no source).</summary>
    WestPositive,
}
