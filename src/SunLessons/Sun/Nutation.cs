using System.Numerics;

namespace SunLessons.Sun;

/// <summary>
/// How the Earth's axis nods: IAU 1980 nutation (Seidelmann 1982), its 18 terms of 0.005″ and more. The model of 2000 differs from
/// the whole series by some 0.01″; the dropped terms sum to about as much.
/// </summary>
internal static class Nutation
{
    // Nine columns: multiples of the five fundamental arguments, then the sine's and the cosine's coefficient, each with its change in a century.
    private static readonly Vector<double>[][] Columns = Read();

    // A sine is the cosine of a quarter turn less.
    private static readonly Vector<double> Quarter = new(0.25);

    /// <summary>Longitude of the Moon's mean ascending node from the mean equinox of date, radians; t in Julian centuries of TT.</summary>
    public static double MoonNode(double t) => Radians(125.04452 + t * (-1934.136261 + t * 0.0020708));

    /// <summary>Nutation in longitude and in obliquity, radians; t in Julian centuries of TT from J2000.</summary>
    public static (double Longitude, double Obliquity) At(double t, double node)
    {
        // Fundamental arguments, degrees made turns: Seidelmann (1982) as rounded by Meeus, Astronomical Algorithms (1998), chapter 22.
        var d = Turns(297.85036 + t * (445267.111480 - t * 0.0019142));
        var m = Turns(357.52772 + t * (35999.050340 - t * 0.0001603));
        var moon = Turns(134.96298 + t * (477198.867398 + t * 0.0086972));
        var f = Turns(93.27191 + t * (483202.017538 - t * 0.0036825));
        var omega = node / AstronomicalConstants.Turn;

        Vector<double> psi = Vector<double>.Zero, eps = Vector<double>.Zero;
        for (var i = 0; i < Columns[0].Length; i++)
        {
            var argument = Columns[0][i] * d + Columns[1][i] * m + Columns[2][i] * moon + Columns[3][i] * f + Columns[4][i] * omega;
            psi += (Columns[5][i] + Columns[6][i] * t) * FastCosine.OfTurns(argument - Quarter);
            eps += (Columns[7][i] + Columns[8][i] * t) * FastCosine.OfTurns(argument);
        }

        // The table counts in units of 0.0001 arcsecond.
        const double Unit = 1e-4 * AstronomicalConstants.RadiansPerArcSecond;
        return (Vector.Sum(psi) * Unit, Vector.Sum(eps) * Unit);
    }

    private static Vector<double>[][] Read()
    {
        var rows = EmbeddedTable.Rows("nutation.csv").Select(r => r.Select(EmbeddedTable.Number).ToArray()).ToArray();
        return [.. Enumerable.Range(0, 9).Select(column => Lanes.Of(rows, column))];
    }

    private static double Turns(double degrees) => degrees / 360.0;

    private static double Radians(double degrees) => degrees * (Math.PI / 180.0);
}
