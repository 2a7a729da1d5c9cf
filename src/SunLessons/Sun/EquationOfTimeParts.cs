namespace SunLessons.Sun;

/// <summary>
/// The equation of time taken apart into its two causes. Each part is signed like the whole: positive when it puts the dial ahead of the clock.
/// </summary>
/// <param name="FromOrbit">From the oval orbit: mean longitude of the Sun minus its longitude. Once a year, 7.65 minutes at most in our age.</param>
/// <param name="FromTilt">From the tilt: longitude along the ecliptic minus right ascension along the equator. Twice a year, 9.86 minutes at most.</param>
public readonly record struct EquationOfTimeParts(EquationOfTime FromOrbit, EquationOfTime FromTilt)
{
    /// <summary>The sum of the two.</summary>
    public EquationOfTime Whole => EquationOfTime.FromSeconds(FromOrbit.Seconds + FromTilt.Seconds);

    /// <summary>
    /// The parts of the real equation of time: their sum is <see cref="ApparentSun.EquationOfTime"/> itself. The orbit's part holds what the Moon and
    /// the planets do to the Earth's path (up to 2 s) and some tenths of a second of nutation and of definition.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">The instant lies outside the years 1900 to 2100.</exception>
    public static EquationOfTimeParts Of(SunInstant instant)
    {
        var sun = SolarEphemeris.At(instant);
        var tilt = TiltPartDegrees(sun.ApparentLongitude.Radians, sun.TrueObliquity.Radians) * SecondsPerDegree;
        return new EquationOfTimeParts(EquationOfTime.FromSeconds(sun.EquationOfTime.Seconds - tilt), EquationOfTime.FromSeconds(tilt));
    }

    /// <summary>
    /// The parts as they would be with an orbit and a tilt of one's own: each real part, changed by as much as Kepler's two bodies change it when their shape
    /// goes from the Earth's to this one. With <see cref="OrbitShape.OfTheEarth"/> they are the real parts and sum to the whole. What Moon, planets and nutation do
    /// to the Earth (<see cref="BeyondTwoBodies"/>, 2.6 s at most) stays as it is, whatever the shape: it is all that is left with a round orbit
    /// and an upright axis.
    /// </summary>
    /// <param name="instant">When.</param>
    /// <param name="shape">The orbit and the tilt.</param>
    /// <exception cref="ArgumentOutOfRangeException">The instant lies outside the years 1900 to 2100.</exception>
    public static EquationOfTimeParts Of(SunInstant instant, OrbitShape shape)
    {
        var (real, own, wanted) = (Of(instant), OfTwoBodies(instant, OrbitShape.OfTheEarth(instant)), OfTwoBodies(instant, shape));
        return new EquationOfTimeParts(
            EquationOfTime.FromSeconds(real.FromOrbit.Seconds - own.FromOrbit.Seconds + wanted.FromOrbit.Seconds),
            EquationOfTime.FromSeconds(real.FromTilt.Seconds - own.FromTilt.Seconds + wanted.FromTilt.Seconds));
    }

    /// <summary>
    /// The parts of two bodies and Kepler's law, nothing else. For <see cref="OrbitShape.OfTheEarth"/> the sum is within 2.6 s of the real equation of time on
    /// every day of 1900 to 2100 (0.73 s RMS); no orbit of two bodies comes nearer, for the rest is the work of other bodies.
    /// </summary>
    /// <param name="instant">When; any year of our calendar, though the mean longitude is fitted to a few centuries around 2000.</param>
    /// <param name="shape">The orbit and the tilt.</param>
    public static EquationOfTimeParts OfTwoBodies(SunInstant instant, OrbitShape shape)
    {
        var meanLongitude = OrbitShape.MeanLongitudeDegrees(instant);
        var anomaly = Angle.FromDegrees(meanLongitude - shape.PerihelionLongitudeDegrees(instant)).AroundZero().Radians;
        var centre = TrueAnomaly(anomaly, shape.Eccentricity) - anomaly;
        var longitude = Angle.FromDegrees(meanLongitude).Radians + centre;
        return new EquationOfTimeParts(
            EquationOfTime.FromSeconds(-Angle.FromRadians(centre).Degrees * SecondsPerDegree),
            EquationOfTime.FromSeconds(TiltPartDegrees(longitude, shape.Tilt.Radians) * SecondsPerDegree));
    }

    /// <summary>
    /// What Moon, planets and nutation add to the two parts of the Earth's own two bodies: the real equation of time less those, −2.6 to
    /// +2.6 s in 1900 to 2100. The Moon swings the Earth about their common centre (6.4″ or 0.43 s each month), the planets pull at its
    /// path (most of the rest, over years); of the nutation little is seen, for it carries the equinox and the Sun's longitude alike.
    /// The total is measured; its split among these causes is from memory and was not measured cause by cause.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">The instant lies outside the years 1900 to 2100.</exception>
    public static EquationOfTime BeyondTwoBodies(SunInstant instant) => EquationOfTime.FromSeconds(
        SolarEphemeris.At(instant).EquationOfTime.Seconds - OfTwoBodies(instant, OrbitShape.OfTheEarth(instant)).Whole.Seconds);

    // A day of 86400 s is 360 degrees.
    private const double SecondsPerDegree = 240.0;

    // tan(right ascension) = cos(tilt) tan(longitude), written for the difference so that no quadrant can be missed.
    private static double TiltPartDegrees(double longitude, double tilt)
    {
        var (sin, cos) = Math.SinCos(longitude);
        var cosTilt = Math.Cos(tilt);
        return Angle.FromRadians(Math.Atan2((1.0 - cosTilt) * sin * cos, cos * cos + cosTilt * sin * sin)).Degrees;
    }

    // Kepler's equation M = E - e sin E by Newton's rule: for e up to 0.05 three steps reach the last place.
    private static double TrueAnomaly(double meanAnomaly, double e)
    {
        var eccentric = meanAnomaly + e * Math.Sin(meanAnomaly);
        for (var i = 0; i < 4; i++)
        {
            eccentric -= (eccentric - e * Math.Sin(eccentric) - meanAnomaly) / (1.0 - e * Math.Cos(eccentric));
        }

        var (sin, cos) = Math.SinCos(eccentric / 2.0);
        return 2.0 * Math.Atan2(Math.Sqrt(1.0 + e) * sin, Math.Sqrt(1.0 - e) * cos);
    }
}
