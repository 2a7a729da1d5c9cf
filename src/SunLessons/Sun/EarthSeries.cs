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
        // Horner over the powers of time; within one power a sum of amplitude x cos(phase + frequency x t).
        var total = 0.0;
        for (var p = powers.Length - 1; p >= 0; p--)
        {
            var (amplitude, phase, frequency) = powers[p];
            var sum = 0.0;
            for (var i = 0; i < amplitude.Length; i++)
            {
                sum += amplitude[i] * Math.Cos(phase[i] + frequency[i] * t);
            }

            total = total * t + sum;
        }

        return total;
    }

    private static Terms[] Read(string coordinate)
    {
        var rows = EmbeddedTable.Rows("earth_series.csv").Where(r => r[0] == coordinate).ToArray();
        var highest = rows.Max(r => int.Parse(r[1], System.Globalization.CultureInfo.InvariantCulture));
        var powers = new Terms[highest + 1];
        for (var p = 0; p <= highest; p++)
        {
            var power = p.ToString(System.Globalization.CultureInfo.InvariantCulture);

            // Smallest terms first, so that they are not lost beside the large ones.
            var terms = rows.Where(r => r[1] == power).Select(r => r[2..].Select(EmbeddedTable.Number).ToArray()).OrderBy(r => r[0]).ToArray();
            powers[p] = new Terms([.. terms.Select(r => r[0])], [.. terms.Select(r => r[1])], [.. terms.Select(r => r[2])]);
        }

        return powers;
    }

    private readonly record struct Terms(double[] Amplitude, double[] Phase, double[] Frequency);
}
