using System.Globalization;

namespace SunLessons.Uncertainty;

/// <summary>
/// The distribution of a measured result, drawn at random from those of its inputs: JCGM 101:2008, clause 7. Immutable.
/// </summary>
/// <remarks>
/// Repeatable: the same seed gives the same draws on every platform and for every number of threads (a fixed stream for each block of 4096 draws,
/// 2^128 steps apart; arithmetic that IEEE 754 fixes). What the model itself computes with a platform's sine may still differ in its last digit.
/// Measured against the examples of JCGM 101 clauses 9.2 to 9.5, recomputed elsewhere with 100 million draws: see the tests.
/// </remarks>
public sealed class MonteCarlo
{
    /// <summary>A million draws, enough for a 95 % interval to one or two digits (JCGM 101, 7.2.2).</summary>
    public const int DefaultDraws = 1_000_000;

    /// <summary>The seed that is used if none is given.</summary>
    public const long DefaultSeed = 101;

    private const int FewestDraws = 10_000;
    private const int BlockLength = 4096;
    private const int BatchCount = 10;

    private readonly double[] _sorted;
    private readonly double[][] _batches;

    private MonteCarlo(string unit, int draws, long seed, double[] sorted, double[][] batches)
    {
        Unit = unit;
        Draws = draws;
        Seed = seed;
        _sorted = sorted;
        _batches = batches;
        var sum = 0.0;
        foreach (var y in sorted)
        {
            sum += y;
        }

        Mean = sum / sorted.Length;
        var squares = 0.0;
        foreach (var y in sorted)
        {
            squares += (y - Mean) * (y - Mean);
        }

        StandardUncertainty = Math.Sqrt(squares / (sorted.Length - 1));
    }

    /// <summary>The result's unit.</summary>
    public string Unit { get; }

    /// <summary>How many draws were made.</summary>
    public int Draws { get; }

    /// <summary>The seed they were made with.</summary>
    public long Seed { get; }

    /// <summary>How many of the draws have no result; they are left out of everything else here.</summary>
    public int DrawsWithoutResult => Draws - _sorted.Length;

    /// <summary>The estimate, in <see cref="Unit"/>: the mean of the draws (JCGM 101, 7.6).</summary>
    public double Mean { get; }

    /// <summary>The standard uncertainty: the standard deviation of the draws (JCGM 101, 7.6).</summary>
    public double StandardUncertainty { get; }

    /// <summary>All results in rising order, in <see cref="Unit"/>, for a histogram or a distribution function.</summary>
    public ReadOnlySpan<double> Sorted => _sorted;

    /// <summary>Draws a result.</summary>
    /// <param name="unit">The unit of the result.</param>
    /// <param name="inputs">The inputs.</param>
    /// <param name="model">The result from the inputs' values, in the same order; it is called from several threads.</param>
    /// <param name="draws">How many draws, 10,000 to 100 million.</param>
    /// <param name="seed">Any whole number.</param>
    /// <param name="correlations">Correlation coefficients of inputs that are bells, as for <see cref="Budget"/>; null when all are independent.</param>
    /// <param name="threads">How many threads at most; null for all processors. The result does not depend on it.</param>
    /// <exception cref="ArgumentOutOfRangeException">Too few or too many draws.</exception>
    /// <exception cref="ArgumentException">Correlations that cannot be, or of inputs that are no bells.</exception>
    /// <exception cref="InvalidOperationException">More than half of the draws have no result.</exception>
    public static MonteCarlo Of(
        string unit,
        IReadOnlyList<Quantity> inputs,
        MeasurementModel model,
        int draws = DefaultDraws,
        long seed = DefaultSeed,
        double[,]? correlations = null,
        int? threads = null)
    {
        ArgumentNullException.ThrowIfNull(inputs);
        ArgumentNullException.ThrowIfNull(model);
        if (draws is < FewestDraws or > 100_000_000)
        {
            throw new ArgumentOutOfRangeException(
                nameof(draws),
                $"{draws.ToString(CultureInfo.InvariantCulture)} draws are outside 10000 to 100000000; write 1000000 for a 95 % interval.");
        }

        var source = new InputDraws(inputs, correlations);
        var results = new double[draws];
        var starts = Starts(seed, (draws + BlockLength - 1) / BlockLength);
        Blocks.Each(starts.Length, threads, block =>
        {
            Span<double> values = new double[source.Count];
            Span<double> scratch = new double[source.Count];
            var random = starts[block];
            var end = Math.Min(draws, (block + 1) * BlockLength);
            for (var i = block * BlockLength; i < end; i++)
            {
                source.Draw(ref random, values, scratch);
                results[i] = model(values);
            }
        });

        // Ten equal batches in the order of drawing: how much they differ tells how well the whole is known (JCGM 101, 7.9.4).
        var batches = new double[BatchCount][];
        Blocks.Each(BatchCount, threads, b =>
        {
            int from = (int)((long)draws * b / BatchCount), to = (int)((long)draws * (b + 1) / BatchCount);
            var batch = Array.FindAll(results[from..to], double.IsFinite);
            Array.Sort(batch);
            batches[b] = batch;
        });
        var sorted = Merged(batches, threads);
        return sorted.Length * 2 >= draws
            ? new MonteCarlo(unit, draws, seed, sorted, batches)
            : throw new InvalidOperationException(
                $"{(draws - sorted.Length).ToString(CultureInfo.InvariantCulture)} of {draws.ToString(CultureInfo.InvariantCulture)} draws have no result; at least half must have one, so give smaller uncertainties or ask about another moment.");
    }

