namespace SunLessons.Logs;

/// <summary>When a dial was or will be read, as far as it matters to its faults: where the Sun stood in its day and year.</summary>
/// <param name="HourAngle">The Sun's true hour angle.</param>
/// <param name="Declination">The Sun's declination.</param>
public readonly record struct LightMoment(HourAngle HourAngle, SolarDeclination Declination);
