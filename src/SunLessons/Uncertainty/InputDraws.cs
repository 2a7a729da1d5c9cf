using System.Globalization;

namespace SunLessons.Uncertainty;

/// <summary>
/// Draws the inputs of a measurement (JCGM 101, 6.4): bells by inversion, bells of few readings as scaled-and-shifted t, uniform and triangular from one
/// and two uniform numbers, correlated bells by the triangular root of their correlations (C.5).
/// </summary>
internal sealed class InputDraws
{
    private readonly Quantity[] _inputs;
    private readonly double[] _size;
    private readonly double[][]? _root;

    public InputDraws(IReadOnlyList<Quantity> inputs, double[,]? correlations)
    {
        _inputs = [.. inputs];
        _size = [.. _inputs.Select(q => q.Shape switch
        {
            Distribution.Uniform => q.StandardUncertainty * Math.Sqrt(3.0),
            Distribution.Triangular => q.StandardUncertainty * Math.Sqrt(6.0),
            _ => q.StandardUncertainty,
        })];
        if (correlations is not null)
        {
            Budget.Check(correlations, _inputs.Length);
            RefuseOtherShapes(correlations);
            _root = Root(correlations);
        }
    }

    public int Count => _inputs.Length;

    /// <summary>One draw of all inputs. <paramref name="scratch"/> is as long as the inputs.</summary>
    public void Draw(ref Xoshiro256 random, Span<double> values, Span<double> scratch)
    {
        for (var i = 0; i < _inputs.Length; i++)
        {
            var input = _inputs[i];
            scratch[i] = input.Shape switch
            {
                Distribution.Uniform => 2.0 * random.Uniform() - 1.0,
                Distribution.Triangular => random.Uniform() + random.Uniform() - 1.0,
                _ => double.IsPositiveInfinity(input.DegreesOfFreedom)
                    ? PortableMath.NormalQuantile(random.Uniform())
                    : StudentT(ref random, input.DegreesOfFreedom),
            };
        }

        for (var i = 0; i < _inputs.Length; i++)
        {
            var deviate = scratch[i];
            if (_root is not null)
            {
                var row = _root[i];
                deviate = 0.0;
                for (var j = 0; j <= i; j++)
                {
                    deviate += row[j] * scratch[j];
                }
            }

            values[i] = _inputs[i].Value + _size[i] * deviate;
        }
    }

    /// <summary>Bailey (1994), Mathematics of Computation 62, 779: the polar method for t with any degrees of freedom (from memory; JCGM 101 C.6 uses another way).</summary>
    private static double StudentT(ref Xoshiro256 random, double degreesOfFreedom)
    {
        while (true)
        {
            var u = 2.0 * random.Uniform() - 1.0;
            var v = 2.0 * random.Uniform() - 1.0;
            var w = u * u + v * v;
            if (w <= 1.0)
            {
                return u * Math.Sqrt(degreesOfFreedom * (PortableMath.Exp(-2.0 / degreesOfFreedom * PortableMath.Log(w)) - 1.0) / w);
            }
        }
    }

    private void RefuseOtherShapes(double[,] correlations)
    {
        for (var i = 0; i < _inputs.Length; i++)
        {
            for (var j = 0; j < _inputs.Length; j++)
            {
                if (i != j && correlations[i, j] != 0.0 && !(_inputs[i].Shape == Distribution.Normal && double.IsPositiveInfinity(_inputs[i].DegreesOfFreedom)))
                {
                    throw new ArgumentException(
                        $"Input \"{_inputs[i].Name}\" is correlated but not a bell of known width: JCGM 101 gives a joint distribution for bells only; make it with Quantity.Normal and no degrees of freedom, or name the shared cause as an input of its own.",
                        nameof(correlations));
                }
            }
        }
    }

    /// <summary>The lower triangular root; a zero pivot is allowed (wholly correlated inputs), a negative one is not.</summary>
    private static double[][] Root(double[,] r)
    {
        // Rounding of a sum of some ten products of numbers up to 1.
        const double Rounding = 1e-14;
        var n = r.GetLength(0);
        var root = new double[n][];
        for (var i = 0; i < n; i++)
        {
            root[i] = new double[n];
            for (var j = 0; j <= i; j++)
            {
                var sum = r[i, j];
                for (var k = 0; k < j; k++)
                {
                    sum -= root[i][k] * root[j][k];
                }

                if (i == j ? sum < -Rounding : root[j][j] == 0.0 && Math.Abs(sum) > Math.Sqrt(Rounding))
                {
                    throw new ArgumentException(
                        string.Create(CultureInfo.InvariantCulture, $"The correlations contradict one another at input {i + 1}; no quantities can be correlated like this, so compute them from joint readings."));
                }

                root[i][j] = i == j ? (sum > Rounding ? Math.Sqrt(sum) : 0.0) : root[j][j] == 0.0 ? 0.0 : sum / root[j][j];
            }
        }

        return root;
    }
}
