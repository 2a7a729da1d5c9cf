using System.Globalization;

namespace SunLessons.Uncertainty;

/// <summary>
/// A first-order uncertainty budget: the law of propagation of JCGM 100:2008 (GUM), equations 10, 13 and 18.
/// </summary>
/// <remarks>
/// First order only: good where the result runs straight over the width of each input. Where it does not (a square at its minimum, a wide logarithm),
/// the GUM's own examples show how far it errs; nothing here hides that.
/// </remarks>
public sealed record Budget
{
    private Budget(string unit, double value, IReadOnlyList<BudgetLine> lines, double combined, double? degreesOfFreedom)
    {
        EffectiveDegreesOfFreedom = degreesOfFreedom;
        Unit = unit;
        Value = value;
        Lines = lines;
        CombinedStandardUncertainty = combined;
    }

    /// <summary>The coverage factor of <see cref="ExpandedUncertainty"/>: 2, about 95 in 100 for a bell-shaped result (GUM 6.3.3).</summary>
    public const double CoverageFactor = 2.0;

    /// <summary>The result's unit.</summary>
    public string Unit { get; }

    /// <summary>The result for the inputs' values, in <see cref="Unit"/>.</summary>
    public double Value { get; }

    /// <summary>One line for each input, in the order given.</summary>
    public IReadOnlyList<BudgetLine> Lines { get; }

    /// <summary>The combined standard uncertainty, in <see cref="Unit"/>.</summary>
    public double CombinedStandardUncertainty { get; }

    /// <summary>The expanded uncertainty, twice the combined standard uncertainty, in <see cref="Unit"/>.</summary>
    public double ExpandedUncertainty => CoverageFactor * CombinedStandardUncertainty;

    /// <summary>
    /// Effective degrees of freedom by Welch and Satterthwaite (GUM G.2b); infinite when every input's uncertainty is known for certain, null when inputs of
    /// few readings are correlated, for which the formula does not hold.
    /// </summary>
    public double? EffectiveDegreesOfFreedom { get; }

    /// <summary>
    /// The coverage factor for a probability: Student's t for <see cref="EffectiveDegreesOfFreedom"/>, cut to the whole number below (GUM G.4.1).
    /// </summary>
    /// <param name="probability">Coverage probability, 0.5 to 0.999.</param>
    /// <exception cref="ArgumentOutOfRangeException">A probability outside that range.</exception>
    /// <exception cref="InvalidOperationException">There are no effective degrees of freedom.</exception>
    public double CoverageFactorFor(double probability) => Probabilities.Factor(
        probability,
        EffectiveDegreesOfFreedom ?? throw new InvalidOperationException(
            "Inputs of few readings are correlated, for which no effective degrees of freedom are known; give their uncertainties as known, or draw them one by one."));

    /// <summary>The largest lines, largest first; those that contribute nothing are left out.</summary>
    public IReadOnlyList<BudgetLine> Largest(int count = 3) =>
        [.. Lines.Where(line => line.Contribution > 0.0).OrderByDescending(line => line.Contribution).Take(count)];

    /// <summary>
    /// Propagates through a function. Sensitivities are central differences over a thousandth of each standard uncertainty to either side,
    /// so that a curve's bend inside the uncertainty does not leak into a first-order result.
    /// </summary>
    /// <param name="unit">The unit of the result.</param>
    /// <param name="inputs">The inputs; an input without uncertainty has sensitivity 0.</param>
    /// <param name="result">The result from the inputs' values, in the same order.</param>
    /// <param name="correlations">
    /// Correlation coefficients, −1 to +1, a symmetric square with 1 on its diagonal; null when the inputs are independent.
    /// </param>
    /// <exception cref="ArgumentException">The correlations are not as said.</exception>
    public static Budget Of(
        string unit, IReadOnlyList<Quantity> inputs, Func<IReadOnlyList<double>, double> result, double[,]? correlations = null)
    {
        ArgumentNullException.ThrowIfNull(inputs);
        ArgumentNullException.ThrowIfNull(result);
        var values = inputs.Select(q => q.Value).ToArray();
        var lines = new List<BudgetLine>();
        for (var i = 0; i < inputs.Count; i++)
        {
            var step = inputs[i].StandardUncertainty / 1000.0;
            lines.Add(new BudgetLine(inputs[i], step > 0.0 ? (Moved(i, +step) - Moved(i, -step)) / (2.0 * step) : 0.0));
        }

        return Of(unit, result(values), lines, correlations);

        double Moved(int index, double by)
        {
            var moved = (double[])values.Clone();
            moved[index] += by;
            return result(moved);
        }
    }

