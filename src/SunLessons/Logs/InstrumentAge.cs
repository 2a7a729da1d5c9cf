using System.Globalization;
using MathNet.Numerics.Distributions;
using SunLessons.Magnetism;

namespace SunLessons.Logs;

/// <summary>
/// The years in which the field was as an old instrument's list of compass corrections says. Immutable. What is dated is the list, not the instrument:
/// an engraver may have copied an older one.
/// </summary>
/// <remarks>
/// <para>Each entry: the model's standard deviation at that place and year (<see cref="NorthAnswer.Known.StandardDeviation"/>), taken as a bell, added to the engraver's
/// rounding, taken as even within half a step; entries independent. Every year from 1900 on is equally likely beforehand; the region is made of the likeliest years that
/// together hold 95 %. Step 0.1 year. Measured: of 400 lists of four towns, drawn with the model's error and rounded to a degree, the region missed 21 years.</para>
/// <para>A year fits when the sum of squares, each in units of both errors together, is not among the largest 5 % that chance allows (chi-squared, one less
/// degree of freedom than entries for the year that is chosen). Where no year fits, entries are set aside one by one, each time that which helps most, as long as
/// more than half of the list and at least three entries stay.</para>
/// </remarks>
public sealed record InstrumentAge
{
    private const double StepYears = 0.1;
    private const double Level = 0.95;

    private InstrumentAge(bool fits, double likeliest, IReadOnlyList<YearSpan> region, IReadOnlyList<DatedEntry> entries, bool before, bool after)
    {
        Fits = fits;
        LikeliestYear = likeliest;
        Region = region;
        Entries = entries;
        ReachesFirstYear = before;
        ReachesLastYear = after;
    }

    /// <summary>Whether the list, but for the entries set aside, fits any year that the models know.</summary>
    public bool Fits { get; }

    /// <summary>The likeliest decimal year, or, where none fits, the least unlikely.</summary>
    public double LikeliestYear { get; }

    /// <summary>The 95 % region, in order of time; empty where no year fits.</summary>
    public IReadOnlyList<YearSpan> Region { get; }

    /// <summary>The entries beside the model in the likeliest year.</summary>
    public IReadOnlyList<DatedEntry> Entries { get; }

    /// <summary>The entries that disagree with the rest.</summary>
    public IEnumerable<DatedEntry> Disagreeing => Entries.Where(e => !e.Agrees);

    /// <summary>Whether the region begins with the first year of the models, so that the list may be older: its end is a bound then, its beginning is not.</summary>
    public bool ReachesFirstYear { get; }

    /// <summary>Whether the region ends with the last year that was asked about.</summary>
    public bool ReachesLastYear { get; }

    /// <summary>The answer in a few sentences.</summary>
    public string Summary
    {
        get
        {
            var first = MagneticModels.InUse.FirstYear.ToString("0", CultureInfo.InvariantCulture);
            var aside = Disagreeing.ToList();
            if (!Fits)
            {
                var older = ReachesFirstYear
                    ? $" The nearest is {first}, where the models begin: the list may be older, which cannot be told from here."
                    : $" Check its signs, the step it is printed to and the places; the least unlikely year is {Math.Floor(LikeliestYear).ToString("0", CultureInfo.InvariantCulture)}.";
                return $"No year fits this list: its {Entries.Count.ToString(CultureInfo.InvariantCulture)} entries never agreed at one time.{older}";
            }

            var years = string.Join(" or ", Region);
            var said = ReachesFirstYear
                ? $"The list fits the years up to {Math.Floor(Region[0].ToYear).ToString("0", CultureInfo.InvariantCulture)}{(Region.Count > 1 ? $", or {string.Join(" or ", Region.Skip(1))}" : "")}: an upper bound only, for the models begin with {first} and it may be older."
                : $"The list fits the years {years} (95 %).";
            return aside.Count == 0
                ? said
                : said + " Entries that disagree and were set aside: " + string.Join("; ", aside.Select(e => string.Create(
                    CultureInfo.InvariantCulture,
                    $"{e.Place.Name}, {Math.Abs(e.Off.Degrees):0.0} degrees too far {(e.Off.Degrees > 0.0 ? "east" : "west")}"))) + ".";
        }
    }

