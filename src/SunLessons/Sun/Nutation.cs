namespace SunLessons.Sun;

/// <summary>
/// How the Earth's axis nods: IAU 1980 nutation (Seidelmann 1982), its 18 terms of 0.005″ and more. The model of 2000 differs from
/// the whole series by some 0.01″; the dropped terms sum to about as much.
/// </summary>
internal static class Nutation
{
    private static readonly double[][] Terms = [.. EmbeddedTable.Rows("nutation.csv").Select(r => r.Select(EmbeddedTable.Number).ToArray())];

    /// <summary>Longitude of the Moon's mean ascending node from the mean equinox of date, radians; t in Julian centuries of TT.</summary>
    public static double MoonNode(double t) => Radians(125.04452 + t * (-1934.136261 + t * 0.0020708));

    /// <summary>Nutation in longitude and in obliquity, radians; t in Julian centuries of TT from J2000.</summary>
    public static (double Longitude, double Obliquity) At(double t, double node)
    {
        // Fundamental arguments, degrees: Seidelmann (1982) as rounded by Meeus, Astronomical Algorithms (1998), chapter 22.
        var d = Radians(297.85036 + t * (445267.111480 - t * 0.0019142));
        var m = Radians(357.52772 + t * (35999.050340 - t * 0.0001603));
        var moon = Radians(134.96298 + t * (477198.867398 + t * 0.0086972));
        var f = Radians(93.27191 + t * (483202.017538 - t * 0.0036825));

        double psi = 0.0, eps = 0.0;
        foreach (var term in Terms)
        {
            var (sin, cos) = Math.SinCos(term[0] * d + term[1] * m + term[2] * moon + term[3] * f + term[4] * node);
            psi += (term[5] + term[6] * t) * sin;
            eps += (term[7] + term[8] * t) * cos;
        }

        // The table counts in units of 0.0001 arcsecond.
        const double Unit = 1e-4 * AstronomicalConstants.RadiansPerArcSecond;
        return (psi * Unit, eps * Unit);
    }

    private static double Radians(double degrees) => degrees * (Math.PI / 180.0);
}
