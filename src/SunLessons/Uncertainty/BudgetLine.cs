namespace SunLessons.Uncertainty;

/// <summary>One line of a budget: an input and what it does to the result.</summary>
/// <param name="Quantity">The input.</param>
/// <param name="Sensitivity">By how much the result moves for one unit of the input (GUM 5.1.3); signed.</param>
public sealed record BudgetLine(Quantity Quantity, double Sensitivity)
{
    /// <summary>What the input's standard uncertainty does to the result, in the result's unit; zero or positive.</summary>
    public double Contribution => Math.Abs(Sensitivity) * Quantity.StandardUncertainty;
}
