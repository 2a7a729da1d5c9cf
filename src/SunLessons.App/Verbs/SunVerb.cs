using System.CommandLine;
using SunLessons.App.Printing;
using SunLessons.Sun;

namespace SunLessons.App.Verbs;

/// <summary><c>sun</c>: where the Sun stands over a place, and its day there.</summary>
public static class SunVerb
{
    /// <summary>Makes the verb.</summary>
    public static Command Create()
    {
        var place = new PlaceOptions();
        var moment = new MomentOptions();
        var json = new Option<bool>("--json") { Description = "Answer as JSON, with units in the names of the fields (see JSON.md)." };
        var verb = new Command("sun", "Where the Sun stands over a place: azimuth, altitude, declination, equation of time, rising, transit and setting.");
        place.AddTo(verb, withHeight: true);
        moment.AddTo(verb);
        verb.Options.Add(json);
        verb.SetAction(parsed =>
        {
            var needsZone = moment.NeedsZone(parsed);
            var where = place.Read(parsed, needsZone);
            var when = moment.Read(parsed, where, place.ZoneIsKnown(parsed));
            if (when is Moment.Almanac && place.ZoneWasTyped(parsed))
            {
                throw new BadInputException("--zone has no part in --ut1-jd, whose times are all UT1; leave --zone out, or give --utc instead.");
            }

            var sun = SolarEphemeris.At(when.Sun);
            var answer = new SunAnswer(where, when, sun, SunInSky.Of(sun, where.Point), DayOf(where, when));
            Console.Out.WriteLine(parsed.GetValue(json) ? JsonText.Of(SunJson.Of(answer)) : SunText.Of(answer));
            return 0;
        });
        return verb;
    }

    // With a clock the day is the date that it shows; without one, the day about the nearest transit.
    private static SunDay DayOf(Places.Place place, Moment moment) => moment is Moment.Civil { ZoneIsKnown: true } civil
        ? SunDay.For(place, place.Zone.ClockAt(civil.Instant).Date)
        : SunDay.Around(moment.Sun, place.Point);
}
