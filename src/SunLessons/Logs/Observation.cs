using NodaTime;

namespace SunLessons.Logs;

/// <summary>One reading of a dial beside a clock.</summary>
/// <param name="Line">The line of the log it stands on, counted from 1.</param>
/// <param name="Clock">What the clock showed, with its date, in the place's zone.</param>
/// <param name="Shown">What the dial showed.</param>
/// <param name="Observer">Who read it; may be empty.</param>
/// <param name="Note">Whatever the observer wrote; may be empty.</param>
public sealed record Observation(int Line, LocalDateTime Clock, DialTime Shown, string Observer, string Note)
{
    /// <summary>What that clock was ahead of UTC, if it was written down; null for the law of the place's zone. It tells the two moments of a doubled hour apart.</summary>
    public Offset? ClockOffset { get; init; }
}
