using System.Globalization;

namespace SunLessons.Uncertainty;

/// <summary>First order and Monte Carlo side by side, compared as JCGM 101:2008 clause 8 says, with the outcome in words. Immutable.</summary>
public sealed record FirstOrderCheck
{
    private FirstOrderCheck(Budget firstOrder, MonteCarlo monteCarlo, double probability, int digits)
    {
        FirstOrder = firstOrder;
        MonteCarlo = monteCarlo;
        var half = firstOrder.CoverageFactorFor(probability) * firstOrder.CombinedStandardUncertainty;
        FirstOrderInterval = new CoverageInterval(firstOrder.Value - half, firstOrder.Value + half, probability);
        MonteCarloInterval = monteCarlo.Symmetric(probability);
        Digits = digits;
        Tolerance = NumericalTolerance(firstOrder.CombinedStandardUncertainty > 0.0 ? firstOrder.CombinedStandardUncertainty : monteCarlo.StandardUncertainty, digits);
        var errors = monteCarlo.StandardErrors(probability);
        var error = Math.Max(errors.Low, errors.High);

        // 8.2: Monte Carlo must itself be good to a fifth of the tolerance, unless the difference is plain all the same.
        var difference = Math.Max(LowDifference, HighDifference);
        Verdict = difference <= Tolerance && 2.0 * error <= Tolerance / 5.0 ? FirstOrderVerdict.Agrees
            : difference - 2.0 * error > Tolerance ? FirstOrderVerdict.Fails
            : difference + 2.0 * error <= Tolerance ? FirstOrderVerdict.Agrees
            : FirstOrderVerdict.NotSettled;
    }

    /// <summary>The first-order budget.</summary>
    public Budget FirstOrder { get; }

    /// <summary>The draws.</summary>
    public MonteCarlo MonteCarlo { get; }

    /// <summary>Value plus and minus the coverage factor times the combined standard uncertainty.</summary>
    public CoverageInterval FirstOrderInterval { get; }

    /// <summary>The probabilistically symmetric interval of the draws.</summary>
    public CoverageInterval MonteCarloInterval { get; }

    /// <summary>How many significant digits of the standard uncertainty are taken as meaningful.</summary>
    public int Digits { get; }

    /// <summary>How far the ends may differ: half a unit of the last of those digits (JCGM 101, 7.9.2), in the unit of the result.</summary>
    public double Tolerance { get; }

    /// <summary>How far the lower ends differ, in the unit of the result; zero or positive.</summary>
    public double LowDifference => Math.Abs(FirstOrderInterval.Low - MonteCarloInterval.Low);

    /// <summary>How far the upper ends differ, in the unit of the result; zero or positive.</summary>
    public double HighDifference => Math.Abs(FirstOrderInterval.High - MonteCarloInterval.High);

    /// <summary>The outcome.</summary>
    public FirstOrderVerdict Verdict { get; }

    /// <summary>The outcome in a sentence or two.</summary>
    public string Sentence
    {
        get
        {
            var unit = FirstOrder.Unit.Length == 0 ? "" : " " + FirstOrder.Unit;
            var ends = $"first order says {Text(FirstOrderInterval.Low)} to {Text(FirstOrderInterval.High)}{unit}, {Count(MonteCarlo.Draws)} draws say {Text(MonteCarloInterval.Low)} to {Text(MonteCarloInterval.High)}";
            var apart = $"the ends differ by up to {Short(Math.Max(LowDifference, HighDifference))}{unit}, and {Short(Tolerance)} is allowed";
            var lost = MonteCarlo.DrawsWithoutResult == 0 ? "" : $" {Count(MonteCarlo.DrawsWithoutResult)} draws have no result and are left out of the interval.";
            return Verdict switch
            {
                FirstOrderVerdict.Agrees => $"First order holds here: {ends}; {apart}.{lost}",
                FirstOrderVerdict.Fails => $"First order fails here: {ends}; {apart}. Use the interval of the draws.{lost}",
                _ => $"Not settled: {ends}; {apart}, but so few draws do not tell that difference for certain. Draw more.{lost}",
            };
        }
    }

    /// <summary>Propagates both ways and compares.</summary>
    /// <param name="unit">The unit of the result.</param>
    /// <param name="inputs">The inputs.</param>
    /// <param name="model">The result from the inputs' values.</param>
    /// <param name="probability">Coverage probability, 0.5 to 0.999.</param>
    /// <param name="digits">Meaningful digits of the standard uncertainty, 1 or 2.</param>
    /// <param name="draws">As for <see cref="MonteCarlo"/>.</param>
    /// <param name="seed">As for <see cref="MonteCarlo"/>.</param>
    /// <param name="correlations">Correlation coefficients, as for <see cref="Budget"/>.</param>
    public static FirstOrderCheck Of(
        string unit,
        IReadOnlyList<Quantity> inputs,
        MeasurementModel model,
        double probability = 0.95,
        int digits = 1,
        int draws = MonteCarlo.DefaultDraws,
        long seed = MonteCarlo.DefaultSeed,
        double[,]? correlations = null)
    {
        ArgumentNullException.ThrowIfNull(model);
        return Of(
            Budget.Of(unit, inputs, x => model([.. x]), correlations),
            MonteCarlo.Of(unit, inputs, model, draws, seed, correlations),
            probability,
            digits);
    }

    /// <summary>Compares a budget and draws that are there already.</summary>
    /// <param name="firstOrder">The first-order budget.</param>
    /// <param name="monteCarlo">The draws, in the same unit.</param>
    /// <param name="probability">Coverage probability, 0.5 to 0.999.</param>
    /// <param name="digits">Meaningful digits of the standard uncertainty, 1 or 2.</param>
    /// <exception cref="ArgumentOutOfRangeException">Digits other than 1 or 2, or a probability outside 0.5 to 0.999.</exception>
    public static FirstOrderCheck Of(Budget firstOrder, MonteCarlo monteCarlo, double probability = 0.95, int digits = 1)
    {
        ArgumentNullException.ThrowIfNull(firstOrder);
        ArgumentNullException.ThrowIfNull(monteCarlo);
        return digits is 1 or 2
            ? new FirstOrderCheck(firstOrder, monteCarlo, Probabilities.Checked(probability), digits)
            : throw new ArgumentOutOfRangeException(
                nameof(digits),
                $"{digits.ToString(CultureInfo.InvariantCulture)} digits of an uncertainty are outside 1 to 2; write 1, or 2 where the uncertainty is itself well known.");
    }

    /// <summary>7.9.2: the uncertainty as c × 10^l with c of so many digits; half of 10^l.</summary>
    private static double NumericalTolerance(double uncertainty, int digits)
    {
        if (uncertainty == 0.0)
        {
            return 0.0;
        }

        var l = (int)Math.Floor(Math.Log10(uncertainty)) - digits + 1;

        // 0.0996 to one digit is 0.1, a digit further left.
        if (Math.Round(uncertainty / Math.Pow(10.0, l)) >= Math.Pow(10.0, digits))
        {
            l++;
        }

        return 0.5 * Math.Pow(10.0, l);
    }

    // Ends to a fifth of the tolerance at least: one decimal more than the tolerance has.
    private string Text(double value)
    {
        var decimals = Tolerance > 0.0 ? Math.Clamp(1 - (int)Math.Floor(Math.Log10(Tolerance)), 0, 12) : 3;
        return value.ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
    }

    private static string Short(double value) => value.ToString("G2", CultureInfo.InvariantCulture);

    private static string Count(int value) => value.ToString("#,##0", CultureInfo.InvariantCulture);
}
