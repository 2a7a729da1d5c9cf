using System.Globalization;
using MathNet.Numerics.LinearAlgebra;

namespace SunLessons.Uncertainty;

/// <summary>Linear and nonlinear least squares with covariance (GUM H.3; Bard 1974 for the nonlinear covariance).</summary>
/// <remarks>
/// The matrix work is MathNet's orthogonal decomposition of the design with its columns brought to one length. Its ready-made nonlinear minimiser forms JᵀJ, which squares the
/// condition of a problem; so the search (Levenberg 1944, Marquardt 1963) is written out here on the decomposition.
/// Measured against NIST's certified values (StRD: Pontius, Wampler4, Misra1b, Thurber, MGH09): see the tests.
/// </remarks>
public static class LeastSquares
{
    // A design whose columns differ by less than this, relative, cannot be told from one with a column too many.
    private const double Rounding = 1e-13;
    private const int MostRounds = 2000;

    /// <summary>Fits y = X b.</summary>
    /// <param name="design">X: a row for each observation, a column for each parameter, in the unit of the observations over that of the parameter.</param>
    /// <param name="observations">y, all in one unit or each in that of its uncertainty.</param>
    /// <param name="standardUncertainties">One for each observation in its unit, more than 0; null when all are alike and unknown.</param>
    /// <exception cref="ArgumentException">Numbers that do not fit together, or a design that leaves a parameter open.</exception>
    public static LeastSquaresFit Linear(double[,] design, IReadOnlyList<double> observations, IReadOnlyList<double>? standardUncertainties = null)
    {
        ArgumentNullException.ThrowIfNull(design);
        ArgumentNullException.ThrowIfNull(observations);
        var columns = design.GetLength(1);
        Check(design.GetLength(0), columns, observations, standardUncertainties);
        var weights = Weights(observations.Count, standardUncertainties);
        var x = Matrix<double>.Build.Dense(observations.Count, columns, (i, j) => design[i, j] * weights[i]);
        var y = Vector<double>.Build.Dense(observations.Count, i => observations[i] * weights[i]);
        var (b, inverse) = Solve(x, y);
        var fitted = Matrix<double>.Build.DenseOfArray(design) * b;
        var residuals = observations.Select((value, i) => value - fitted[i]).ToArray();
        return Fit(b.ToArray(), inverse, residuals, weights, standardUncertainties is not null, 0);
    }

    /// <summary>Fits a model that is not linear in its parameters, from a start near them.</summary>
    /// <param name="model">The fitted values for given parameters, one for each observation.</param>
    /// <param name="observations">What was observed, all in one unit or each in that of its uncertainty.</param>
    /// <param name="start">Where the search begins, each parameter in its own unit; the nearest minimum is found, which need not be the deepest.</param>
    /// <param name="standardUncertainties">One for each observation in its unit, more than 0; null when all are alike and unknown.</param>
    /// <exception cref="ArgumentException">Numbers that do not fit together, or observations that leave a parameter open.</exception>
    /// <exception cref="InvalidOperationException">No minimum was reached from that start.</exception>
    public static LeastSquaresFit Nonlinear(
        Func<IReadOnlyList<double>, IReadOnlyList<double>> model,
        IReadOnlyList<double> observations,
        IReadOnlyList<double> start,
        IReadOnlyList<double>? standardUncertainties = null)
    {
        ArgumentNullException.ThrowIfNull(model);
        ArgumentNullException.ThrowIfNull(observations);
        ArgumentNullException.ThrowIfNull(start);
        Check(observations.Count, start.Count, observations, standardUncertainties);
        var weights = Weights(observations.Count, standardUncertainties);
        var b = start.ToArray();
        var r = Residuals(b);
        var sum = r.DotProduct(r);
        if (!double.IsFinite(sum))
        {
            throw new ArgumentException("The model has no finite value at the start; begin nearer to what is sought.", nameof(start));
        }

        var damping = 1e-3;
        var settled = 0;
        for (var round = 1; round <= MostRounds; round++)
        {
            var jacobian = Jacobian(b);
            var moved = false;
            while (damping < 1e20)
            {
                var step = Damped(jacobian, r, damping);
                var tried = b.Select((value, i) => value + step[i]).ToArray();
                var after = Residuals(tried);
                var afterSum = after.DotProduct(after);
                if (afterSum <= sum)
                {
                    // Settled when neither the sum nor any parameter moves in the figures that are left after differencing the model.
                    var quiet = sum - afterSum <= 1e-14 * sum
                        && step.Zip(b).All(pair => Math.Abs(pair.First) <= 1e-10 * (Math.Abs(pair.Second) + 1e-30));
                    settled = quiet ? settled + 1 : 0;
                    (b, r, sum) = (tried, after, afterSum);
                    damping = Math.Max(damping / 10.0, 1e-20);
                    moved = true;
                    break;
                }

                damping *= 10.0;
            }

            // No step helps any more: at the bottom, to rounding.
            if (!moved || settled == 2)
            {
                var (_, inverse) = Solve(Jacobian(b), r);
                var residuals = r.Select((value, i) => value / weights[i]).ToArray();
                return Fit(b, inverse, residuals, weights, standardUncertainties is not null, round);
            }
        }

        throw new InvalidOperationException(
            $"No minimum was reached in {MostRounds.ToString(CultureInfo.InvariantCulture)} rounds; begin nearer to what is sought.");

        Vector<double> Residuals(double[] parameters)
        {
            var values = model(parameters);
            return Vector<double>.Build.Dense(observations.Count, i => (observations[i] - values[i]) * weights[i]);
        }

        Matrix<double> Jacobian(double[] at)
        {
            var columns = new List<Vector<double>>();
            for (var j = 0; j < at.Length; j++)
            {
                // The cube root of the rounding of a double: where the errors of a central difference are least.
                var size = 6e-6 * (at[j] == 0.0 ? 1.0 : Math.Abs(at[j]));
                double[] low = [.. at], high = [.. at];
                low[j] -= size;
                high[j] += size;
                columns.Add((Residuals(low) - Residuals(high)) / (high[j] - low[j]));
            }

            return Matrix<double>.Build.DenseOfColumnVectors(columns);
        }
    }

