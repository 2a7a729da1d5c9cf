namespace SunLessons.Sun;

/// <summary>The Sun as a <see cref="SunTable"/> gives it: geocentric, apparent, without air.</summary>
/// <param name="Instant">The instant.</param>
/// <param name="Declination">North positive.</param>
/// <param name="EquationOfTime">Apparent less mean solar time, as <see cref="ApparentSun.EquationOfTime"/>.</param>
public readonly record struct TabulatedSun(SunInstant Instant, SolarDeclination Declination, EquationOfTime EquationOfTime)
{
    /// <summary>Hour angle seen from the Earth's centre over a meridian, afternoon positive: UT1 from noon, plus longitude, plus equation of time.</summary>
    public HourAngle HourAngleAt(Longitude longitude)
    {
        // J2000.0 is a noon, so whole days from it are noons; 86400 s are 360 degrees.
        var days = Instant.Ut1DaysFromJ2000;
        return HourAngle.FromDegrees(360.0 * (days - Math.Round(days)) + longitude.Degrees + EquationOfTime.Seconds / 240.0);
    }
}
