namespace SunLessons.Sun;

/// <summary>
/// The Sun as seen from a place: its centre, without air (geometric), with the parallax of the place (up to 8.8″) and its daily aberration (0.3″).
/// </summary>
/// <param name="Azimuth">From true north through east. At a pole every direction is south or north: azimuth counts from the meridian of the given longitude.</param>
/// <param name="Altitude">Geometric altitude of the centre, upwards positive; <see cref="Refraction"/> lifts it.</param>
/// <param name="HourAngle">Afternoon positive.</param>
/// <param name="Declination">Topocentric, north positive.</param>
/// <remarks>
/// Method: vector from the place on the WGS 84 ellipsoid. Measured against ERFA 2.0 at 500 random places and instants, 1900 to 2100:
/// direction in the sky 0.23″ at worst, 0.09″ RMS.
/// </remarks>
public readonly record struct SunInSky(Azimuth Azimuth, Altitude Altitude, HourAngle HourAngle, SolarDeclination Declination)
{
    /// <summary>The Sun over a place.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The instant lies outside the years 1900 to 2100.</exception>
    public static SunInSky At(SunInstant instant, GeoPoint place) => Of(SolarEphemeris.At(instant), place);

    /// <summary>The Sun over a place, from its geocentric position: for many places at one instant.</summary>
    public static SunInSky Of(ApparentSun sun, GeoPoint place) => Of(
        (sun.GreenwichApparentSiderealTime + place.Longitude.Angle - sun.RightAscension).Radians, sun.Declination.Radians, sun.DistanceAu, place);

    /// <summary>The same from geocentric hour angle over the place's meridian and declination, radians, and distance in astronomical units.</summary>
    internal static SunInSky Of(double hourAngle, double declination, double distance, GeoPoint place)
    {
        var (sinH, cosH) = Math.SinCos(hourAngle);
        var (sinD, cosD) = Math.SinCos(declination);
        var (sinF, cosF) = Math.SinCos(place.Latitude.Radians);

        // The place in astronomical units: x towards its meridian on the equator, z along the axis (geodetic to geocentric coordinates of the ellipsoid).
        const double E2 = AstronomicalConstants.EarthFlattening * (2.0 - AstronomicalConstants.EarthFlattening);
        var n = AstronomicalConstants.EarthRadiusMeters / Math.Sqrt(1.0 - E2 * sinF * sinF);
        var rho = (n + place.HeightMeters) * cosF;
        var px = rho / AstronomicalConstants.AstronomicalUnitMeters;
        var pz = (n * (1.0 - E2) + place.HeightMeters) * sinF / AstronomicalConstants.AstronomicalUnitMeters;

        // The Sun in the same frame, y towards the east.
        var x = distance * cosD * cosH - px;
        var y = -distance * cosD * sinH;
        var z = distance * sinD - pz;
        var r = Math.Sqrt(x * x + y * y + z * z);

        // Daily aberration: the place runs eastwards at omega x rho, and directions lean that way by v/c.
        y += r * AstronomicalConstants.EarthRotationRadiansPerSecond * rho / AstronomicalConstants.LightMetersPerSecond;

        // Into the horizon: north, east, up.
        var north = z * cosF - x * sinF;
        var up = z * sinF + x * cosF;
        return new SunInSky(
            Azimuth.FromAngle(Angle.FromRadians(Math.Atan2(y, north))),
            Altitude.FromAngle(Angle.FromRadians(Math.Atan2(up, Math.Sqrt(north * north + y * y)))),
            HourAngle.FromAngle(Angle.FromRadians(Math.Atan2(-y, x))),
            SolarDeclination.FromAngle(Angle.FromRadians(Math.Atan2(z, Math.Sqrt(x * x + y * y)))));
    }
}