    /// <summary>The step of Marquardt: the problem with one more row for each parameter, as long as its column times √damping.</summary>
    private static double[] Damped(Matrix<double> jacobian, Vector<double> residuals, double damping)
    {
        var n = jacobian.ColumnCount;
        var rows = Matrix<double>.Build.Dense(n, n, (i, j) => i == j ? Math.Sqrt(damping) * Length(jacobian, i) : 0.0);
        var stacked = jacobian.Stack(rows);
        var right = Vector<double>.Build.Dense(residuals.Count + n, i => i < residuals.Count ? residuals[i] : 0.0);
        return Scaled(stacked, out var lengths).QR(MathNet.Numerics.LinearAlgebra.Factorization.QRMethod.Thin).Solve(right)
            .Select((value, i) => value / lengths[i]).ToArray();
    }

    /// <summary>The solution, and (XᵀX)⁻¹ from the triangular factor so that X is never squared.</summary>
    private static (Vector<double> Solution, Matrix<double> Inverse) Solve(Matrix<double> x, Vector<double> y)
    {
        var scaled = Scaled(x, out var lengths);
        var qr = scaled.QR(MathNet.Numerics.LinearAlgebra.Factorization.QRMethod.Thin);
        for (var j = 0; j < x.ColumnCount; j++)
        {
            if (!(Math.Abs(qr.R[j, j]) > Rounding))
            {
                throw new ArgumentException(
                    $"The observations leave parameter {(j + 1).ToString(CultureInfo.InvariantCulture)} open: to rounding, the others say all that it could; observe under other conditions or leave it out.");
            }
        }

        var half = qr.R.Inverse();
        var inverse = half * half.Transpose();
        var solution = qr.Solve(y);

        // One round of refinement brings back the figures that the first solution lost.
        solution += qr.Solve(y - scaled * solution);
        for (var i = 0; i < x.ColumnCount; i++)
        {
            solution[i] /= lengths[i];
            for (var j = 0; j < x.ColumnCount; j++)
            {
                inverse[i, j] /= lengths[i] * lengths[j];
            }
        }

        return (solution, inverse);
    }

    private static Matrix<double> Scaled(Matrix<double> x, out double[] lengths)
    {
        var sizes = Enumerable.Range(0, x.ColumnCount).Select(j => Length(x, j)).ToArray();
        lengths = sizes;
        return Matrix<double>.Build.Dense(x.RowCount, x.ColumnCount, (i, j) => x[i, j] / sizes[j]);
    }

    private static double Length(Matrix<double> x, int column)
    {
        var length = x.Column(column).L2Norm();
        return length > 0.0 ? length : 1.0;
    }

    private static LeastSquaresFit Fit(
        double[] parameters, Matrix<double> inverse, double[] residuals, double[] weights, bool known, int rounds)
    {
        var sum = residuals.Select((value, i) => value * weights[i] * (value * weights[i])).Sum();
        var freedom = residuals.Length - parameters.Length;
        return new LeastSquaresFit(parameters, (known ? inverse : inverse * (sum / freedom)).ToArray(), residuals, freedom, sum, rounds);
    }

    private static double[] Weights(int count, IReadOnlyList<double>? standardUncertainties) =>
        standardUncertainties is null ? [.. Enumerable.Repeat(1.0, count)] : [.. standardUncertainties.Select(u => 1.0 / u)];

    private static void Check(int rows, int columns, IReadOnlyList<double> observations, IReadOnlyList<double>? uncertainties)
    {
        if (rows != observations.Count || (uncertainties is not null && uncertainties.Count != rows))
        {
            throw new ArgumentException(
                $"{rows} rows, {observations.Count} observations and {uncertainties?.Count ?? rows} uncertainties do not belong together; give as many of each.");
        }

        if (columns == 0 || rows < columns || (rows == columns && uncertainties is null))
        {
            throw new ArgumentException(
                $"{rows} observations are too few for {columns} parameters; give more observations than parameters, or as many with their uncertainties.");
        }

        if (uncertainties is not null && !uncertainties.All(u => u > 0.0 && double.IsFinite(u)))
        {
            throw new ArgumentException("A standard uncertainty of an observation is not a positive number; give all in the observations' unit.");
        }
    }
}
