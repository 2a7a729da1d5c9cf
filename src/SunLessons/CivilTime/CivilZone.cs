using NodaTime;
using NodaTime.TimeZones;

namespace SunLessons.CivilTime;

/// <summary>The law of clocks in one zone: from the time-zone database, or a fixed offset from UTC without any daylight time.</summary>
public sealed class CivilZone : IEquatable<CivilZone>
{
    internal CivilZone(string id, DateTimeZone zone) => (Id, Zone) = (id, zone);

    /// <summary>The zone's id, such as <c>Europe/Madrid</c> or, for a fixed offset, <c>UTC+5:45</c>.</summary>
    public string Id { get; }

    /// <summary>The zone as NodaTime knows it.</summary>
    public DateTimeZone Zone { get; }

    /// <summary>The clock on the wall at an instant.</summary>
    public LocalDateTime ClockAt(Instant instant) => instant.InZone(Zone).LocalDateTime;

    /// <summary>The law at an instant: base offset and daylight time.</summary>
    public ClockRule RuleAt(Instant instant) => RuleOf(Zone.GetZoneInterval(instant), instant);

    /// <summary>The instant or instants that a clock reading means; see <see cref="ClockAnswer"/>.</summary>
    public ClockAnswer InstantOf(LocalDateTime clock)
    {
        var map = Zone.MapLocal(clock);
        var (early, late) = (map.EarlyInterval, map.LateInterval);
        if (map.Count == 0)
        {
            var change = early.End;
            return new ClockAnswer.Skipped(clock, Id, change, RuleOf(early, change), RuleOf(late, change));
        }

        var first = map.First().ToInstant();
        if (map.Count == 1)
        {
            return new ClockAnswer.One(clock, Id, first, RuleOf(early, first));
        }

        var last = map.Last().ToInstant();
        return new ClockAnswer.Doubled(clock, Id, first, RuleOf(early, first), last, RuleOf(late, last));
    }

    /// <inheritdoc/>
    public bool Equals(CivilZone? other) => other is not null && Id == other.Id;

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as CivilZone);

    /// <inheritdoc/>
    public override int GetHashCode() => Id.GetHashCode(StringComparison.Ordinal);

    /// <summary>The id.</summary>
    public override string ToString() => Id;

    private ClockRule RuleOf(ZoneInterval interval, Instant instant)
    {
        var least = interval.StandardOffset;
        if (interval.Savings < Offset.Zero)
        {
            least = interval.WallOffset;
        }
        else if (interval.Savings == Offset.Zero)
        {
            // "Standard" time of a zone with negative saving: its base is the smaller offset shown in the same calendar year.
            var year = ClockAt(instant).Year;
            foreach (var other in Zone.GetZoneIntervals(StartOf(year), StartOf(year + 1)))
            {
                if (other.Savings < Offset.Zero && other.StandardOffset == interval.StandardOffset && other.WallOffset < least)
                {
                    least = other.WallOffset;
                }
            }
        }

        return new ClockRule(least, interval.WallOffset - least, interval.Name);
    }

    // NodaTime's calendar ends with the year 9999; a law of clocks that far off is nobody's business, but it must not throw.
    private static Instant StartOf(int year) => year > 9999 ? Instant.MaxValue : Instant.FromUtc(year, 1, 1, 0, 0);
}
