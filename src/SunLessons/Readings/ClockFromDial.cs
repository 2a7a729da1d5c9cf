using System.Globalization;
using NodaTime;
using SunLessons.CivilTime;
using SunLessons.Dials;
using SunLessons.Places;
using SunLessons.Uncertainty;

namespace SunLessons.Readings;

/// <summary>From what a dial showed to the clock, as a chain of named steps.</summary>
/// <remarks>
/// <para>The true hour angle is found by the dial model run backwards, with the Sun's declination of that very moment; then the moment itself, with the
/// equation of time of that moment; then the zone's law at that moment.</para>
/// <para>Steps and their amounts, each to be ADDED: scale = the Sun's hour less what the dial would show if it stood right; setting = that less what it showed;
/// longitude = 4 (15 Z − longitude) minutes with Z the base offset in hours, less whole days near the date line; date = minus the equation of time;
/// law = the daylight time in force.</para>
/// </remarks>
public static class ClockFromDial
{
    // Centre of the Sun 50 arcminutes below the level: its upper edge then stands on the sea's horizon, lifted by air (convention of almanacs).
    private const double RisingAltitudeDegrees = -50.0 / 60.0;

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
    /// <exception cref="ArgumentOutOfRangeException">A date for which the Sun's place is not known (outside 1900 to 2100).</exception>
    public static ClockReading Read(GeoPoint place, CivilZone zone, LocalDate date, DialTime shown, DialProfile? profile = null)
    {
        ArgumentNullException.ThrowIfNull(zone);
        profile ??= DialProfile.Faultless;
        var (day, sentence) = ApparentDay.Of(place, zone, date);
        if (day is null)
        {
            return new ClockReading.None(NoClock.NoSuchDay, sentence!);
        }

        if (!profile.IsFaultless && ScaleFault(profile, place) is { } fault)
        {
            return new ClockReading.None(NoClock.DialHasNoScale, fault);
        }

        var chains = Moments(place, day, shown, profile)
            .Select(hourAngle => Chain(place, zone, day, shown, profile, hourAngle))
            .OrderBy(chain => chain.Instant)
            .ToList();
        return chains.Count switch
        {
            0 => Nothing(place, zone, day, shown, profile),
            1 => new ClockReading.One(chains[0]),
            _ => new ClockReading.Several(chains, SeveralInWords(shown, date, chains)),
        };
    }

    /// <summary>Every true hour angle of the day that fits the reading, with the declination of its own moment.</summary>
    private static List<HourAngle> Moments(GeoPoint place, ApparentDay day, DialTime shown, DialProfile profile)
    {
        if (profile.IsFaultless)
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
            foreach (var guess in Fits(day.AtHourAngle(HourAngle.FromHours(start)), place, shown, profile))
            {
                if (Refined(guess, place, day, shown, profile) is { } moment
                    && found.TrueForAll(other => Math.Abs((other.Angle - moment.Angle).AroundZero().TimeMinutes) >= SameMinutes))
                {
                    found.Add(moment);
                }
            }
        }

