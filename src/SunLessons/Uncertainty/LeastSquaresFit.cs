namespace SunLessons.Uncertainty;

/// <summary>Parameters found by least squares, with their covariance. Immutable.</summary>
public sealed record LeastSquaresFit
{
    private readonly double[,] _covariance;

    internal LeastSquaresFit(double[] parameters, double[,] covariance, double[] residuals, int degreesOfFreedom, double weightedSum, int rounds)
    {
        Parameters = parameters;
        _covariance = covariance;
        Residuals = residuals;
        DegreesOfFreedom = degreesOfFreedom;
        ResidualSumOfSquares = weightedSum;
        Rounds = rounds;
    }

    /// <summary>The parameters, in the order of the model.</summary>
    public IReadOnlyList<double> Parameters { get; }

    /// <summary>Observation less model, one for each observation, in its unit.</summary>
    public IReadOnlyList<double> Residuals { get; }

    /// <summary>Observations less parameters.</summary>
    public int DegreesOfFreedom { get; }

    /// <summary>Sum of the squared residuals, each divided by its observation's standard uncertainty if these were given.</summary>
    public double ResidualSumOfSquares { get; }

    /// <summary>Residual standard deviation; not a number where there are no degrees of freedom. With uncertainties given, about 1 if these are right.</summary>
    public double ResidualStandardDeviation => Math.Sqrt(ResidualSumOfSquares / DegreesOfFreedom);

    /// <summary>How many rounds the search took; 0 for a linear model.</summary>
    public int Rounds { get; }

    /// <summary>
    /// Covariance of two parameters: from the observations' standard uncertainties if these were given, else from the residuals' scatter.
    /// </summary>
    public double Covariance(int first, int second) => _covariance[first, second];

    /// <summary>Correlation coefficient of two parameters, −1 to +1.</summary>
    public double Correlation(int first, int second) =>
        _covariance[first, second] / Math.Sqrt(_covariance[first, first] * _covariance[second, second]);

    /// <summary>Standard uncertainty of a parameter, in its unit.</summary>
    public double StandardUncertainty(int parameter) => Math.Sqrt(_covariance[parameter, parameter]);

    /// <summary>The parameters as quantities, for a budget; correlations are in <see cref="Correlation"/>.</summary>
    public Quantity Parameter(int parameter, string name, string unit) => Quantity.Normal(name, unit, Parameters[parameter], StandardUncertainty(parameter));
}
