using NodaTime;
using SunLessons.CivilTime;
using SunLessons.Dials;
using SunLessons.Uncertainty;

namespace SunLessons.Readings;

/// <summary>Makes the chain for a reading whose true hour angle is known.</summary>
internal static class ChainBuilder
{
    public static ReadingChain Build(
        GeoPoint place, CivilZone zone, ApparentDay day, DialTime shown, DialAsSet dial, HourAngle hourAngle)
    {
        var instant = day.AtHourAngle(hourAngle);
        var sun = SunNow.At(instant);
        var rule = zone.RuleAt(instant);
        var clock = zone.ClockAt(instant);
        var direction = LocalDirection.FromHourAngle(hourAngle, sun.Declination, place.Latitude);

        // What the dial would show if only its scale and style were wrong.
        // A crooked face may be lit where it would be dark as it was meant to stand: all is then its setting's.
        var standingRight = dial.IsFaultless ? shown : dial.Dial.Shown(DialStance.True, direction) ?? DialTime.FromHourAngle(hourAngle);
        var scale = MinutesBetween(standingRight.HourAngle, hourAngle);
        var setting = MinutesBetween(shown.HourAngle, standingRight.HourAngle);

        var budget = ReadingBudget.Of(dial, place, hourAngle, sun.Declination);
        var longitude = LongitudeMinutes(rule.Meridian - place.Longitude.Angle, day, hourAngle, sun.EquationOfTime, rule, clock);
        var amounts = new (StepName Name, double Minutes, string Cause)[]
        {
            (StepName.Scale, scale, ScaleInWords(dial.Profile, place)),
            (StepName.Setting, setting, SettingInWords(dial)),
            (StepName.Longitude, longitude, LongitudeInWords(longitude)),
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
            Caution = dial.Setting.Caution,
            TakenAsRight = Unmeasured(dial),
            DoubledHour = zone.InstantOf(clock) is ClockAnswer.Doubled doubled ? DoubledInWords(doubled, instant) : null,
            ShownStandardUncertaintyMinutes = budget.StandardUncertainty(null),
        };
    }

    /// <summary>
    /// 4 minutes to the degree that the place lies west of the zone's meridian, less or more whole days: near the date line, and for a clock that keeps
    /// the time of another part of the world, the Sun's day and the clock's have different dates. The whole days are those that lead to the clock's date.
    /// </summary>
    private static double LongitudeMinutes(
        Angle west, ApparentDay day, HourAngle hourAngle, EquationOfTime equation, ClockRule rule, LocalDateTime clock)
    {
        var minutes = west.TimeMinutes;
        var reached = Later(day.Date.At(LocalTime.Noon), hourAngle.Angle.TimeMinutes + minutes - equation.Minutes + rule.DaylightMinutes);
        var left = Period.Between(reached, clock, PeriodUnits.Minutes).Minutes;
        return minutes + Math.Round(left / 1440.0) * 1440.0;
    }

    private static double MinutesBetween(HourAngle from, HourAngle to) => (to.Angle - from.Angle).AroundZero().TimeMinutes;

    private static LocalDateTime Later(LocalDateTime time, double minutes) =>
        time.PlusNanoseconds((long)Math.Round(minutes * 6e10, MidpointRounding.AwayFromZero));

    private static string ScaleInWords(DialProfile profile, GeoPoint place)
    {
        if (profile.ScaleLatitude is not { } scale)
        {
            return "the scale is made for this latitude";
        }

        var made = $"the scale is made for {scale} and the place is at {place.Latitude}";
        return profile.Style == StyleSet.ForPlace ? made + ", with the style set for the place" : made;
    }

    private static string SettingInWords(DialAsSet dial) => dial.Dial.IsLevel ? dial.Setting.InWords
        : dial.Setting.IsMeasured ? StanceInWords.OfFace(dial.Stance)
        : "the face is taken to stand as it was designed";

    private static string LongitudeInWords(double minutes) => Math.Round(minutes, 1) switch
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

    private static List<string> Unmeasured(DialAsSet dial)
    {
        var sentences = new List<string>();
        if (dial.IsFaultless)
        {
            sentences.Add("The dial is taken to be made for this latitude; the doubt of its scale and style is not counted.");
        }

        if (!dial.Dial.IsLevel)
        {
            sentences.Add("How well this face is laid out and how truly it leans is not counted.");
        }
        else if (!dial.Setting.IsMeasured)
        {
            sentences.Add("The dial is taken to stand level and true; the doubt of that is not counted.");
        }
        else if (dial.Setting.DirectionDoubts.Count == 0)
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
}