    /// <summary>Dates a list.</summary>
    /// <param name="list">The list.</param>
    /// <param name="latestYear">The latest decimal year it can be from, 1900.1 to 2030.0, such as the year it was bought; null for the models' last.</param>
    /// <exception cref="ArgumentException">An empty list.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A latest year outside the models.</exception>
    public static InstrumentAge Of(PrintedList list, double? latestYear = null)
    {
        ArgumentNullException.ThrowIfNull(list);
        if (list.Places.Count == 0)
        {
            throw new ArgumentException("The list has no places; give at least one place with its printed compass offset.", nameof(list));
        }

        var last = latestYear ?? MagneticModels.InUse.LastYear;
        if (!(last >= MagneticModels.InUse.FirstYear + StepYears && last <= MagneticModels.InUse.LastYear))
        {
            throw new ArgumentOutOfRangeException(
                nameof(latestYear),
                string.Create(CultureInfo.InvariantCulture, $"Latest year {last:0.0##} is outside {MagneticModels.InUse.FirstYear + StepYears:0.0} to {MagneticModels.InUse.LastYear:0.0}, which the field models know; write the year the instrument came to you."));
        }

        var steps = (int)Math.Floor((last - MagneticModels.InUse.FirstYear) / StepYears + 1e-9);
        var years = Enumerable.Range(0, steps + 1).Select(i => MagneticModels.InUse.FirstYear + i * StepYears).ToArray();
        var table = list.Places.Select(place => years.Select(year => EntryAt(place, year, list.PrintedTo)).ToArray()).ToArray();

        var kept = Enumerable.Range(0, table.Length).ToList();
        while (!YearFits(table, kept) && kept.Count > 3 && (kept.Count - 1) * 2 > table.Length)
        {
            kept.Remove(kept.MinBy(e => Least(table, [.. kept.Where(k => k != e)]).Sum));
        }

        if (!YearFits(table, kept))
        {
            var all = Enumerable.Range(0, table.Length).ToList();
            var at = Least(table, all).Year;
            return new InstrumentAge(false, years[at], [], Dated(list, table, all, at), at == 0, at == steps);
        }

        var logs = years.Select((_, y) => kept.Sum(e => table[e][y].LogLikelihood)).ToArray();
        var likeliest = Array.IndexOf(logs, logs.Max());
        var region = LikeliestYears(logs);
        return new InstrumentAge(true, years[likeliest], Spans(years, region), Dated(list, table, kept, likeliest), region[0], region[^1]);
    }

    private static List<DatedEntry> Dated(PrintedList list, Entry[][] table, List<int> kept, int year) =>
        [.. list.Places.Select((place, e) => new DatedEntry(
            place, Angle.FromDegrees(table[e][year].OffDegrees), Angle.FromDegrees(table[e][year].DeviationDegrees), kept.Contains(e)))];

    private static Entry EntryAt(ListedPlace place, double year, Angle printedTo)
    {
        // The years were checked, so a model answers.
        var known = (NorthAnswer.Known)MagneticField.At(place.Point, year);
        var off = (place.Printed.Angle - known.Declination.Angle).AroundZero().Degrees;
        var model = known.StandardDeviation.Degrees;
        var half = printedTo.Degrees / 2.0;
        return new Entry(off, Math.Sqrt(model * model + half * half / 3.0), LogDensity(Math.Abs(off), model, half));
    }

    /// <summary>The logarithm of the density of a bell and an even spread added: [Φ((x + h)/s) − Φ((x − h)/s)] / 2h.</summary>
    private static double LogDensity(double x, double s, double half)
    {
        var near = (x - half) / s;
        if (half < 1e-6 * s)
        {
            return -0.5 * (x / s) * (x / s) - Math.Log(s * Math.Sqrt(2.0 * Math.PI));
        }

        // Far out the difference of two tails loses its figures; the nearer tail alone, φ(z)/z, is right to 1/z² there.
        return near > 8.0
            ? -0.5 * near * near - Math.Log(near * Math.Sqrt(2.0 * Math.PI)) - Math.Log(2.0 * half)
            : Math.Log((Normal.CDF(0.0, 1.0, -near) - Normal.CDF(0.0, 1.0, -(x + half) / s)) / (2.0 * half));
    }

    private static (double Sum, int Year) Least(Entry[][] table, List<int> kept)
    {
        var best = (Sum: double.PositiveInfinity, Year: 0);
        for (var y = 0; y < table[0].Length; y++)
        {
            var sum = kept.Sum(e => table[e][y].Square);
            if (sum < best.Sum)
            {
                best = (sum, y);
            }
        }

        return best;
    }

    private static bool YearFits(Entry[][] table, List<int> kept) =>
        Least(table, kept).Sum <= ChiSquared.InvCDF(Math.Max(1, kept.Count - 1), Level);

    private static bool[] LikeliestYears(double[] logs)
    {
        var top = logs.Max();
        var weights = logs.Select(l => Math.Exp(l - top)).ToArray();
        var wanted = Level * weights.Sum();
        var region = new bool[logs.Length];
        var sum = 0.0;
        foreach (var y in Enumerable.Range(0, logs.Length).OrderByDescending(y => weights[y]))
        {
            region[y] = true;
            sum += weights[y];
            if (sum >= wanted)
            {
                break;
            }
        }

        return region;
    }

    private static List<YearSpan> Spans(double[] years, bool[] region)
    {
        var spans = new List<YearSpan>();
        for (var y = 0; y < years.Length; y++)
        {
            if (region[y] && (y == 0 || !region[y - 1]))
            {
                var end = y;
                while (end + 1 < years.Length && region[end + 1])
                {
                    end++;
                }

                spans.Add(new YearSpan(years[y], years[end]));
            }
        }

        return spans;
    }

    private readonly record struct Entry(double OffDegrees, double DeviationDegrees, double LogLikelihood)
    {
        public double Square => OffDegrees / DeviationDegrees * (OffDegrees / DeviationDegrees);
    }
}
