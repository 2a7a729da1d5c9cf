using SunLessons.CivilTime;
using SunLessons.Sun;

namespace SunLessons.Readings;

/// <summary>When the Sun is up, by the clock and by the dial, as the second half of a sentence.</summary>
internal static class DaylightInWords
{
    public static string Of(GeoPoint place, CivilZone zone, ApparentDay day)
    {
        var events = SunDay.Around(SunInstant.FromInstant(day.Noon), place).Events;
        return events switch
        {
            SunEvents.RisesAndSets e =>
                $"it rises at {Clock(e.Rise)} and sets at {Clock(e.Set)} by the clock, so give a reading from {Dial(e.Rise)} to {Dial(e.Set)}",
            SunEvents.RisesOnly e => $"it rises at {Clock(e.Rise)} by the clock and stays up, so give a reading after {Dial(e.Rise)}",
            SunEvents.SetsOnly e => $"it sets at {Clock(e.Set)} by the clock and stays down, so give a reading before {Dial(e.Set)}",
            SunEvents.NeverRises => "it does not rise at all, so give another date",
            _ => "it does not set, so any hour can be read",
        };

        string Clock(SunInstant at) => ReadingChain.TimeText(zone.ClockAt(at.ToInstant()));

        string Dial(SunInstant at) => DialTime.FromHourAngle(ApparentDay.HourAngleAt(place, at.ToInstant())).ToString();
    }
}
