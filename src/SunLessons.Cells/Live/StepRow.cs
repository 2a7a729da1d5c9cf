using SunLessons.Figures;

namespace SunLessons.Cells.Live;

/// <summary>One row of a chain of corrections, as a learner reads it.</summary>
/// <param name="Name">The step, such as <c>longitude</c>.</param>
/// <param name="Amount">How much, signed, such as <c>+94.9 min</c>; empty for the first row.</param>
/// <param name="Words">Sign and cause in words, such as <c>add 94.9 min: the dial stands west of the zone's meridian</c>.</param>
/// <param name="Running">The time after the step, such as <c>13:34.9</c>.</param>
/// <param name="Uncertainty">How far it may be off, such as <c>±0.1 min</c>; empty when the chain does not say.</param>
public sealed record StepRow(string Name, string Amount, string Words, string Running, string Uncertainty = "")
{
    /// <summary>Makes a row from a correction: amount and sign in words come from it.</summary>
    /// <param name="name">The step.</param>
    /// <param name="amount">The correction to be added to the reading.</param>
    /// <param name="cause">Why, such as <c>the dial stands west of the zone's meridian</c>; empty for none.</param>
    /// <param name="running">The time after the step.</param>
    /// <param name="uncertainty">How far it may be off; empty when the chain does not say.</param>
    public static StepRow Of(string name, ReadingCorrection amount, string cause, string running, string uncertainty = "")
    {
        ArgumentNullException.ThrowIfNull(cause);
        return new StepRow(name, Axis.Signed(amount.Minutes, 1) + " min", Translated(amount.InWords()) + (cause.Length == 0 ? "" : ": " + Translated(cause)), running, uncertainty);
    }
}