        return found;
    }

    private static HourAngle? Refined(HourAngle guess, GeoPoint place, ApparentDay day, DialTime shown, DialProfile profile)
    {
        for (var round = 0; round < 50; round++)
        {
            var fits = Fits(day.AtHourAngle(guess), place, shown, profile);
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

    private static IReadOnlyList<HourAngle> Fits(Instant instant, GeoPoint place, DialTime shown, DialProfile profile) =>
        InverseModel.HourAngles(profile.DialAt(place.Latitude), profile.Setting.Stance, place.Latitude, SunNow.At(instant).Declination, shown);

    private static ReadingChain Chain(
        GeoPoint place, CivilZone zone, ApparentDay day, DialTime shown, DialProfile profile, HourAngle hourAngle)
    {
        var instant = day.AtHourAngle(hourAngle);
        var sun = SunNow.At(instant);
        var rule = zone.RuleAt(instant);
        var clock = zone.ClockAt(instant);
        var direction = LocalDirection.FromHourAngle(hourAngle, sun.Declination, place.Latitude);

        // What the dial would show if only its scale and style were wrong.
        var standingRight = profile.IsFaultless
            ? shown
            : ForwardModel.Read(profile.DialAt(place.Latitude), DialStance.True, direction) is DialReading.Shows shows
                ? shows.Time
                : shown; // Not reached: a level plate is lit whenever the Sun is up, and a dial without a scale was refused before.
        var scale = MinutesBetween(standingRight.HourAngle, hourAngle);
        var setting = MinutesBetween(shown.HourAngle, standingRight.HourAngle);

        var budget = ReadingBudget.Of(profile, place, hourAngle, sun.Declination);
        var west = rule.Meridian - place.Longitude.Angle;
        var amounts = new (StepName Name, double Minutes, string Cause)[]
        {
            (StepName.Scale, scale, ScaleInWords(profile, place)),
            (StepName.Setting, setting, profile.Setting.InWords),
            (StepName.Longitude, west.AroundZero().TimeMinutes, LongitudeInWords(west.AroundZero())),
            (StepName.Date, sun.EquationOfTime.ToCorrection().Minutes, DateInWords(sun.EquationOfTime)),
            (StepName.Law, rule.DaylightMinutes, rule.IsDaylightTime ? "daylight time is in force" : "no daylight time is in force"),
        };

        // The Sun's own time stands on the day's noon; the reading lies before it by what scale and setting add.
        var shownTime = Later(day.Date.At(LocalTime.Noon), hourAngle.Angle.TimeMinutes - scale - setting);
        var steps = new List<ReadingStep>();
        var sum = 0.0;
        foreach (var (name, minutes, cause) in amounts)
        {
            sum += minutes;
            steps.Add(new ReadingStep(name, ReadingCorrection.FromMinutes(minutes), cause, budget.StandardUncertainty(name), Later(shownTime, sum)));
        }

        return new ReadingChain
        {
            Place = place,
            ZoneId = zone.Id,
            TzdbVersion = CivilZones.TzdbVersion,
            Date = day.Date,
            Shown = shown,
            ShownTime = shownTime,
            Steps = steps,
            Clock = clock,
            Instant = instant,
            Rule = rule,
            HourAngle = hourAngle,
            Declination = sun.Declination,
            EquationOfTime = sun.EquationOfTime,
            SunAzimuth = direction.Azimuth,
            SunAltitude = direction.Altitude,
            Budget = Budget.Of("minutes", sum, [.. budget.Lines.Select(line => line.Line)]),
            TakenAsRight = Unmeasured(profile),
            DoubledHour = zone.InstantOf(clock) is ClockAnswer.Doubled doubled ? DoubledInWords(doubled, instant) : null,
            ShownStandardUncertaintyMinutes = budget.StandardUncertainty(null),
        };
    }

    private static double MinutesBetween(HourAngle from, HourAngle to) => (to.Angle - from.Angle).AroundZero().TimeMinutes;

    private static LocalDateTime Later(LocalDateTime time, double minutes) =>
        time.PlusNanoseconds((long)Math.Round(minutes * 6e10, MidpointRounding.AwayFromZero));

    private static string? ScaleFault(DialProfile profile, GeoPoint place) =>
        ForwardModel.ScaleFault(profile.DialAt(place.Latitude))?.Sentence;

    private static ClockReading.None Nothing(GeoPoint place, CivilZone zone, ApparentDay day, DialTime shown, DialProfile profile)
    {
        var altitude = LocalDirection.FromHourAngle(
            shown.HourAngle, SunNow.At(day.AtHourAngle(shown.HourAngle)).Declination, place.Latitude).Altitude;
        var when = $"on {ReadingChain.DateText(day.Date)} at {place}";
        var daylight = DaylightInWords.Of(place, zone, day);
        return profile.IsFaultless || altitude.Degrees <= RisingAltitudeDegrees
            ? new ClockReading.None(NoClock.SunIsDown, $"When a dial shows {shown} {when} the Sun is down; {daylight}.")
            : new ClockReading.None(
                NoClock.NeverShown,
                $"At no moment {when} does this dial, as it stands, show {shown}; {daylight}. Check the reading, the date and how the dial stood.");
    }

    private static string ScaleInWords(DialProfile profile, GeoPoint place)
    {
        if (profile.ScaleLatitude is not { } scale)
        {
            return "the scale is made for this latitude";
        }

        var made = $"the scale is made for {scale} and the place is at {place.Latitude}";
        return profile.Style == StyleSet.ForPlace ? made + ", with the style set for the place" : made;
    }

    private static string LongitudeInWords(Angle west) => Math.Round(west.TimeMinutes, 1) switch
    {
        > 0.0 => "the dial is west of the zone's meridian",
        < 0.0 => "the dial is east of the zone's meridian",
        _ => "the dial is on the zone's meridian",
    };

    private static string DateInWords(EquationOfTime equation) => Math.Round(equation.Minutes, 1) switch
    {
        > 0.0 => "the Sun is ahead of the mean clock on this date",
        < 0.0 => "the Sun is behind the mean clock on this date",
        _ => "the Sun and the mean clock agree on this date",
    };

    private static List<string> Unmeasured(DialProfile profile)
    {
        var sentences = new List<string>();
        if (profile.IsFaultless)
        {
            sentences.Add("The dial is taken to be made for this latitude; the doubt of its scale and style is not counted.");
        }

        if (!profile.Setting.IsMeasured)
        {
            sentences.Add("The dial is taken to stand level and true; the doubt of that is not counted.");
        }
        else if (profile.Setting.DirectionDoubts.Count == 0)
        {
            sentences.Add("The direction of the noon line is taken as given; its doubt is not counted.");
        }

        return sentences;
    }

    private static string DoubledInWords(ClockAnswer.Doubled doubled, Instant instant)
    {
        var time = ReadingChain.TimeText(doubled.Clock);
        var (meant, other) = instant == doubled.Earlier
            ? ($"the earlier, {doubled.RuleEarlier}", $"the later, {doubled.RuleLater}")
            : ($"the later, {doubled.RuleLater}", $"the earlier, {doubled.RuleEarlier}");
        return $"The clock shows {time} twice that night because it was moved back: this is {meant}, not {other}.";
    }

    private static string SeveralInWords(DialTime shown, LocalDate date, List<ReadingChain> chains)
    {
        var all = string.Join(" and ", chains.Select(chain => string.Create(
            CultureInfo.InvariantCulture,
            $"{ReadingChain.TimeText(chain.Clock)} (Sun {chain.SunAltitude.Degrees:0} degrees high at azimuth {chain.SunAzimuth.Degrees:0})")));
        return $"This dial shows {shown} {(chains.Count == 2 ? "twice" : $"{chains.Count} times")} on {ReadingChain.DateText(date)}: {all}; look how high the Sun stood, without looking at it: by the length of a shadow.";
    }
}
