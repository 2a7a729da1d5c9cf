using System.Globalization;
using System.Numerics;

namespace SunLessons.Sun;

/// <summary>
/// The Earth's place as seen from the Sun: VSOP87 (Bretagnon and Francou 1988), terms below 1e-7 rad or 1e-6 au left out.
/// Time is given in thousands of Julian years of TT from J2000.0 (TT stands for TDB: they differ by less than 2 ms, 0.0001″ of the Sun).
/// </summary>
internal static class EarthSeries
{
    private static readonly Terms[] LongitudeTerms = Read("L");
    private static readonly Terms[] LatitudeTerms = Read("B");
    private static readonly Terms[] DistanceTerms = Read("R");

    /// <summary>Heliocentric longitude on the ecliptic and from the equinox of J2000, radians, not reduced to one turn.</summary>
    public static double LongitudeJ2000(double millennia) => Sum(LongitudeTerms, millennia);

    /// <summary>Heliocentric latitude from the ecliptic of date, radians; within 6e-6.</summary>
    public static double LatitudeOfDate(double millennia) => Sum(LatitudeTerms, millennia);

    /// <summary>Distance from the Sun, astronomical units.</summary>
    public static double DistanceAu(double millennia) => Sum(DistanceTerms, millennia);

    private static double Sum(Terms[] powers, double t)
    {
        // Horner over the powers of time; within one power a sum of amplitude x cos(phase + frequency x t), as many terms at once as
        // the processor takes. Phase and frequency are in turns here.
        var total = 0.0;
        for (var p = powers.Length - 1; p >= 0; p--)
        {
            var (amplitude, phase, frequency) = powers[p];
            var time = new Vector<double>(t);
            var sum = Vector<double>.Zero;
            for (var i = 0; i < amplitude.Length; i++)
            {
                sum += amplitude[i] * FastCosine.OfTurns(phase[i] + frequency[i] * time);
            }

            total = total * t + Vector.Sum(sum);
        }

        return total;
    }

    private static Terms[] Read(string coordinate)
    {
        var rows = EmbeddedTable.Rows("earth_series.csv").Where(r => r[0] == coordinate).ToArray();
        var highest = rows.Max(r => int.Parse(r[1], CultureInfo.InvariantCulture));
        var powers = new Terms[highest + 1];
        for (var p = 0; p <= highest; p++)
        {
            var power = p.ToString(CultureInfo.InvariantCulture);

            // Smallest terms first, so that they are not lost beside the large ones.
            var terms = rows.Where(r => r[1] == power).Select(r => new[] { EmbeddedTable.Number(r[2]), EmbeddedTable.Number(r[3]) / AstronomicalConstants.Turn, EmbeddedTable.Number(r[4]) / AstronomicalConstants.Turn }).OrderBy(r => r[0]).ToArray();
            powers[p] = new Terms(Lanes.Of(terms, 0), Lanes.Of(terms, 1), Lanes.Of(terms, 2));
        }

        return powers;
    }

    private readonly record struct Terms(Vector<double>[] Amplitude, Vector<double>[] Phase, Vector<double>[] Frequency);
}
