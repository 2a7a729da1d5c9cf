using SunLessons.CivilTime;
using SunLessons.Sun;

namespace SunLessons.Readings;

/// <summary>When the Sun is up, as the second half of a sentence that says what to ask instead.</summary>
internal static class DaylightInWords
{
    /// <summary>For one who gave a dial reading.</summary>
    public static string ByDial(GeoPoint place, CivilZone zone, ApparentDay day) => Of(
        place, zone, day, (from, to) => (from, to) switch
        {
            ({ } a, { } b) => $", so give a reading from {Dial(place, a)} to {Dial(place, b)}",
            ({ } a, null) => $", so give a reading after {Dial(place, a)}",
            (null, { } b) => $", so give a reading before {Dial(place, b)}",
            _ => ", so any hour can be read",
        });

    /// <summary>For one who gave a clock time.</summary>
    public static string ByClock(GeoPoint place, CivilZone zone, ApparentDay day) => Of(
        place, zone, day, (from, to) => from is null && to is null ? ", so any hour will do" : ", so ask for a time when it is up");

    private static string Of(GeoPoint place, CivilZone zone, ApparentDay day, Func<SunInstant?, SunInstant?, string> advice)
    {
        return SunDay.Around(SunInstant.FromInstant(day.Noon), place).Events switch
        {
            SunEvents.RisesAndSets e => $"it rises at {Clock(e.Rise)} and sets at {Clock(e.Set)} by the clock{advice(e.Rise, e.Set)}",
            SunEvents.RisesOnly e => $"it rises at {Clock(e.Rise)} by the clock and stays up{advice(e.Rise, null)}",
            SunEvents.SetsOnly e => $"it sets at {Clock(e.Set)} by the clock and stays down{advice(null, e.Set)}",
            SunEvents.NeverRises => "it does not rise at all, so give another date",
            _ => $"it does not set{advice(null, null)}",
        };

        string Clock(SunInstant at) => ReadingChain.TimeText(zone.ClockAt(at.ToInstant()));
    }

    private static DialTime Dial(GeoPoint place, SunInstant at) => DialTime.FromHourAngle(ApparentDay.HourAngleAt(place, at.ToInstant()));
}
