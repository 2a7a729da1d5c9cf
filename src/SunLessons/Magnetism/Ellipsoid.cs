namespace SunLessons.Magnetism;

/// <summary>The WGS 84 ellipsoid and the reference sphere of the field models.</summary>
internal static class Ellipsoid
{
    /// <summary>Equatorial radius, kilometres (NIMA TR8350.2, WGS 84).</summary>
    public const double EquatorialRadiusKm = 6378.137;

    /// <summary>Flattening (NIMA TR8350.2, WGS 84).</summary>
    public const double Flattening = 1.0 / 298.257223563;

    /// <summary>First eccentricity squared, f(2 − f).</summary>
    public const double EccentricitySquared = Flattening * (2.0 - Flattening);

    /// <summary>Radius a of the sphere to which the Gauss coefficients of IGRF and WMM refer, kilometres.</summary>
    public const double FieldSphereKm = 6371.2;
}
