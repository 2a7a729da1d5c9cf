using NodaTime;
using SunLessons.CivilTime;
using SunLessons.Dials;
using SunLessons.Places;

namespace SunLessons.Readings;

/// <summary>From a clock time to what a dial should show: the chain of <see cref="ClockFromDial"/> run the other way.</summary>
public static class DialFromClock
{
    /// <summary>What a dial should show at a named place; as the other overload.</summary>
    public static DialForecast At(Place place, LocalDateTime clock, DialProfile? profile = null)
    {
        ArgumentNullException.ThrowIfNull(place);
        return At(place.Point, place.Zone, clock, profile);
    }

    /// <summary>What a dial, as it stands, should show when the clock shows a time.</summary>
    /// <param name="place">Where the dial stands.</param>
    /// <param name="zone">The zone whose clock is meant.</param>
    /// <param name="clock">What the clock shows, with its date.</param>
    /// <param name="profile">What is known of the dial; null for a dial made for the place and standing right.</param>
    public static DialForecast At(GeoPoint place, CivilZone zone, LocalDateTime clock, DialProfile? profile = null)
    {
        ArgumentNullException.ThrowIfNull(zone);
        return zone.InstantOf(clock) switch
        {
            ClockAnswer.One one => At(place, zone, one.Instant, profile),
            ClockAnswer.Doubled doubled => new DialForecast.Two(
                At(place, zone, doubled.Earlier, profile), At(place, zone, doubled.Later, profile), doubled.Message),
            var skipped => new DialForecast.None(skipped.Message),
        };
    }

    /// <summary>What a dial, as it stands, should show at an instant.</summary>
    public static DialForecast At(GeoPoint place, CivilZone zone, Instant instant, DialProfile? profile = null)
    {
        ArgumentNullException.ThrowIfNull(zone);
        if (ApparentDay.OutsideYears(zone.ClockAt(instant).Date) is { } outside)
        {
            return new DialForecast.None(outside);
        }

        var day = ApparentDay.Holding(place, zone, instant);
        var (dial, fault) = DialAsSet.Of(profile ?? DialProfile.Faultless, place, day.Date);
        if (dial is null)
        {
            return new DialForecast.None(fault!.Sentence);
        }

        var hourAngle = ApparentDay.HourAngleAt(place, instant);
        var sun = LocalDirection.FromHourAngle(hourAngle, SunNow.At(instant).Declination, place.Latitude);
        if (dial.IsFaultless)
        {
            return sun.Altitude.Degrees > ClockFromDial.RisingAltitudeDegrees
                ? One(DialTime.FromHourAngle(hourAngle))
                : SunIsDown();
        }

        return dial.Dial.Read(dial.Stance, sun) switch
        {
            ({ } time, _) => One(time),
            (_, { Why: NoReading.SunBelowHorizon }) => SunIsDown(),
            var (_, nothing) => new DialForecast.None(nothing!.Sentence),
        };

        DialForecast.One One(DialTime shown) => new(ChainBuilder.Build(place, zone, day, shown, dial, hourAngle));

        DialForecast.None SunIsDown()
        {
            var clock = zone.ClockAt(instant);
            return new DialForecast.None(
                $"At {ReadingChain.TimeText(clock)} on {ReadingChain.DateText(clock.Date)} at {place} the Sun is down; {DaylightInWords.ByClock(place, zone, day)}.");
        }
    }
}
