using System.Globalization;
using NodaTime;

namespace SunLessons.CivilTime;

/// <summary>
/// Which instant a clock on the wall meant. A clock reading has exactly one of three answers: <see cref="One"/> instant,
/// none because the clock was moved forward over it (<see cref="Skipped"/>), or two because it was moved back (<see cref="Doubled"/>).
/// Nothing is chosen silently.
/// </summary>
public abstract record ClockAnswer
{
    private ClockAnswer(LocalDateTime clock, string zoneId) => (Clock, ZoneId) = (clock, zoneId);

    /// <summary>The clock reading that was asked about.</summary>
    public LocalDateTime Clock { get; }

    /// <summary>The zone whose law was asked.</summary>
    public string ZoneId { get; }

    /// <summary>One sentence that gives the answer or says why there is not exactly one and what to write instead.</summary>
    public abstract string Message { get; }

    private static string Date(LocalDateTime t) => t.ToString("d MMMM uuuu", CultureInfo.InvariantCulture);

    private static string Time(LocalDateTime t) => t.ToString(t.Second == 0 ? "HH:mm" : "HH:mm:ss", CultureInfo.InvariantCulture);

    private static string UtcTime(Instant t) => Time(t.InUtc().LocalDateTime) + " UTC";

    /// <summary>The reading happened once.</summary>
    public sealed record One : ClockAnswer
    {
        internal One(LocalDateTime clock, string zoneId, Instant instant, ClockRule rule)
            : base(clock, zoneId) => (Instant, Rule) = (instant, rule);

        /// <summary>When it was.</summary>
        public Instant Instant { get; }

        /// <summary>The law in force then.</summary>
        public ClockRule Rule { get; }

        /// <inheritdoc/>
        public override string Message => $"{Time(Clock)} on {Date(Clock)} in {ZoneId} is {UtcTime(Instant)} ({Rule}).";
    }

    /// <summary>The reading never happened: the clock was moved forward over it.</summary>
    public sealed record Skipped : ClockAnswer
    {
        internal Skipped(LocalDateTime clock, string zoneId, Instant change, ClockRule ruleBefore, ClockRule ruleAfter)
            : base(clock, zoneId)
        {
            Change = change;
            RuleBefore = ruleBefore;
            RuleAfter = ruleAfter;
        }

        /// <summary>When the clock was moved.</summary>
        public Instant Change { get; }

        /// <summary>The law until the change.</summary>
        public ClockRule RuleBefore { get; }

        /// <summary>The law from the change on.</summary>
        public ClockRule RuleAfter { get; }

        /// <summary>How far the clock was moved forward; positive.</summary>
        public Duration MovedForward => Duration.FromSeconds(RuleAfter.WallOffset.Seconds - RuleBefore.WallOffset.Seconds);

        /// <summary>The reading the clock never quite reached: what it was moved from.</summary>
        public LocalDateTime MovedFrom => Change.WithOffset(RuleBefore.WallOffset).LocalDateTime;

        /// <summary>The first reading after the change: what the clock was moved to.</summary>
        public LocalDateTime MovedTo => Change.WithOffset(RuleAfter.WallOffset).LocalDateTime;

        /// <summary>The instant meant if the clock was read under the new law already: just before the change.</summary>
        public Instant JustBefore => Clock.WithOffset(RuleAfter.WallOffset).ToInstant();

        /// <summary>The instant meant if the clock had not been moved yet: just after the change (a forgotten clock).</summary>
        public Instant JustAfter => Clock.WithOffset(RuleBefore.WallOffset).ToInstant();

        /// <inheritdoc/>
        public override string Message
        {
            get
            {
                var before = JustBefore.WithOffset(RuleBefore.WallOffset).LocalDateTime;
                var after = JustAfter.WithOffset(RuleAfter.WallOffset).LocalDateTime;
                return $"Clock time {Time(Clock)} on {Date(Clock)} does not exist in {ZoneId}: the clock was moved from {Time(MovedFrom)} to {Time(MovedTo)}. "
                    + $"Write {Named(before)} or {Named(after)}.";
            }
        }

        // Samoa skipped a whole day in December 2011: the answer then needs its date.
        private string Named(LocalDateTime t) => t.Date == Clock.Date ? Time(t) : $"{Time(t)} on {Date(t)}";
    }

    /// <summary>The reading happened twice: the clock was moved back over it.</summary>
    public sealed record Doubled : ClockAnswer
    {
        internal Doubled(LocalDateTime clock, string zoneId, Instant earlier, ClockRule ruleEarlier, Instant later, ClockRule ruleLater)
            : base(clock, zoneId)
        {
            Earlier = earlier;
            RuleEarlier = ruleEarlier;
            Later = later;
            RuleLater = ruleLater;
        }

        /// <summary>The first time the clock showed this.</summary>
        public Instant Earlier { get; }

        /// <summary>The law in force at the earlier answer.</summary>
        public ClockRule RuleEarlier { get; }

        /// <summary>The second time the clock showed this.</summary>
        public Instant Later { get; }

        /// <summary>The law in force at the later answer.</summary>
        public ClockRule RuleLater { get; }

        /// <inheritdoc/>
        public override string Message =>
            $"Clock time {Time(Clock)} on {Date(Clock)} happens twice in {ZoneId}: first at {UtcTime(Earlier)} ({RuleEarlier}), again at {UtcTime(Later)} ({RuleLater}). "
            + "Say which one you mean: the earlier or the later.";
    }
}
