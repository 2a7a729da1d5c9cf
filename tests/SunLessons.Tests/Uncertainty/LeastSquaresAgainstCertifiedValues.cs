using System.Text.Json;
using SunLessons.Tests.Dials;
using SunLessons.Uncertainty;

namespace SunLessons.Tests.Uncertainty;

public class LeastSquaresAgainstCertifiedValues
{
    [Theory]
    [InlineData("Pontius", 3, 1e-10)] // A quadratic in x up to 3 million.
    [InlineData("Wampler4", 6, 1e-7)] // Parameters of 1 under residuals of 236,000: the scale of error is the standard deviation, of which 1e-13 is left.
    public void Linear_problems_of_NIST(string name, int parameters, double relative)
    {
        var data = Data(name);
        var design = new double[data.Count, parameters];
        for (var i = 0; i < data.Count; i++)
        {
            for (var j = 0; j < parameters; j++)
            {
                design[i, j] = Math.Pow(data[i].X, j);
            }
        }

        Compare(name, LeastSquares.Linear(design, [.. data.Select(d => d.Y)]), relative);
    }

    [Theory]
    [InlineData("Misra1b", 1)]
    [InlineData("Misra1b", 2)]
    [InlineData("Thurber", 1)]
    [InlineData("Thurber", 2)]
    [InlineData("MGH09", 1)]
    [InlineData("MGH09", 2)]
    public void Nonlinear_problems_of_NIST_from_both_starts(string name, int start)
    {
        var data = Data(name);
        double Model(IReadOnlyList<double> b, double x) => name switch
        {
            "Misra1b" => b[0] * (1.0 - Math.Pow(1.0 + b[1] * x / 2.0, -2.0)),
            "Thurber" => (b[0] + x * (b[1] + x * (b[2] + x * b[3]))) / (1.0 + x * (b[4] + x * (b[5] + x * b[6]))),
            _ => b[0] * (x * x + x * b[1]) / (x * x + x * b[2] + b[3]),
        };
        var begin = Certified(name).Where(row => row[1] != "residual").Select(row => AuthorityFile.Number(row[1 + start])).ToArray();
        var fit = LeastSquares.Nonlinear(b => [.. data.Select(d => Model(b, d.X))], [.. data.Select(d => d.Y)], begin);

        // Certified to eleven figures; at the bottom of a sum of squares half of a double's figures settle a parameter, and central differences give the rest.
        Compare(name, fit, 2e-7);
    }

    [Fact]
    public void Thermometer_calibration_of_JCGM_100_H3()
    {
        double[] t = [21.521, 22.012, 22.512, 23.003, 23.507, 23.999, 24.513, 25.002, 25.503, 26.010, 26.511];
        double[] b = [-0.171, -0.169, -0.166, -0.159, -0.164, -0.165, -0.156, -0.157, -0.159, -0.161, -0.160];
        var design = new double[11, 2];
        for (var i = 0; i < 11; i++)
        {
            design[i, 0] = 1.0;
            design[i, 1] = t[i] - 20.0;
        }

        var fit = LeastSquares.Linear(design, b);
        var h3 = JsonDocument.Parse(File.ReadAllText(Checkout.Authority("uncertainty", "jcgm_reference.json"))).RootElement.GetProperty("GUM_H3");
        double Expected(string name) => h3.GetProperty(name).GetDouble();
        Assert.Equal(Expected("y1"), fit.Parameters[0], 12);
        Assert.Equal(Expected("y2"), fit.Parameters[1], 12);
        Assert.Equal(Expected("s_y1"), fit.StandardUncertainty(0), 12);
        Assert.Equal(Expected("s_y2"), fit.StandardUncertainty(1), 12);
        Assert.Equal(Expected("r"), fit.Correlation(0, 1), 10);
        Assert.Equal(Expected("s"), fit.ResidualStandardDeviation, 12);

        // H.3.4: the correction at 30 degrees, by a budget that takes the correlation.
        double[,] r = { { 1, fit.Correlation(0, 1) }, { fit.Correlation(0, 1), 1 } };
        var at30 = Budget.Of("K", [fit.Parameter(0, "y1", "K"), fit.Parameter(1, "y2", "")], x => x[0] + 10.0 * x[1], r);
        Assert.Equal(Expected("b30"), at30.Value, 10);
        Assert.Equal(Expected("u_b30"), at30.CombinedStandardUncertainty, 9);
    }

    [Fact]
    public void An_open_parameter_and_too_few_observations_get_one_sentence()
    {
        var twice = Assert.Throws<ArgumentException>(() => LeastSquares.Linear(new double[,] { { 1, 2 }, { 2, 4 }, { 3, 6 } }, [1, 2, 3]));
        Assert.Equal("The observations leave parameter 2 open: to rounding, the others say all that it could; observe under other conditions or leave it out.", twice.Message);
        var few = Assert.Throws<ArgumentException>(() => LeastSquares.Linear(new double[,] { { 1, 2 }, { 2, 5 } }, [1, 2]));
        Assert.Equal("2 observations are too few for 2 parameters; give more observations than parameters, or as many with their uncertainties.", few.Message);

        // With uncertainties given, as many will do, and the covariance is theirs.
        var exact = LeastSquares.Linear(new double[,] { { 1, 0 }, { 0, 2 } }, [1, 4], [0.5, 0.5]);
        Assert.Equal(2.0, exact.Parameters[1], 12);
        Assert.Equal(0.25, exact.StandardUncertainty(1), 12);
    }

    private static void Compare(string name, LeastSquaresFit fit, double relative)
    {
        foreach (var row in Certified(name))
        {
            var estimate = AuthorityFile.Number(row[4]);
            if (row[1] == "residual")
            {
                Assert.Equal(1.0, fit.ResidualStandardDeviation / estimate, relative);
                continue;
            }

            var k = int.Parse(row[1], System.Globalization.CultureInfo.InvariantCulture) - 1;
            Assert.Equal(1.0, fit.Parameters[k] / estimate, relative);
            Assert.Equal(1.0, fit.StandardUncertainty(k) / AuthorityFile.Number(row[5]), relative * 10.0);
        }
    }

    private static List<string[]> Certified(string name) =>
        [.. AuthorityFile.Rows("strd", "certified.csv").Where(row => row[0] == name)];

    private static List<(double Y, double X)> Data(string name) =>
        [.. AuthorityFile.Rows("strd", name.ToLowerInvariant() + ".csv").Select(row => (AuthorityFile.Number(row[0]), AuthorityFile.Number(row[1])))];
}
