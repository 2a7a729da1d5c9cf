using System.Text.Json;
using SunLessons.Uncertainty;

namespace SunLessons.Tests.Uncertainty;

public class DegreesOfFreedomAndCoverage
{
    private static readonly JsonElement Reference =
        JsonDocument.Parse(File.ReadAllText(Checkout.Authority("uncertainty", "jcgm_reference.json"))).RootElement;

    [Fact]
    public void End_gauge_of_JCGM_100_H1()
    {
        // H.1.6: degrees of freedom of the four first-order parts; the document rounds the result to 16, k = 2.92 and U = 93 nm.
        Quantity[] inputs =
        [
            Quantity.Normal("length of the standard", "nm", 50000623.0, 25.0).WithDegreesOfFreedom(18),
            Quantity.Normal("difference", "nm", 215.0, 9.7).WithDegreesOfFreedom(25.6),
            Quantity.Normal("expansion of the standard", "1/K", 11.5e-6, 1.2e-6),
            Quantity.Normal("temperature", "K", -0.1, 0.41),
            Quantity.Normal("difference of expansion", "1/K", 0.0, 0.58e-6).WithDegreesOfFreedom(50),
            Quantity.Normal("difference of temperature", "K", 0.0, 0.029).WithDegreesOfFreedom(2),
        ];
        var budget = Budget.Of("nm", inputs, x => x[0] + x[1] - x[0] * (x[4] * x[3] + x[2] * x[5]));
        var h1 = Reference.GetProperty("GUM_H1");

        // Central differences of numbers near 5e7 keep seven figures.
        Assert.Equal(h1.GetProperty("veff").GetDouble(), budget.EffectiveDegreesOfFreedom!.Value, 1e-4);
        Assert.Equal(h1.GetProperty("k99_16").GetDouble(), budget.CoverageFactorFor(0.99), 1e-9);
        Assert.Equal(h1.GetProperty("U99_16").GetDouble(), budget.CoverageFactorFor(0.99) * budget.CombinedStandardUncertainty, 1e-3);

        // H.1.7: 34 nm with the second order, which Monte Carlo has by itself; t-distributed inputs are wider than their scale by √(ν/(ν − 2)), so bells here.
        var drawn = MonteCarlo.Of("nm", [.. inputs.Select(q => q.WithDegreesOfFreedom(double.PositiveInfinity))], x => x[0] + x[1] - x[0] * (x[4] * x[3] + x[2] * x[5]));
        Assert.Equal(h1.GetProperty("uc_with_second_order").GetDouble(), drawn.StandardUncertainty, 0.2);
    }

    [Fact]
    public void Readings_give_the_mean_and_its_scatter()
    {
        // JCGM 100 H.2, five readings of a voltage.
        var volts = Quantity.FromReadings("V", "V", [5.007, 4.994, 5.005, 4.990, 4.999]);
        Assert.Equal(4.999, volts.Value, 12);
        Assert.Equal(Reference.GetProperty("GUM_H2").GetProperty("u_means")[0].GetDouble(), volts.StandardUncertainty, 12);
        Assert.Equal(4.0, volts.DegreesOfFreedom);
    }

    [Fact]
    public void Without_few_readings_the_factor_is_the_bells_and_with_correlated_ones_there_is_none()
    {
        var few = Quantity.Normal("a", "", 0, 1).WithDegreesOfFreedom(4);
        Assert.Equal(1.959963984540054, Budget.Of("", [Quantity.Normal("a", "", 0, 1)], x => x[0]).CoverageFactorFor(0.95), 12);

        // GUM table G.2: t for 4 degrees of freedom and 95 %: 2.78.
        Assert.Equal(2.78, Budget.Of("", [few], x => x[0]).CoverageFactorFor(0.95), 2);
        var correlated = Budget.Of("", [few, few], x => x[0] + x[1], new double[,] { { 1, 0.5 }, { 0.5, 1 } });
        Assert.Null(correlated.EffectiveDegreesOfFreedom);
        Assert.StartsWith(
            "Inputs of few readings are correlated, for which no effective degrees of freedom are known;",
            Assert.Throws<InvalidOperationException>(() => correlated.CoverageFactorFor(0.95)).Message);
        Assert.Throws<InvalidOperationException>(() => Quantity.Uniform("u", "", 0, 1).WithDegreesOfFreedom(3));
        Assert.Throws<ArgumentOutOfRangeException>(() => few.WithDegreesOfFreedom(0));
    }
}
