namespace SunLessons.Sun;

/// <summary>Constants of the Sun's position, each once, with its source.</summary>
internal static class AstronomicalConstants
{
    /// <summary>The epoch J2000.0, a Julian date.</summary>
    public const double J2000 = 2451545.0;

    /// <summary>Seconds in a day.</summary>
    public const double SecondsPerDay = 86400.0;

    /// <summary>Days in a Julian century.</summary>
    public const double DaysPerCentury = 36525.0;

    /// <summary>Radians in one arcsecond.</summary>
    public const double RadiansPerArcSecond = Math.PI / 648000.0;

    /// <summary>Astronomical unit in metres, exact (IAU 2012 Resolution B2).</summary>
    public const double AstronomicalUnitMeters = 149597870700.0;

    /// <summary>Speed of light in metres per second, exact (SI).</summary>
    public const double LightMetersPerSecond = 299792458.0;

    /// <summary>Light time for one astronomical unit, days.</summary>
    public const double LightDaysPerAu = AstronomicalUnitMeters / LightMetersPerSecond / SecondsPerDay;

    /// <summary>The Sun's semidiameter at one astronomical unit, arcseconds (A. Auwers 1891; still the Astronomical Almanac's).</summary>
    public const double SemidiameterAtOneAuArcSeconds = 959.63;

    /// <summary>Equatorial radius of the WGS 84 ellipsoid, metres (NIMA TR8350.2).</summary>
    public const double EarthRadiusMeters = 6378137.0;

    /// <summary>Flattening of the WGS 84 ellipsoid (NIMA TR8350.2).</summary>
    public const double EarthFlattening = 1.0 / 298.257223563;

    /// <summary>Rate of the Earth's turning, radians per SI second (IERS Conventions 2010, table 1.2).</summary>
    public const double EarthRotationRadiansPerSecond = 7.292115e-5;

    /// <summary>A full turn in radians.</summary>
    public const double Turn = 2.0 * Math.PI;
}
