using System.Globalization;
using NodaTime;
using SunLessons.Readings;

namespace SunLessons.Logs;

/// <summary>When the next reading would tell most.</summary>
/// <param name="Clock">Date and clock time in the place's zone.</param>
/// <param name="HourAngle">The Sun's hour angle then.</param>
/// <param name="Improves">The combination that is known worst and that this reading tells best.</param>
/// <param name="Before">Its standard uncertainty without the reading, degrees or, for the constant, minutes.</param>
/// <param name="After">Its standard uncertainty with the reading, in the same unit.</param>
public sealed record NextObservation(LocalDateTime Clock, HourAngle HourAngle, Combination Improves, double Before, double After)
{
    /// <summary>One sentence for the owner of the dial.</summary>
    public string Sentence => string.Create(
        CultureInfo.InvariantCulture,
        $"Read the dial next at {ReadingChain.TimeText(Clock)} on {ReadingChain.DateText(Clock.Date)}, weather permitting: what is known worst now, to {Before:0.0#} {(Improves == Combination.Constant ? "minutes" : "degrees")}, will then be known to {After:0.0#}.");
}
