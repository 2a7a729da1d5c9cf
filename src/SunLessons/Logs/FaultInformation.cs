using MathNet.Numerics.LinearAlgebra;

namespace SunLessons.Logs;

/// <summary>What rows of information say of parameters: solution and covariance by singular values, open directions kept open instead of guessed.</summary>
internal sealed class FaultInformation
{
    private readonly Matrix<double> _v;
    private readonly Vector<double> _s;
    private readonly Matrix<double> _u;

    /// <param name="rows">One row a reading or measurement, divided by its standard uncertainty.</param>
    public FaultInformation(Matrix<double> rows)
    {
        // As many rows as columns at least, or the decomposition leaves out the open directions.
        var padded = rows.RowCount >= rows.ColumnCount
            ? rows
            : rows.Stack(Matrix<double>.Build.Dense(rows.ColumnCount - rows.RowCount, rows.ColumnCount));
        var svd = padded.Svd(computeVectors: true);
        _s = svd.S;
        _u = svd.U;
        _v = svd.VT.Transpose();
    }

    /// <summary>How many directions are known better than a limit.</summary>
    public int Known(double limit) => _s.Count(s => s * limit > 1.0);

    /// <summary>The step that explains what is left of the rows, moving only in directions known better than a limit.</summary>
    public Vector<double> Step(Vector<double> left, double limit)
    {
        var step = Vector<double>.Build.Dense(_v.RowCount);
        for (var k = 0; k < _s.Count; k++)
        {
            if (_s[k] * limit > 1.0)
            {
                var along = 0.0;
                for (var i = 0; i < left.Count; i++)
                {
                    along += _u[i, k] * left[i];
                }

                step += _v.Column(k) * (along / _s[k]);
            }
        }

        return step;
    }

    /// <summary>The standard uncertainty of a combination of the parameters; infinite where nothing is known of it.</summary>
    public double StandardUncertainty(Vector<double> combination)
    {
        // Slopes are differences good to 1e-9; a singular value below that is rounding.
        var rounding = 1e-9 * _s.Maximum();
        var variance = 0.0;
        for (var k = 0; k < _s.Count; k++)
        {
            var part = _v.Column(k).DotProduct(combination);
            if (_s[k] > rounding)
            {
                variance += part / _s[k] * (part / _s[k]);
            }
            else if (Math.Abs(part) > 1e-6 * combination.L2Norm())
            {
                return double.PositiveInfinity;
            }
        }

        return Math.Sqrt(variance);
    }
}
