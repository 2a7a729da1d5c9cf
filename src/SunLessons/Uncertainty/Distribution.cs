namespace SunLessons.Uncertainty;

/// <summary>
/// The shape of what is known about a quantity, which turns a half-width into a standard uncertainty.
/// Source: JCGM 100:2008 (GUM), 4.3.7 and 4.3.9.
/// </summary>
public enum Distribution
{
    /// <summary>A bell about the value, given by its standard uncertainty.</summary>
    Normal,

    /// <summary>Anywhere within plus or minus a half-width, equally likely; standard uncertainty = half-width / √3.</summary>
    Uniform,

    /// <summary>Within plus or minus a half-width, the middle likelier; standard uncertainty = half-width / √6.</summary>
    Triangular,
}
