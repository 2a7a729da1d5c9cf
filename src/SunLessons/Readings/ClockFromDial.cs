using System.Globalization;
using NodaTime;
using SunLessons.CivilTime;
using SunLessons.Dials;
using SunLessons.Places;

namespace SunLessons.Readings;

/// <summary>From what a dial showed to the clock, as a chain of named steps.</summary>
/// <remarks>
/// <para>The true hour angle is found by the dial model run backwards, with the Sun's declination of that very moment; then the moment itself, with the
/// equation of time of that moment; then the zone's law at that moment.</para>
/// <para>Steps and their amounts, each to be ADDED: scale = the Sun's hour less what the dial would show if it stood right; setting = that less what it showed;
/// longitude = 4 (15 Z − longitude) minutes with Z the base offset in hours, less or more whole days near the date line; date = minus the equation of time;
/// law = the daylight time in force.</para>
/// <para>Level plates, and faces of any lean and direction (<see cref="DialProfile.Face"/>).</para>
/// <para>Left out: the difference of UT1 and UTC (below 0.9 s) and the Sun's parallax (8.8″). Refraction does not move a right dial's reading by a rule that a
/// reader could apply; for a crooked dial it is in the uncertainty.</para>
/// </remarks>
public static class ClockFromDial
{
    // Centre of the Sun 50 arcminutes below the level: its upper edge then stands on the sea's horizon, lifted by air (convention of almanacs).
    internal const double RisingAltitudeDegrees = -50.0 / 60.0;

    // Solutions nearer than this, minutes, are one.
    private const double SameMinutes = 1e-3;

    /// <summary>What a reading says about the clock at a named place; as the other overload.</summary>
    public static ClockReading Read(Place place, LocalDate date, DialTime shown, DialProfile? profile = null)
    {
        ArgumentNullException.ThrowIfNull(place);
        return Read(place.Point, place.Zone, date, shown, profile);
    }

    /// <summary>What a reading says about the clock.</summary>
    /// <param name="place">Where the dial stands.</param>
    /// <param name="zone">The zone whose clock is wanted.</param>
    /// <param name="date">
    /// The day of the reading: the date on which that day's solar noon falls by the clock. Near midnight (polar day) the clock's date may be another.
    /// </param>
    /// <param name="shown">What the dial showed.</param>
    /// <param name="profile">What is known of the dial; null for a dial made for the place and standing right.</param>
    public static ClockReading Read(GeoPoint place, CivilZone zone, LocalDate date, DialTime shown, DialProfile? profile = null)
    {
        ArgumentNullException.ThrowIfNull(zone);
        if (ApparentDay.OutsideYears(date) is { } outside)
        {
            return new ClockReading.None(NoClock.OutsideYears, outside);
        }

        var (day, sentence) = ApparentDay.Of(place, zone, date);
        if (day is null)
        {
            return new ClockReading.None(NoClock.NoSuchDay, sentence!);
        }

        var (dial, fault) = DialAsSet.Of(profile ?? DialProfile.Faultless, place, date);
        if (dial is null)
        {
            return fault!;
        }

        var chains = Moments(place, day, shown, dial)
            .Select(hourAngle => ChainBuilder.Build(place, zone, day, shown, dial, hourAngle))
            .OrderBy(chain => chain.Instant)
            .ToList();
        return chains.Count switch
        {
            0 => Nothing(place, zone, day, shown, dial),
            1 => new ClockReading.One(chains[0]),
            _ => new ClockReading.Several(chains, SeveralInWords(shown, date, chains)),
        };
    }

    /// <summary>Every true hour angle of the day that fits the reading, with the declination of its own moment.</summary>
    private static List<HourAngle> Moments(GeoPoint place, ApparentDay day, DialTime shown, DialAsSet dial)
    {
        if (dial.IsFaultless)
        {
            var only = shown.HourAngle;
            var declination = SunNow.At(day.AtHourAngle(only)).Declination;
            var altitude = LocalDirection.FromHourAngle(only, declination, place.Latitude).Altitude;
            return altitude.Degrees > RisingAltitudeDegrees ? [only] : [];
        }

        // The declination moves by a quarter of a degree in half a day at most; five starts through the day miss no branch that lasts.
        var found = new List<HourAngle>();
        foreach (var start in new[] { -11.9, -6.0, 0.0, 6.0, 11.9 })
        {
            foreach (var guess in Fits(day.AtHourAngle(HourAngle.FromHours(start)), place, shown, dial))
            {
                if (Refined(guess, place, day, shown, dial) is { } moment
                    && found.TrueForAll(other => Math.Abs((other.Angle - moment.Angle).AroundZero().TimeMinutes) >= SameMinutes))
                {
                    found.Add(moment);
                }
            }
        }

        return found;
    }

    private static HourAngle? Refined(HourAngle guess, GeoPoint place, ApparentDay day, DialTime shown, DialAsSet dial)
    {
        for (var round = 0; round < 50; round++)
        {
            var fits = Fits(day.AtHourAngle(guess), place, shown, dial);
            if (fits.Count == 0)
            {
                return null;
            }

            var next = fits.MinBy(fit => Math.Abs((fit.Angle - guess.Angle).AroundZero().Degrees));
            var moved = Math.Abs((next.Angle - guess.Angle).AroundZero().TimeMinutes);
            guess = next;
            if (moved < 1e-7)
            {
                return guess;
            }
        }

        return null;
    }

    private static IReadOnlyList<HourAngle> Fits(Instant instant, GeoPoint place, DialTime shown, DialAsSet dial) =>
        dial.Dial.HourAngles(dial.Stance, place.Latitude, SunNow.At(instant).Declination, shown);

    private static ClockReading.None Nothing(GeoPoint place, CivilZone zone, ApparentDay day, DialTime shown, DialAsSet dial)
    {
        var altitude = LocalDirection.FromHourAngle(
            shown.HourAngle, SunNow.At(day.AtHourAngle(shown.HourAngle)).Declination, place.Latitude).Altitude;
        var when = $"on {ReadingChain.DateText(day.Date)} at {place}";
        var daylight = DaylightInWords.ByDial(place, zone, day);
        return dial.IsFaultless || altitude.Degrees <= RisingAltitudeDegrees
            ? new ClockReading.None(NoClock.SunIsDown, $"When a dial shows {shown} {when} the Sun is down; {daylight}.")
            : new ClockReading.None(
                NoClock.NeverShown,
                $"At no moment {when} does this dial, as it stands, show {shown} while the Sun is up{(dial.Dial.IsLevel ? "" : " and shines on its face")}; {daylight}. Check the reading, the date and how the dial stood.");
    }

    private static string SeveralInWords(DialTime shown, LocalDate date, List<ReadingChain> chains)
    {
        var all = string.Join(" and ", chains.Select(chain => string.Create(
            CultureInfo.InvariantCulture,
            $"{ReadingChain.TimeText(chain.Clock)} (Sun {chain.SunAltitude.Degrees:0} degrees high at azimuth {chain.SunAzimuth.Degrees:0})")));
        return $"This dial shows {shown} {(chains.Count == 2 ? "twice" : $"{chains.Count} times")} on {ReadingChain.DateText(date)}: {all}; look how high the Sun stood, without looking at it: by the length of a shadow.";
    }
}
