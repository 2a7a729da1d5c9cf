using NodaTime;
using SunLessons.App.Verbs;
using SunLessons.CivilTime;
using SunLessons.Sun;

namespace SunLessons.App.Printing;

/// <summary>The Sun over a place as text for a terminal.</summary>
public static class SunText
{
    /// <summary>The whole answer.</summary>
    public static string Of(SunAnswer answer)
    {
        var times = new SunTimes(answer);
        var lines = new Lines();
        Head(lines, answer, times);
        Position(lines.Gap(), answer);
        Day(lines.Gap(), answer, times);
        Doubt(lines.Gap(), answer);
        return lines.ToString();
    }

    private static void Head(Lines lines, SunAnswer answer, SunTimes times)
    {
        var height = answer.Place.Point.HeightMeters == 0.0 ? "" : $", height {PlainWords.Number(answer.Place.Point.HeightMeters, "0.#")} m";
        lines.Paragraph(PlainWords.Place(answer.Place) + height);
        var shown = times.Shown(answer.Moment.Sun);
        switch (answer.Moment)
        {
            case Moment.Civil { ZoneIsKnown: true } civil:
                // Straight from what was asked: the way through UT1 and back would cost a microsecond.
                shown = answer.Place.Zone.ClockAt(civil.Instant);
                lines.Paragraph($"{PlainWords.Date(shown.Date)}, {PlainWords.Seconds(shown)} by the clock of {answer.Place.ZoneId} ({civil.Rule}; time-zone rules {CivilZones.TzdbVersion}), {PlainWords.Seconds(civil.Instant.InUtc().LocalDateTime)} UTC");
                break;
            case Moment.Civil civil:
                lines.Paragraph($"{PlainWords.Date(civil.Instant.InUtc().Date)}, {PlainWords.Seconds(civil.Instant.InUtc().LocalDateTime)} UTC");
                break;
            default:
                lines.Paragraph($"{PlainWords.Date(shown.Date)}, {PlainWords.Seconds(shown)} UT1 (Julian date {PlainWords.Number(answer.Moment.Sun.Ut1JulianDate, "0.000000")})");
                break;
        }
    }

    private static void Position(Lines lines, SunAnswer answer)
    {
        // An almanac's last digits are shown only to one who gave an almanac's time.
        var fine = answer.Moment is Moment.Almanac;
        var degrees = fine ? "0.00000" : "0.000";
        var equation = answer.Sun.EquationOfTime;
        var declination = answer.Sun.Declination.Degrees;
        lines.Raw($"Where the Sun stands");
        lines.Item("azimuth", PlainWords.Number(answer.InSky.Azimuth.Degrees, degrees) + "°", "from true north through east");
        lines.Item("altitude", PlainWords.Signed(answer.InSky.Altitude.Degrees, degrees) + "°", answer.InSky.Altitude.Degrees >= 0.0 ? "above the level, without air" : "below the level, without air");
        if (answer.Refraction is { } lift)
        {
            lines.Item("altitude through air", PlainWords.Signed(answer.InSky.Altitude.Degrees + lift.Degrees, "0.000") + "°", "lifted by refraction (1010 hPa, 10 °C)");
        }

        lines.Item("hour angle", PlainWords.Signed(answer.InSky.HourAngle.Degrees, degrees) + "°", "from the meridian, + after noon");
        lines.Item("declination of the Sun", PlainWords.Signed(declination, degrees) + "°", declination >= 0.0 ? "north of the equator" : "south of the equator");
        lines.Item("semidiameter", PlainWords.Number(answer.Sun.Semidiameter.Degrees * 60.0, "0.00") + "′", "half the width of the disc");
        lines.Item("penumbra", PlainWords.Number(answer.PenumbraMinutes, "0.00") + " min", "blur of the shadow's edge on a sound dial" + Lines.Text($"; {answer.PenumbraMillimetersPerMeter:0.0} mm a metre behind an edge"));
        lines.Item(
            "equation of time",
            fine ? PlainWords.Signed(equation.Seconds, "0.00") + " s" : PlainWords.Signed(equation.Minutes, "0.00") + " min",
            equation.Seconds >= 0.0 ? "the Sun is ahead of the mean clock" : "the Sun is behind the mean clock");
        lines.Item("a true dial shows", answer.DialShows.ToString(), "local apparent time");
    }

