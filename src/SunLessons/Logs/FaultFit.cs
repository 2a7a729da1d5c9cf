using System.Globalization;
using MathNet.Numerics.LinearAlgebra;
using SunLessons.Readings;

namespace SunLessons.Logs;

/// <summary>
/// What a log tells of a dial's faults, and what it cannot. Immutable.
/// </summary>
/// <remarks>
/// <para>Exact forward model, least squares by singular values; a direction that the readings leave wider than 10 degrees is not moved and is reported open.
/// Two directions stay open for ever on a flat dial: a slip of clock or longitude against a turn about the polar axis, and the north-south tip against
/// style height together with the hour lines.</para>
/// <para>Wild readings: Huber's M-estimate (Huber 1964, Annals of Mathematical Statistics 35, 73; by repeated weighting, tuning constant 1.5): a reading further off
/// than 1.5 times the scatter counts in inverse proportion. It guards against a wild reading among several at like hours and seasons, not against the only
/// reading of its season.</para>
/// <para>The scatter is the stated uncertainty of a reading if one is given; else it is found from the readings themselves (1.4826 times the median size of
/// what is left, allowing for the directions found) when at least three more than directions are there; else that of plate, shadow edge and clock in <see cref="ReadingComponents"/>.</para>
/// </remarks>
public sealed record FaultFit
{
    private const double HuberConstant = 1.5;

    // The log holds tenths of a minute: no scatter below a tenth over √12 can be seen in it.
    private static readonly double RoundingMinutes = 0.1 / Math.Sqrt(12.0);

    private FaultFit()
    {
    }

    /// <summary>The four combinations, in the order of <see cref="Combination"/>.</summary>
    public required IReadOnlyList<CombinationFinding> Combinations { get; init; }

    /// <summary>Named faults: empty unless independent measurements were given.</summary>
    public required IReadOnlyList<FaultFinding> NamedFaults { get; init; }

    /// <summary>The readings with what is left of them.</summary>
    public required IReadOnlyList<FittedReading> Readings { get; init; }

    /// <summary>Standard uncertainty of one reading, minutes, as it was used.</summary>
    public required double ReadingStandardUncertaintyMinutes { get; init; }

    /// <summary>Where that comes from, in words.</summary>
    public required string ReadingUncertaintySource { get; init; }

    /// <summary>Slips in how the log was kept that would explain what its readings are off: to be looked into before any fault is believed. Often empty.</summary>
    public required IReadOnlyList<LogSlip> Slips { get; init; }

    /// <summary>What the readings cannot tell, in sentences: for ever, and with these readings.</summary>
    public required IReadOnlyList<string> Open { get; init; }

    /// <summary>The whole report, a sentence a line.</summary>
    public IReadOnlyList<string> Sentences =>
    [
        .. Slips.Select(s => s.Sentence),
        .. Combinations.Select(c => c.Sentence),
        .. NamedFaults.Select(f => f.Sentence),
        .. Open,
        .. Readings.Where(r => r.IsWild).Select(r => string.Create(
            CultureInfo.InvariantCulture,
            $"Line {r.Reading.Observation.Line}: this reading lies {Math.Abs(r.LeftMinutes):0.0} minutes {(r.LeftMinutes > 0.0 ? "fast" : "slow")} of the others and counts {r.Weight * 100.0:0} % (Huber's estimate); look at it again, it is not dropped.{Hint(r.LeftMinutes)}")),
    ];

    /// <summary>One combination.</summary>
    public CombinationFinding this[Combination which] => Combinations[(int)which];

    /// <summary>One named fault, or null where it cannot be named.</summary>
    public FaultFinding? this[Fault which] => NamedFaults.SingleOrDefault(f => f.Which == which);

