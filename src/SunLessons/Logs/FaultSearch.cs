using MathNet.Numerics.LinearAlgebra;

namespace SunLessons.Logs;

/// <summary>Gauss and Newton on the exact model, in parameters from which the six faults follow by a matrix.</summary>
internal sealed class FaultSearch
{
    private readonly FaultModel _model;
    private readonly LightMoment[] _moments;
    private readonly double[] _fast;
    private readonly Matrix<double> _map;
    private readonly IReadOnlyList<FaultPrior> _measured;
    private readonly int[] _free;
    private FaultInformation? _information;

    public FaultSearch(
        FaultModel model, LightMoment[] moments, double[] fast, Matrix<double> map, IReadOnlyList<FaultPrior> measured)
    {
        _model = model;
        _moments = moments;
        _fast = fast;
        _map = map;
        _measured = measured;
        Parameters = Vector<double>.Build.Dense(map.ColumnCount);
        Left = new double[fast.Length];

        // What is exactly known is no parameter. Measurements are of single faults, so they come only where the parameters are the faults themselves.
        var fixedOnes = measured.Where(m => m.StandardUncertainty == 0.0).ToList();
        foreach (var known in measured)
        {
            Parameters[(int)known.Fault] = known.Value * Unit(known.Fault);
        }

        _free = [.. Enumerable.Range(0, map.ColumnCount).Where(k => !fixedOnes.Exists(f => (int)f.Fault == k))];
    }

    /// <summary>The parameters, minutes.</summary>
    public Vector<double> Parameters { get; private set; }

    /// <summary>What is left of each reading, minutes.</summary>
    public double[] Left { get; private set; }

    /// <summary>How many directions the readings tell.</summary>
    public int Known => _information!.Known(FaultModel.OpenBeyondMinutes);

    public void Run(double[] weights, double scatter)
    {
        Left = LeftAt(Parameters) ?? throw new ArgumentException("A dial that stands as presumed shows nothing at one of these moments.");
        for (var round = 0; round < 40; round++)
        {
            var (rows, left) = Rows(weights, scatter);
            _information = new FaultInformation(rows);
            var step = _information.Step(left, FaultModel.OpenBeyondMinutes);
            var moved = Try(step);
            if (moved < 1e-7)
            {
                break;
            }
        }
    }

    /// <summary>Standard uncertainty of a parameter, minutes; 0 where it is exactly known.</summary>
    public double StandardUncertainty(int parameter)
    {
        var at = Array.IndexOf(_free, parameter);
        return at < 0 ? 0.0 : _information!.StandardUncertainty(Vector<double>.Build.Dense(_free.Length, k => k == at ? 1.0 : 0.0));
    }

    private static double Unit(Fault fault) => fault == Fault.ClockSlow ? 1.0 : FaultModel.MinutesPerDegree;

    private (Matrix<double> Rows, Vector<double> Left) Rows(double[] weights, double scatter)
    {
        var faults = _map * Parameters;
        var rows = new List<Vector<double>>();
        var left = new List<double>();
        for (var i = 0; i < _moments.Length; i++)
        {
            // A moment at the edge of the light may have no slope; it then says nothing.
            if (_model.Slope(faults, _moments[i]) is { } slope)
            {
                var size = Math.Sqrt(weights[i]) / scatter;
                var full = _map.TransposeThisAndMultiply(slope) * size;
                rows.Add(Vector<double>.Build.Dense(_free.Length, k => full[_free[k]]));
                left.Add(Left[i] * size);
            }
        }

        foreach (var prior in _measured.Where(m => m.StandardUncertainty > 0.0))
        {
            var u = prior.StandardUncertainty * Unit(prior.Fault);
            rows.Add(Vector<double>.Build.Dense(_free.Length, k => _free[k] == (int)prior.Fault ? 1.0 / u : 0.0));
            left.Add((prior.Value * Unit(prior.Fault) - Parameters[(int)prior.Fault]) / u);
        }

        if (rows.Count == 0)
        {
            rows.Add(Vector<double>.Build.Dense(_free.Length));
            left.Add(0.0);
        }

        return (Matrix<double>.Build.DenseOfRowVectors(rows), Vector<double>.Build.DenseOfEnumerable(left));
    }

    /// <summary>Takes the step, or as much of it as leaves the dial readable; how far it went, minutes.</summary>
    private double Try(Vector<double> step)
    {
        for (var part = 1.0; part > 1e-6; part /= 2.0)
        {
            var tried = Parameters.Clone();
            for (var k = 0; k < _free.Length; k++)
            {
                tried[_free[k]] += part * step[k];
            }

            if (LeftAt(tried) is { } left)
            {
                Parameters = tried;
                Left = left;
                return part * step.AbsoluteMaximum();
            }
        }

        return 0.0;
    }

    private double[]? LeftAt(Vector<double> parameters)
    {
        var faults = _map * parameters;
        var left = new double[_fast.Length];
        for (var i = 0; i < left.Length; i++)
        {
            if (_model.Fast(faults, _moments[i]) is not { } shown)
            {
                return null;
            }

            left[i] = Math.IEEERemainder(_fast[i] - shown, 1440.0);
        }

        return left;
    }
}
