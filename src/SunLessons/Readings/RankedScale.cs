using NodaTime;

namespace SunLessons.Readings;

/// <summary>One latitude scale of a dial, judged for a place.</summary>
/// <param name="Scale">The latitude the scale was made for.</param>
/// <param name="FastMinutesNow">How fast (positive) or slow (negative) it shows at the moment asked about, minutes; null when it shows nothing then.</param>
/// <param name="WorstFastMinutes">The largest error of the year, fast positive, minutes; null when the scale cannot be used here at all.</param>
/// <param name="WorstOn">The date of the largest error, universal time; null with it.</param>
/// <param name="WorstAt">The true solar time of the largest error; null with it.</param>
/// <param name="Why">When the scale cannot be used here, the reason in one sentence; else null.</param>
public sealed record RankedScale(
    Latitude Scale, double? FastMinutesNow, double? WorstFastMinutes, LocalDate? WorstOn, DialTime? WorstAt, string? Why)
{
    /// <summary>The size of the largest error of the year, minutes, or infinity when the scale cannot be used.</summary>
    public double WorstSizeMinutes => WorstFastMinutes is { } minutes ? Math.Abs(minutes) : double.PositiveInfinity;
}
