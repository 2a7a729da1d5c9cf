using System.Globalization;

namespace SunLessons.Uncertainty;

/// <summary>An interval that holds the quantity with a stated probability (JCGM 101, 3.12).</summary>
/// <param name="Low">Lower end, in the unit of the quantity.</param>
/// <param name="High">Upper end, in the unit of the quantity.</param>
/// <param name="Probability">The coverage probability, more than 0 and less than 1.</param>
public readonly record struct CoverageInterval(double Low, double High, double Probability)
{
    /// <summary>Upper end less lower end, in the unit of the quantity.</summary>
    public double Width => High - Low;

    /// <summary>Such as <c>1.084 to 1.384 (95 %)</c>.</summary>
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"{Low:G4} to {High:G4} ({Probability * 100.0:0.##} %)");
}
