using System.Globalization;

namespace SunLessons.Logs;

/// <summary>A span of decimal years.</summary>
/// <param name="From">First decimal year.</param>
/// <param name="To">Last decimal year.</param>
public readonly record struct YearSpan(double From, double To)
{
    /// <summary>Such as <c>1931 to 1938</c>: the years in which it begins and ends.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Math.Floor(From):0} to {Math.Floor(To):0}");
}