    /// <summary>Combines lines whose sensitivities are known already.</summary>
    /// <param name="unit">The unit of the result.</param>
    /// <param name="value">The result for the inputs' values, in that unit.</param>
    /// <param name="lines">One line for each input.</param>
    /// <param name="correlations">Correlation coefficients as in the other overload; null when the inputs are independent.</param>
    /// <exception cref="ArgumentException">The correlations are not a symmetric square with 1 on its diagonal.</exception>
    public static Budget Of(string unit, double value, IReadOnlyList<BudgetLine> lines, double[,]? correlations = null)
    {
        ArgumentNullException.ThrowIfNull(lines);
        Check(correlations, lines.Count);
        var sum = 0.0;
        for (var i = 0; i < lines.Count; i++)
        {
            // Signed: correlated inputs may cancel (GUM equation 16).
            var a = lines[i].Sensitivity * lines[i].Quantity.StandardUncertainty;
            sum += a * a;
            for (var j = 0; correlations is not null && j < i; j++)
            {
                sum += 2.0 * correlations[i, j] * a * lines[j].Sensitivity * lines[j].Quantity.StandardUncertainty;
            }
        }

        // Full cancellation leaves rounding, which may lie on the wrong side of zero.
        var combined = Math.Sqrt(Math.Max(0.0, sum));
        return new Budget(unit, value, [.. lines], combined, DegreesOfFreedom(lines, combined, correlations));
    }

    /// <summary>Such as <c>31.7 ± 8.2 minutes (k = 2)</c>.</summary>
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"{Value:0.0##} ± {ExpandedUncertainty:0.0##} {Unit} (k = 2)");

    private static double? DegreesOfFreedom(IReadOnlyList<BudgetLine> lines, double combined, double[,]? correlations)
    {
        var sum = 0.0;
        for (var i = 0; i < lines.Count; i++)
        {
            var freedom = lines[i].Quantity.DegreesOfFreedom;
            if (double.IsPositiveInfinity(freedom) || lines[i].Contribution == 0.0)
            {
                continue;
            }

            for (var j = 0; correlations is not null && j < lines.Count; j++)
            {
                if (j != i && correlations[i, j] != 0.0)
                {
                    return null;
                }
            }

            sum += Math.Pow(lines[i].Contribution / combined, 4.0) / freedom;
        }

        return sum == 0.0 ? double.PositiveInfinity : 1.0 / sum;
    }

    internal static void Check(double[,]? correlations, int count)
    {
        if (correlations is null)
        {
            return;
        }

        if (correlations.GetLength(0) != count || correlations.GetLength(1) != count)
        {
            throw new ArgumentException(
                $"Correlations of {correlations.GetLength(0)} by {correlations.GetLength(1)} do not fit {count} inputs; give {count} by {count}.", nameof(correlations));
        }

        for (var i = 0; i < count; i++)
        {
            for (var j = 0; j <= i; j++)
            {
                var r = correlations[i, j];
                if (!(r >= -1.0 && r <= 1.0) || r != correlations[j, i] || (i == j && r != 1.0))
                {
                    throw new ArgumentException(
                        string.Create(
                            CultureInfo.InvariantCulture,
                            $"Correlation {r} of inputs {i + 1} and {j + 1} is not allowed; give -1 to +1, the same both ways, and 1 of an input with itself."),
                        nameof(correlations));
                }
            }
        }
    }
}
