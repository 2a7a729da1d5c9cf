namespace SunLessons;

/// <summary>A place on the Earth: latitude (north positive), longitude (east positive) and height above the ellipsoid.</summary>
/// <param name="Latitude">Geodetic latitude.</param>
/// <param name="Longitude">Longitude, east positive.</param>
/// <param name="HeightMeters">Height above the WGS 84 ellipsoid, metres; sea level will do for every dial.</param>
public readonly record struct GeoPoint(Latitude Latitude, Longitude Longitude, double HeightMeters = 0.0)
{
    /// <summary>Makes a place from degrees, north and east positive.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its range.</exception>
    public static GeoPoint FromDegrees(double latitudeDegrees, double longitudeDegrees, double heightMeters = 0.0) =>
        new(Latitude.FromDegrees(latitudeDegrees), Longitude.FromDegrees(longitudeDegrees), heightMeters);

    /// <summary>Such as <c>42.24° N 8.72° W</c>.</summary>
    public override string ToString() => $"{Latitude} {Longitude}";
}
