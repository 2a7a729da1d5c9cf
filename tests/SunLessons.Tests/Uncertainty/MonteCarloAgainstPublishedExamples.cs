using System.Text.Json;
using SunLessons.Uncertainty;

namespace SunLessons.Tests.Uncertainty;

/// <summary>
/// Against JCGM 101:2008 clause 9 and others, recomputed with NumPy (authorities/uncertainty). A tolerance is stated in units of the standard deviation:
/// of a million draws the mean scatters by 0.001, the standard deviation by 0.0007 to 0.0015, an end of a 95 % interval by 0.002 to 0.004 of it; five times that is
/// allowed, so that a right program fails once in a million seeds. The end of a shortest interval scatters more, because near the best place the width hardly changes.
/// </summary>
public class MonteCarloAgainstPublishedExamples
{
    private static readonly JsonElement Clause9 = Read("jcgm_reference.json");
    private static readonly JsonElement Extra = Read("extra_checks.json");

    private static Quantity N(string name, double value, double u) => Quantity.Normal(name, "", value, u);

    private static Quantity U(string name, double low, double high) => Quantity.Uniform(name, "", (low + high) / 2.0, (high - low) / 2.0);

    [Fact]
    public void Four_bells_added_9_2_2() =>
        Compare("JCGM101_9.2.2_gauss", MonteCarlo.Of("", [N("a", 0, 1), N("b", 0, 1), N("c", 0, 1), N("d", 0, 1)], x => x[0] + x[1] + x[2] + x[3]));

    [Fact]
    public void Four_rectangles_added_9_2_3_and_9_2_4()
    {
        var r3 = Math.Sqrt(3.0);
        Quantity[] four = [U("a", -r3, r3), U("b", -r3, r3), U("c", -r3, r3), U("d", -r3, r3)];
        var alike = MonteCarlo.Of("", four, x => x[0] + x[1] + x[2] + x[3]);
        Compare("JCGM101_9.2.3_rect", alike);

        // The closed form of 9.2.3.4: 2√3 (2 − (3/5)^¼).
        Assert.Equal(2.0 * r3 * (2.0 - Math.Pow(0.6, 0.25)), alike.Symmetric().High, 0.02);
        Compare("JCGM101_9.2.4_rect_x4sd10", MonteCarlo.Of("", four, x => x[0] + x[1] + x[2] + 10.0 * x[3]));
    }

    [Fact]
    public void Mass_calibration_9_3_where_first_order_fails()
    {
        Quantity[] inputs = [N("reference", 100000.0, 0.050), N("added", 1.234, 0.020), U("air", 1.10, 1.30), U("weight", 7000, 9000), U("standard", 7950, 8050)];
        var check = FirstOrderCheck.Of("mg", inputs, x => (x[0] + x[1]) * (1 + (x[2] - 1.2) * (1 / x[3] - 1 / x[4])) - 100000.0);
        Compare("JCGM101_9.3_mass_mg", check.MonteCarlo);
        var printed = Clause9.GetProperty("JCGM101_9.3_GUF_first_order").GetProperty("interval95");
        Assert.Equal(printed[0].GetDouble(), check.FirstOrderInterval.Low, 1e-5);
        Assert.Equal(printed[1].GetDouble(), check.FirstOrderInterval.High, 1e-5);

        // JCGM 101 table 7 (from memory): tolerance 0.005 for one digit, ends 0.0451 and 0.0430 apart, not validated.
        Assert.Equal(0.005, check.Tolerance, 1e-12);
        Assert.Equal(FirstOrderVerdict.Fails, check.Verdict);
        Assert.Equal(
            "First order fails here: first order says 1.1285 to 1.3395 mg, 1,000,000 draws say "
                + string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{check.MonteCarloInterval.Low:F4} to {check.MonteCarloInterval.High:F4}; the ends differ by up to {Math.Max(check.LowDifference, check.HighDifference):G2} mg, and 0.005 is allowed. Use the interval of the draws."),
            check.Sentence);
    }

    [Theory]
    [InlineData("0.0", 0.0, "0.0", 0.0)]
    [InlineData("0.0", 0.0, "0.9", 0.9)]
    [InlineData("0.01", 0.01, "0.0", 0.0)]
    [InlineData("0.01", 0.01, "0.9", 0.9)]
    [InlineData("0.05", 0.05, "0.0", 0.0)]
    [InlineData("0.05", 0.05, "0.9", 0.9)]
    public void Comparison_loss_9_4_with_correlation(string x1Text, double x1, string rText, double r)
    {
        double[,] correlations = { { 1, r }, { r, 1 } };
        Compare(
            $"JCGM101_9.4_x1={x1Text}_r={rText}",
            MonteCarlo.Of("", [N("real", x1, 0.005), N("imaginary", 0, 0.005)], x => x[0] * x[0] + x[1] * x[1], correlations: correlations));
    }