    /// <summary>The interval with as much probability below as above it (JCGM 101, 7.7.2).</summary>
    /// <param name="probability">Coverage probability, 0.5 to 0.999.</param>
    /// <exception cref="ArgumentOutOfRangeException">A probability outside that range.</exception>
    public CoverageInterval Symmetric(double probability = 0.95) => Symmetric(_sorted, Probabilities.Checked(probability));

    /// <summary>The shortest interval of that probability (JCGM 101, 7.7.4); for a lopsided result it is the likelier place.</summary>
    /// <param name="probability">Coverage probability, 0.5 to 0.999.</param>
    /// <exception cref="ArgumentOutOfRangeException">A probability outside that range.</exception>
    public CoverageInterval Shortest(double probability = 0.95)
    {
        var inside = Inside(_sorted.Length, Probabilities.Checked(probability));
        var best = 0;
        for (var low = 1; low + inside < _sorted.Length; low++)
        {
            if (_sorted[low + inside] - _sorted[low] < _sorted[best + inside] - _sorted[best])
            {
                best = low;
            }
        }

        return new CoverageInterval(_sorted[best], _sorted[best + inside], probability);
    }

    /// <summary>
    /// How well mean, standard uncertainty and the ends of the symmetric interval are known from so many draws: standard deviation of ten batches'
    /// values, divided by √10 (JCGM 101, 7.9.4).
    /// </summary>
    internal (double Mean, double StandardUncertainty, double Low, double High) StandardErrors(double probability)
    {
        var ends = _batches.Select(b => Symmetric(b, probability)).ToArray();
        var means = _batches.Select(b => b.Average()).ToArray();
        var sizes = _batches.Select((b, k) => Math.Sqrt(b.Sum(y => (y - means[k]) * (y - means[k])) / (b.Length - 1))).ToArray();
        return (Error(means), Error(sizes), Error([.. ends.Select(e => e.Low)]), Error([.. ends.Select(e => e.High)]));

        static double Error(double[] values)
        {
            var mean = values.Average();
            return Math.Sqrt(values.Sum(v => (v - mean) * (v - mean)) / (values.Length - 1) / values.Length);
        }
    }

    private static CoverageInterval Symmetric(double[] sorted, double probability)
    {
        // 7.7.2: q = pM to the nearest whole number, r = (M − q)/2; the values y(r) and y(r + q), counted from 1.
        var inside = Inside(sorted.Length, probability);
        var low = Math.Max(0, (sorted.Length - inside + 1) / 2 - 1);
        return new CoverageInterval(sorted[low], sorted[low + inside], probability);
    }

    private static int Inside(int count, double probability) => Math.Min(count - 1, (int)(probability * count + 0.5));

    private static Xoshiro256[] Starts(long seed, int count)
    {
        var starts = new Xoshiro256[count];
        var stream = Xoshiro256.FromSeed(unchecked((ulong)seed));
        for (var i = 0; i < count; i++)
        {
            starts[i] = stream;
            stream = stream.Jumped();
        }

        return starts;
    }

    private static double[] Merged(double[][] batches, int? threads)
    {
        var runs = batches;
        while (runs.Length > 1)
        {
            var from = runs;
            var to = new double[(from.Length + 1) / 2][];
            Blocks.Each(to.Length, threads, k => to[k] = 2 * k + 1 < from.Length ? Merged(from[2 * k], from[2 * k + 1]) : from[2 * k]);
            runs = to;
        }

        return runs[0];
    }

    private static double[] Merged(double[] a, double[] b)
    {
        var merged = new double[a.Length + b.Length];
        int i = 0, j = 0;
        for (var k = 0; k < merged.Length; k++)
        {
            merged[k] = j == b.Length || (i < a.Length && a[i] <= b[j]) ? a[i++] : b[j++];
        }

        return merged;
    }
}
