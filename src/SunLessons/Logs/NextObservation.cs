using System.Globalization;
using NodaTime;
using SunLessons.Readings;

namespace SunLessons.Logs;

/// <summary>When the next reading would tell most.</summary>
/// <param name="Clock">Date and clock time in the place's zone.</param>
/// <param name="HourAngle">The Sun's hour angle then.</param>
/// <param name="Improves">The combination that is known worst and that this reading tells best.</param>
/// <param name="StandardUncertaintyBefore">What is known of it without the reading, in <see cref="Unit"/>.</param>
/// <param name="StandardUncertaintyAfter">What will be known of it with the reading, in <see cref="Unit"/>.</param>
public sealed record NextObservation(LocalDateTime Clock, HourAngle HourAngle, Combination Improves, double StandardUncertaintyBefore, double StandardUncertaintyAfter)
{
    /// <summary>Degrees or minutes.</summary>
    public string Unit => Improves == Combination.Constant ? "minutes" : "degrees";

    /// <summary>One sentence for the owner of the dial.</summary>
    public string Sentence => string.Create(
        CultureInfo.InvariantCulture,
        $"Read the dial next at {ReadingChain.TimeText(Clock)} on {ReadingChain.DateText(Clock.Date)}, weather permitting: what is known worst now, to {StandardUncertaintyBefore:0.0#} {Unit}, will then be known to {StandardUncertaintyAfter:0.0#}.");
}