    [Fact]
    public void Gauge_block_9_5_with_few_readings_and_limits_not_exactly_known()
    {
        const double NominalNm = 50_000_000.0;
        Quantity[] inputs =
        [
            N("standard", 50000623, 25).WithDegreesOfFreedom(18), N("difference", 215, 6).WithDegreesOfFreedom(24),
            N("random", 0, 4).WithDegreesOfFreedom(5), N("systematic", 0, 7).WithDegreesOfFreedom(8),
            U("expansion", 9.5e-6, 13.5e-6), N("mean temperature", -0.1, 0.2), U("cycle", 0, 1),
            U("a", 0, 1), U("b", 0, 1), U("c", 0, 1), U("d", 0, 1),
        ];
        var drawn = MonteCarlo.Of(
            "nm",
            inputs,
            x =>
            {
                var cyclic = 0.5 * Math.Sin(2.0 * Math.PI * x[6]);
                var expansions = Trapezoid(1.0e-6, 0.1e-6, x[7], x[8]);
                var temperatures = Trapezoid(0.050, 0.025, x[9], x[10]);
                return x[0] + x[1] + x[2] + x[3] - x[0] * (expansions * (x[5] + cyclic) + x[4] * temperatures) - NominalNm;
            });
        Compare("JCGM101_9.5_gauge_nm", drawn, shortest: 0.06);
        var wide = Clause9.GetProperty("JCGM101_9.5_gauge_nm").GetProperty("symmetric_0.99");
        Assert.Equal(wide[0].GetDouble(), drawn.Symmetric(0.99).Low, 0.04 * 36);
        Assert.Equal(wide[1].GetDouble(), drawn.Symmetric(0.99).High, 0.04 * 36);

        // 6.4.3: a rectangle between limits that are themselves only known to plus or minus d.
        static double Trapezoid(double limit, double d, double r1, double r2)
        {
            var low = -limit - d + 2.0 * d * r1;
            return low + (-2.0 * low) * r2;
        }
    }

    [Fact]
    public void A_logarithm_of_a_wide_rectangle_NPL_DEM_ES_011()
    {
        var exact = Extra.GetProperty("NPL_ln_uniform").GetProperty("exact");
        var check = FirstOrderCheck.Of("", [U("x", 0.1, 1.1)], x => Math.Log(x[0]));
        Assert.Equal(exact.GetProperty("mean").GetDouble(), check.MonteCarlo.Mean, 0.005 * 0.61);
        Assert.Equal(exact.GetProperty("sd").GetDouble(), check.MonteCarlo.StandardUncertainty, 0.01 * 0.61);
        Assert.Equal(exact.GetProperty("gum_u").GetDouble(), check.FirstOrder.CombinedStandardUncertainty, 1e-6);
        Assert.Equal(FirstOrderVerdict.Fails, check.Verdict);

        // The density rises up to its upper limit, so the shortest interval ends there: ln 0.15 to ln 1.1, and is sharp.
        var shortest = exact.GetProperty("shortest95");
        Assert.Equal(shortest[0].GetDouble(), check.MonteCarlo.Shortest().Low, 0.01);
        Assert.Equal(shortest[1].GetDouble(), check.MonteCarlo.Shortest().High, 1e-4);
    }

    [Fact]
    public void A_falling_ball_NIST_TN_1900_E3()
    {
        var here = Extra.GetProperty("NIST_TN1900_E3").GetProperty("here");
        Quantity[] inputs = [N("mu", 4.63, 0.0463), N("tM", 61, 6.1), N("tC", 36.6, 5.49), N("rB", 2217, 0.5), N("rM", 1180, 0.5), N("rC", 810, 0.5)];
        var drawn = MonteCarlo.Of("mPa s", inputs, x => x[0] * x[1] * (x[3] - x[4]) / (x[2] * (x[3] - x[5])));
        Assert.Equal(here.GetProperty("mean").GetDouble(), drawn.Mean, 0.006);
        Assert.Equal(here.GetProperty("sd").GetDouble(), drawn.StandardUncertainty, 0.012);
        Assert.Equal(here.GetProperty("sym95")[0].GetDouble(), drawn.Symmetric().Low, 0.02);
        Assert.Equal(here.GetProperty("sym95")[1].GetDouble(), drawn.Symmetric().High, 0.04);
    }

    private static void Compare(string name, MonteCarlo drawn, double shortest = 0.05)
    {
        var expected = Clause9.GetProperty(name);
        var sd = expected.GetProperty("sd").GetDouble();
        Assert.Equal(expected.GetProperty("mean").GetDouble(), drawn.Mean, 0.006 * sd);
        Assert.Equal(sd, drawn.StandardUncertainty, 0.008 * sd);
        Ends(expected.GetProperty("symmetric_0.95"), drawn.Symmetric(), 0.02 * sd);
        Ends(expected.GetProperty("shortest_0.95"), drawn.Shortest(), shortest * sd);
        Assert.True(drawn.Shortest().Width <= drawn.Symmetric().Width);
    }

    private static void Ends(JsonElement expected, CoverageInterval found, double tolerance)
    {
        Assert.Equal(expected[0].GetDouble(), found.Low, tolerance);
        Assert.Equal(expected[1].GetDouble(), found.High, tolerance);
    }

    private static JsonElement Read(string file) =>
        JsonDocument.Parse(File.ReadAllText(Checkout.Authority("uncertainty", file))).RootElement;
}
