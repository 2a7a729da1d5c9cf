using System.Globalization;
using System.Text.RegularExpressions;

namespace SunLessons.Magnetism;

/// <summary>
/// The coefficient file of a World Magnetic Model as NOAA and BGS publish it (WMM.COF): a first line with epoch, name and date of issue; a line for each
/// degree n and order m with g and h (nT) and their yearly change (nT a year); two lines of nines at the end.
/// </summary>
internal static partial class WmmCoefficientFile
{
    private const int MostCharacters = 100_000;

    /// <summary>Reads a model.</summary>
    /// <exception cref="FormatException">One sentence: what is wrong with the file and what a good one holds.</exception>
    public static GeomagneticModel Read(string text)
    {
        if (text.Length > MostCharacters)
        {
            throw new FormatException(
                $"The file is too large for the coefficients of a compass model ({Text(text.Length)} characters, at most {Text(MostCharacters)}); give the file WMM.COF of a World Magnetic Model of degree {Text(HarmonicSegment.MaxDegree)} or less.");
        }

        var lines = text.Split('\n');
        var header = Header().Match(lines[0].Trim().TrimStart('\uFEFF'));
        if (!header.Success)
        {
            throw new FormatException(
                $"The first line \"{Shortened(lines[0].Trim())}\" is not that of a World Magnetic Model; give its coefficient file WMM.COF, which begins with epoch, name and date such as 2025.0 WMM-2025 11/13/2024.");
        }

        var rows = new List<CoefficientTable.Row>();
        var (degree, order, ended) = (1, 0, false);
        for (var k = 1; k < lines.Length && !ended; k++)
        {
            var words = lines[k].Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries);
            ended = words is [var nines] && nines.All(c => c == '9');
            if (ended || words.Length == 0)
            {
                continue;
            }

            if (degree > HarmonicSegment.MaxDegree)
            {
                throw new FormatException(
                    $"The model goes beyond degree {Text(HarmonicSegment.MaxDegree)}, up to which this program computes; give the standard World Magnetic Model (degree 12), not the one of high resolution.");
            }

            if (words.Length != 6 || Numbers(words) is not { } numbers || numbers[0] != degree || numbers[1] != order)
            {
                throw new FormatException(
                    $"Line {Text(k + 1)} \"{Shortened(lines[k].Trim())}\" is not the one for degree {Text(degree)} and order {Text(order)}: six numbers belong there, n m g h and the yearly change of g and h; get the file anew.");
            }

            rows.Add(new CoefficientTable.Row(false, degree, order, [numbers[2]], numbers[4]));
            if (order > 0)
            {
                rows.Add(new CoefficientTable.Row(true, degree, order, [numbers[3]], numbers[5]));
            }

            (degree, order) = order < degree ? (degree, order + 1) : (degree + 1, 0);
        }

        // A file cut off in the middle would pass for a smoother field.
        if (!ended || order != 0 || degree < 2)
        {
            throw new FormatException(
                $"The file ends within degree {Text(order == 0 ? degree - 1 : degree)}, before the line of nines that closes a model; it was cut off, so get it anew.");
        }

        var epoch = double.Parse(header.Groups["epoch"].ValueSpan, CultureInfo.InvariantCulture);
        return new GeomagneticModel(header.Groups["name"].Value.Replace("WMM-", "WMM", StringComparison.Ordinal), new CoefficientTable([epoch], rows));
    }

    private static double[]? Numbers(string[] words)
    {
        var numbers = words.Select(word => double.TryParse(word, NumberStyles.Float, CultureInfo.InvariantCulture, out var x) && double.IsFinite(x) ? x : double.NaN).ToArray();
        return Array.TrueForAll(numbers, double.IsFinite) ? numbers : null;
    }

    private static string Shortened(string line) => line.Length <= 40 ? line : line[..40] + "...";

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);

    [GeneratedRegex(@"^(?<epoch>\d{4}(\.\d+)?)\s+(?<name>WMM[A-Za-z0-9\-]{1,20})\s+\d{1,2}/\d{1,2}/\d{4}$", RegexOptions.CultureInvariant)]
    private static partial Regex Header();
}
