using NodaTime;

namespace SunLessons.Logs;

/// <summary>One reading of a log beside what the dial should have shown.</summary>
/// <param name="Observation">The reading.</param>
/// <param name="Instant">The moment, from the clock and the zone's law.</param>
/// <param name="HourAngle">The Sun's true hour angle at that moment.</param>
/// <param name="Declination">The Sun's declination at that moment.</param>
/// <param name="FastMinutes">Dial minus the Sun's true hour, minutes: positive where the dial was fast. Within 12 hours.</param>
/// <param name="Minutes">Dial minus what this dial, as it was presumed to be and stand, should show; minutes.</param>
public sealed record LogResidual(
    Observation Observation, Instant Instant, HourAngle HourAngle, SolarDeclination Declination, double FastMinutes, double Minutes);
