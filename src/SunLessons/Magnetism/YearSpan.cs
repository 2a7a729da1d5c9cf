using System.Globalization;

namespace SunLessons.Magnetism;

/// <summary>A span of decimal years.</summary>
/// <param name="FromYear">First decimal year.</param>
/// <param name="ToYear">Last decimal year.</param>
public readonly record struct YearSpan(double FromYear, double ToYear)
{
    /// <summary>Such as <c>1931 to 1938</c>: the years in which it begins and ends.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Math.Floor(FromYear):0} to {Math.Floor(ToYear):0}");
}