    private static void Day(Lines lines, SunAnswer answer, SunTimes times)
    {
        var day = answer.Day;
        var transit = times.Shown(day.Transit);
        lines.Paragraph($"Its day, {PlainWords.Date(transit.Date)}, {times.Scale}");
        var (rise, set) = day.Events switch
        {
            SunEvents.RisesAndSets both => (both.Rise, both.Set),
            SunEvents.RisesOnly only => (only.Rise, null),
            SunEvents.SetsOnly only => (null, only.Set),
            _ => ((SunInstant?)null, (SunInstant?)null),
        };
        switch (day.Events)
        {
            case SunEvents.NeverSets never:
                lines.Item("rises, sets", "neither", $"stays up: lowest altitude {PlainWords.Signed(never.Lowest.Degrees, "0.0")}°");
                break;
            case SunEvents.NeverRises never:
                lines.Item("rises, sets", "neither", $"stays down: highest altitude {PlainWords.Signed(never.Highest.Degrees, "0.0")}°");
                break;
        }

        if (rise is { } r)
        {
            lines.Item("rises", PlainWords.Minutes(times.Shown(r)), "upper edge on a sea horizon" + OnOtherDay(times.Shown(r), transit));
        }

        lines.Item("transit", PlainWords.Seconds(transit), $"altitude {PlainWords.Signed(day.TransitAltitude.Degrees, "0.00")}°; a true dial shows 12");
        if (set is { } s)
        {
            lines.Item("sets", PlainWords.Minutes(times.Shown(s)), "upper edge on a sea horizon" + OnOtherDay(times.Shown(s), transit));
        }
        else if (rise is not null)
        {
            lines.Item("sets", "not", "it stays up: polar day begins");
        }

        if (rise is null && set is not null)
        {
            lines.Item("rises", "not", "it was up all night: polar day ends");
        }

        Twilights(lines, answer, times);
    }

    private static void Twilights(Lines lines, SunAnswer answer, SunTimes times)
    {
        var transit = times.Shown(answer.Day.Transit);
        string At(SunInstant instant) => PlainWords.Minutes(times.Shown(instant)) + OnOtherDay(times.Shown(instant), transit);
        foreach (var kind in Enum.GetValues<TwilightKind>())
        {
            var depth = Lines.Text($"{-TwilightEvents.LimitOf(kind).Degrees:0}° below");
            var note = answer.Day.Twilight(kind) switch
            {
                TwilightEvents.DawnAndDusk both => $"from {At(both.Dawn)} to {At(both.Dusk)}",
                TwilightEvents.DawnOnly dawn => $"from {At(dawn.Dawn)}; no dusk follows",
                TwilightEvents.DuskOnly dusk => $"to {At(dusk.Dusk)}; no dawn came before",
                TwilightEvents.NeverDarker => "all night: the Sun does not sink so low",
                _ => "not even at noon: the Sun does not come up so far",
            };
            lines.Item(kind.ToString().ToLowerInvariant() + " twilight", depth, note + (kind == TwilightKind.Civil ? " (Sun's centre, without air)" : ""));
        }
    }

    private static string OnOtherDay(LocalDateTime time, LocalDateTime transit)
    {
        var date = time.PlusSeconds(30).Date;
        return date == transit.Date ? "" : ", on " + PlainWords.Date(date);
    }

    private static void Doubt(Lines lines, SunAnswer answer)
    {
        var sun = answer.Moment.Sun;
        if (answer.Moment is not Moment.Civil civil)
        {
            lines.Paragraph($"UT1 and TT - UT1 ({PlainWords.Number(sun.TtMinusUt1Seconds, "0.0##")} s) were given: no model of the Earth's turning is in this. From 1900 to 2100 the Sun's place was found within 0.5″ of ERFA's and the equation of time within 0.05 s.");
            return;
        }

        lines.Paragraph(DeltaT.ModelAt(civil.Instant) + Lines.Text(
            $" UT1 is good to {sun.Ut1UncertaintySeconds:0.00} s, which is as much on a dial; TT - UT1 is {sun.TtMinusUt1Seconds:0.0} s, give or take {sun.DeltaTUncertaintySeconds:0.00} s (k = 1), of which a dial feels nothing."));
    }
}
