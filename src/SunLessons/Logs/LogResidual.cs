using NodaTime;
using SunLessons.CivilTime;

namespace SunLessons.Logs;

/// <summary>One reading of a log beside what the dial should have shown.</summary>
/// <param name="Observation">The reading.</param>
/// <param name="Instant">The moment, from the clock and the zone's law.</param>
/// <param name="Rule">The law of clocks in force then.</param>
/// <param name="HourAngle">The Sun's true hour angle at that moment.</param>
/// <param name="Declination">The Sun's declination at that moment.</param>
/// <param name="EquationOfTime">Apparent less mean time then.</param>
/// <param name="FastMinutes">Dial minus the Sun's true hour, minutes: positive where the dial was fast. Within 12 hours.</param>
/// <param name="Minutes">Dial minus what this dial, as it was presumed to be and stand, should show; minutes.</param>
public sealed record LogResidual(
    Observation Observation,
    Instant Instant,
    ClockRule Rule,
    HourAngle HourAngle,
    SolarDeclination Declination,
    EquationOfTime EquationOfTime,
    double FastMinutes,
    double Minutes)
{
    /// <summary>What was supposed to compare this reading at all, in one sentence, such as which of two moments the clock meant; null where nothing was.</summary>
    public string? Remark { get; init; }
}
