using SunLessons.Uncertainty;

namespace SunLessons.Tests.Uncertainty;

public class BudgetArithmetic
{
    [Fact]
    public void Independent_parts_add_in_squares_and_like_parts_plainly()
    {
        // Three parts of 0.5, 0.4 and 1.0 minutes: sqrt(0.25 + 0.16 + 1) = 1.187.
        Quantity[] parts = [Quantity.Normal("a", "min", 0, 0.5), Quantity.Normal("b", "min", 0, 0.4), Quantity.Normal("c", "min", 0, 1.0)];
        Assert.Equal(1.187, Budget.Of("min", parts, x => x.Sum()).CombinedStandardUncertainty, 3);

        double[,] alike = { { 1, 1, 1 }, { 1, 1, 1 }, { 1, 1, 1 } };
        Assert.Equal(1.9, Budget.Of("min", parts, x => x.Sum(), alike).CombinedStandardUncertainty, 9);

        // A difference of two equal, wholly correlated parts is free of them.
        double[,] pair = { { 1, 1 }, { 1, 1 } };
        Assert.Equal(0.0, Budget.Of("min", [parts[0], parts[0]], x => x[0] - x[1], pair).CombinedStandardUncertainty, 9);
    }

    [Fact]
    public void An_input_without_uncertainty_contributes_nothing_and_is_not_among_the_largest()
    {
        var budget = Budget.Of("min", [Quantity.Uniform("a", "min", 3, 0), Quantity.Triangular("b", "min", 2, Math.Sqrt(6.0))], x => x[0] * x[1]);
        Assert.Equal(6.0, budget.Value);
        Assert.Equal(3.0, budget.CombinedStandardUncertainty, 9);
        Assert.Equal("b", Assert.Single(budget.Largest()).Quantity.Name);
        Assert.Equal("6.0 ± 6.0 min (k = 2)", budget.ToString());
    }

    [Fact]
    public void Bad_input_gets_one_sentence()
    {
        var negative = Assert.Throws<ArgumentOutOfRangeException>(() => Quantity.Normal("a", "min", 0, -1));
        Assert.StartsWith("Uncertainty -1 is not allowed; give 0 or a positive number in the quantity's unit.", negative.Message);
        var nan = Assert.Throws<ArgumentOutOfRangeException>(() => Quantity.Normal("a", "min", double.NaN, 1));
        Assert.StartsWith("A quantity's value must be a finite number; leave an unknown one out of the budget.", nan.Message);
        Quantity[] two = [Quantity.Normal("a", "min", 0, 1), Quantity.Normal("b", "min", 0, 1)];
        var shape = Assert.Throws<ArgumentException>(() => Budget.Of("min", two, x => x[0], new double[1, 1]));
        Assert.StartsWith("Correlations of 1 by 1 do not fit 2 inputs; give 2 by 2.", shape.Message);
        var lopsided = Assert.Throws<ArgumentException>(() => Budget.Of("min", two, x => x[0], new double[,] { { 1, 0.5 }, { 0.4, 1 } }));
        Assert.StartsWith("Correlation 0.4 of inputs 2 and 1 is not allowed; give -1 to +1, the same both ways, and 1 of an input with itself.", lopsided.Message);
    }
}