    /// <summary>Fits the faults.</summary>
    /// <param name="log">The readings beside what they should have been.</param>
    /// <param name="readingStandardUncertaintyMinutes">Standard uncertainty of one reading with its clock, minutes, above 0; null to find it from the scatter.</param>
    /// <param name="measured">Independent measurements of single faults; with none, no fault is named.</param>
    /// <exception cref="ArgumentException">No reading, or an uncertainty that is not above 0.</exception>
    public static FaultFit Of(LogResiduals log, double? readingStandardUncertaintyMinutes = null, IReadOnlyList<FaultPrior>? measured = null)
    {
        ArgumentNullException.ThrowIfNull(log);
        if (log.Readings.Count == 0)
        {
            throw new ArgumentException($"The log has no reading that can be compared; {(log.Unused.Count > 0 ? log.Unused[0].Why : "write at least one.")}", nameof(log));
        }

        if (readingStandardUncertaintyMinutes is { } u && !(u > 0.0 && double.IsFinite(u)))
        {
            throw new ArgumentException(
                $"Uncertainty {u.ToString(CultureInfo.InvariantCulture)} of a reading is not allowed; give minutes above 0, such as 1, or leave it out.", nameof(readingStandardUncertaintyMinutes));
        }

        var model = new FaultModel(log.Dial, log.Presumed, log.Place.Latitude);
        var moments = log.Readings.Select(r => new LightMoment(r.HourAngle, r.Declination)).ToArray();
        var fast = log.Readings.Select(r => r.FastMinutes).ToArray();
        var map = model.FaultsOfCombinations();
        var free = new FaultSearch(model, moments, fast, map, []);

        // Scatter and weights from the four combinations, which hold all that readings can say.
        var scatter = readingStandardUncertaintyMinutes ?? Practice();
        var source = readingStandardUncertaintyMinutes is null
            ? "reading the plate, the shadow's edge and the clock (the sizes of the reading budget)"
            : "as stated";
        var weights = Enumerable.Repeat(1.0, fast.Length).ToArray();
        for (var round = 0; round < 50; round++)
        {
            free.Run(weights, scatter);
            var spare = fast.Length - free.Known;
            if (readingStandardUncertaintyMinutes is null && spare >= 3)
            {
                var sizes = free.Left.Select(Math.Abs).Order().ToArray();
                var median = (sizes[(sizes.Length - 1) / 2] + sizes[sizes.Length / 2]) / 2.0;
                scatter = Math.Max(RoundingMinutes, 1.4826 * median * Math.Sqrt(fast.Length / (double)spare));
                source = "the scatter of these readings";
            }

            var next = free.Left.Select(left => Math.Min(1.0, HuberConstant * scatter / Math.Max(1e-12, Math.Abs(left)))).ToArray();
            var moved = next.Zip(weights, (a, b) => Math.Abs(a - b)).Max();
            weights = next;
            if (moved < 1e-6)
            {
                break;
            }
        }

        free.Run(weights, scatter);
        var combinations = Enum.GetValues<Combination>().Select(which => Finding(free, which)).ToList();
        return new FaultFit
        {
            Combinations = combinations,
            NamedFaults = measured is { Count: > 0 } ? Named(model, moments, fast, weights, scatter, measured) : [],
            Readings = [.. log.Readings.Select((r, i) => new FittedReading(r, free.Left[i], weights[i]))],
            ReadingStandardUncertaintyMinutes = scatter,
            ReadingUncertaintySource = source,
            Slips = LogSlips.Find(log),
            Open = OpenInWords(model, moments, map, scatter, combinations),
        };
    }

    // A hand that misreads takes the neighbouring hour or quarter; further off than three minutes it was something else.
    private static string Hint(double leftMinutes) => Math.Abs(leftMinutes) switch
    {
        > 57.0 and < 63.0 => " It is an hour off: the next hour line may have been read.",
        > 717.0 => " It is half a day off: morning may have been written for afternoon.",
        > 12.0 and < 18.0 => " It is a quarter of an hour off: the next line may have been read.",
        _ => "",
    };

    private static double Practice()
    {
        double Square(ComponentSize size) => size.StandardUncertainty * size.StandardUncertainty;
        return Math.Sqrt(Square(ReadingComponents.PlateReading) + Square(ReadingComponents.ShadowEdge) + Square(ReadingComponents.Clock));
    }

    private static CombinationFinding Finding(FaultSearch search, Combination which)
    {
        var unit = which == Combination.Constant ? 1.0 : FaultModel.MinutesPerDegree;
        var u = search.StandardUncertainty((int)which);
        return new CombinationFinding(which, u <= FaultModel.OpenBeyondMinutes ? search.Parameters[(int)which] / unit : null, u / unit);
    }

    private static List<FaultFinding> Named(
        FaultModel model, LightMoment[] moments, double[] fast, double[] weights, double scatter, IReadOnlyList<FaultPrior> measured)
    {
        var all = new FaultSearch(model, moments, fast, Matrix<double>.Build.DenseIdentity(FaultModel.Faults), measured);
        all.Run(weights, scatter);
        var sources = measured.Select(m => m.Source).ToList();
        var named = new List<FaultFinding>();
        foreach (var which in Enum.GetValues<Fault>())
        {
            var u = all.StandardUncertainty((int)which);
            if (u <= FaultModel.OpenBeyondMinutes)
            {
                var unit = which == Fault.ClockSlow ? 1.0 : FaultModel.MinutesPerDegree;
                named.Add(new FaultFinding(which, all.Parameters[(int)which] / unit, u / unit, sources));
            }
        }

        return named;
    }

    private static List<string> OpenInWords(
        FaultModel model, LightMoment[] moments, Matrix<double> map, double scatter, List<CombinationFinding> combinations)
    {
        var open = new List<string>
        {
            "No reading can ever part a slip of clock, longitude or zone from a turn about the polar axis: trust or measure one of them.",
            "No reading can ever part a tip north to south from a style set too high or low with its hour lines drawn to match: measure one of them.",
        };
        bool IsOpen(Combination which) => combinations[(int)which].Value is null;
        if (IsOpen(Combination.StyleSideways) && IsOpen(Combination.StyleForLatitude))
        {
            // Would the same hours at a solstice have told? Then the season is to blame, else the number of readings.
            var solstice = moments.Select(m => m with { Declination = SolarDeclination.FromDegrees(23.4 * (m.Declination.Degrees < 0.0 ? -1.0 : 1.0)) }).ToArray();
            var there = new FaultSearch(model, solstice, new double[solstice.Length], map, []);
            there.Run([.. Enumerable.Repeat(1.0, solstice.Length)], scatter);
            var furthest = moments.Max(m => Math.Abs(m.Declination.Degrees));
            open.Add(there.StandardUncertainty((int)Combination.StyleSideways) <= FaultModel.OpenBeyondMinutes
                ? string.Create(
                    CultureInfo.InvariantCulture,
                    $"These readings are useless for telling a twist from a tip or from the clock: the Sun stood within {furthest:0.0} degrees of the equator, where each of them moves every reading of the day alike, however many are taken; read again in another season.")
                : "These readings are too few, or too near one hour, to tell where the style points; read again at other hours and in another season.");
        }

        return open;
    }
}
