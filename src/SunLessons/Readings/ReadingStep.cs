using NodaTime;

namespace SunLessons.Readings;

/// <summary>One named step of the chain from the dial to the clock.</summary>
/// <param name="Name">Which step.</param>
/// <param name="Amount">What is added to the running time, exactly (not rounded).</param>
/// <param name="Cause">Why, in plain words, such as <c>the dial is west of the zone's meridian</c>.</param>
/// <param name="StandardUncertaintyMinutes">The standard uncertainty that this step brings in, minutes of time; zero or positive.</param>
/// <param name="RunningTime">The time after this step, with the date it falls on.</param>
public sealed record ReadingStep(
    StepName Name, ReadingCorrection Amount, string Cause, double StandardUncertaintyMinutes, LocalDateTime RunningTime)
{
    /// <summary>Such as <c>add 94.9 min: the dial is west of the zone's meridian</c>.</summary>
    public string InWords => $"{Amount.InWords()}: {Cause}";
}
