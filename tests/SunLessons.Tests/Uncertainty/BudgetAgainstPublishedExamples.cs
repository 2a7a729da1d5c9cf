using SunLessons.Tests.Dials;
using SunLessons.Uncertainty;

namespace SunLessons.Tests.Uncertainty;

public class BudgetAgainstPublishedExamples
{
    private static readonly Dictionary<string, (double Value, double Uncertainty)> Published = AuthorityFile
        .Rows("uncertainty", "first_order.csv")
        .Select(row => (Name: string.Join(',', row[..^2]).Trim('"'), Value: AuthorityFile.Number(row[^2]), U: AuthorityFile.Number(row[^1])))
        .ToDictionary(row => row.Name, row => (row.Value, row.U));

    [Fact]
    public void End_gauge_of_JCGM_100_H1()
    {
        Quantity[] inputs =
        [
            Quantity.Normal("length of the standard", "nm", 50000623.0, 25.0),
            Quantity.Normal("difference", "nm", 215.0, 9.7),
            Quantity.Normal("expansion of the standard", "1/K", 11.5e-6, 1.2e-6),
            Quantity.Normal("temperature", "K", -0.1, 0.41),
            Quantity.Normal("difference of expansion", "1/K", 0.0, 0.58e-6),
            Quantity.Normal("difference of temperature", "K", 0.0, 0.029),
        ];
        var budget = Budget.Of("nm", inputs, x => x[0] + x[1] - x[0] * (x[4] * x[3] + x[2] * x[5]));
        Compare(Published["JCGM 100 H.1"], budget, 1e-6);
        Assert.Equal(["length of the standard", "difference of temperature", "difference"], budget.Largest().Select(line => line.Quantity.Name));
        Assert.Equal(4, budget.Largest(6).Count); // Two of the six have no first-order part, as H.1.4 says.
    }

    [Theory]
    [InlineData("R")]
    [InlineData("X")]
    [InlineData("Z")]
    public void Correlated_readings_of_JCGM_100_H2(string which)
    {
        Quantity Input(string name)
        {
            var (value, u) = Published["JCGM 100 H.2 input " + name];
            return Quantity.Normal(name, "", value, u);
        }

        double Correlation(string pair) => Published["JCGM 100 H.2 correlation " + pair].Value;
        double[,] r = { { 1, Correlation("V,I"), Correlation("V,phi") }, { Correlation("V,I"), 1, Correlation("I,phi") }, { Correlation("V,phi"), Correlation("I,phi"), 1 } };
        var budget = Budget.Of("ohm", [Input("V"), Input("I"), Input("phi")], x => which switch
        {
            "R" => x[0] / x[1] * Math.Cos(x[2]),
            "X" => x[0] / x[1] * Math.Sin(x[2]),
            _ => x[0] / x[1],
        }, r);
        Compare(Published["JCGM 100 H.2 " + which], budget, 1e-6);
    }

    [Fact]
    public void Mass_of_JCGM_101_clause_9_3_to_first_order()
    {
        Quantity[] inputs =
        [
            Quantity.Normal("reference", "mg", 100000.0, 0.050),
            Quantity.Normal("added", "mg", 1.234, 0.020),
            Quantity.Uniform("air", "kg/m3", 1.20, 0.10),
            Quantity.Uniform("density of the weight", "kg/m3", 8000, 1000),
            Quantity.Uniform("density of the reference", "kg/m3", 8000, 50),
        ];
        var budget = Budget.Of("mg", inputs, x => (x[0] + x[1]) * (1 + (x[2] - 1.2) * (1 / x[3] - 1 / x[4])) - 100000.0);
        Compare(Published["JCGM 101 9.3"], budget, 1e-5);
    }

    // Relative tolerances: central differences of numbers near 5e7 and 1e5 keep 7 and 6 figures of a sensitivity at a step of a thousandth.
    private static void Compare((double Value, double Uncertainty) published, Budget budget, double relative)
    {
        Assert.Equal(published.Value, budget.Value, 1e-9 * Math.Abs(published.Value) + 1e-9);
        Assert.Equal(published.Uncertainty, budget.CombinedStandardUncertainty, relative * published.Uncertainty);
        Assert.Equal(2.0 * published.Uncertainty, budget.ExpandedUncertainty, 2.0 * relative * published.Uncertainty);
    }
}
