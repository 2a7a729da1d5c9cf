using NodaTime;
using SunLessons.App.Verbs;
using SunLessons.Sun;

namespace SunLessons.App.Printing;

/// <summary>Tells the times of one answer in the scale in which it was asked: the clock of the place, UTC, or UT1.</summary>
/// <param name="answer">The answer.</param>
internal sealed class SunTimes(SunAnswer answer)
{
    /// <summary>The clock of the place, or null where there is none.</summary>
    public LocalDateTime? Clock(SunInstant instant) =>
        answer.Moment is Moment.Civil { ZoneIsKnown: true } ? answer.Place.Zone.ClockAt(instant.ToInstant()) : null;

    /// <summary>Universal time by law, or null where only UT1 was given.</summary>
    public Instant? Utc(SunInstant instant) => answer.Moment is Moment.Civil ? instant.ToInstant() : null;

    /// <summary>UT1 as date and time.</summary>
    public static LocalDateTime Ut1(SunInstant instant) => (Noon2000 + Duration.FromDays(instant.Ut1DaysFromJ2000)).InUtc().LocalDateTime;

    /// <summary>The time to print.</summary>
    public LocalDateTime Shown(SunInstant instant) => Clock(instant) ?? Utc(instant)?.InUtc().LocalDateTime ?? Ut1(instant);

    /// <summary>What scale that is.</summary>
    public string Scale => answer.Moment switch
    {
        Moment.Civil { ZoneIsKnown: true } => "by the clock",
        Moment.Civil => "UTC",
        _ => "UT1",
    };

    private static readonly Instant Noon2000 = Instant.FromUtc(2000, 1, 1, 12, 0);
}
