namespace SunLessons.Sun;

/// <summary>
/// The Sun as it appears from the Earth's centre at one instant: aberration and nutation included, referred to the true equator and
/// equinox of date, without air. See <see cref="SolarEphemeris"/> for the measured accuracy.
/// </summary>
/// <param name="Instant">The instant.</param>
/// <param name="RightAscension">From the true equinox of date eastwards along the equator, 0° up to but not including 360°.</param>
/// <param name="Declination">North positive.</param>
/// <param name="EquationOfTime">
/// Apparent solar time minus mean solar time where mean solar time at Greenwich is UT1: the Greenwich apparent sidereal time less the right
/// ascension, less UT1 counted from noon. The older definition by the Sun's mean longitude at TT differs from it by up to 0.2 s.
/// </param>
/// <param name="DistanceAu">Distance of the centres of Earth and Sun, astronomical units, without light time.</param>
/// <param name="ApparentLongitude">Along the true ecliptic from the true equinox of date, 0° up to but not including 360°.</param>
/// <param name="TrueObliquity">Tilt of the true equator of date against the ecliptic.</param>
/// <param name="GreenwichApparentSiderealTime">Hour angle of the true equinox at Greenwich, 0° up to but not including 360°.</param>
public readonly record struct ApparentSun(
    SunInstant Instant,
    Angle RightAscension,
    SolarDeclination Declination,
    EquationOfTime EquationOfTime,
    double DistanceAu,
    Angle ApparentLongitude,
    Angle TrueObliquity,
    Angle GreenwichApparentSiderealTime)
{
    /// <summary>Half the width of the disc: 959.63″ at one astronomical unit (Auwers 1891).</summary>
    public Angle Semidiameter => Angle.FromArcSeconds(AstronomicalConstants.SemidiameterAtOneAuArcSeconds / DistanceAu);

    /// <summary>Hour angle seen from the Earth's centre over a meridian, afternoon positive.</summary>
    public HourAngle HourAngleAt(Longitude longitude) =>
        HourAngle.FromAngle(GreenwichApparentSiderealTime + longitude.Angle - RightAscension);
}
