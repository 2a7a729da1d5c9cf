using System.Text.Json.Nodes;
using SunLessons.App.Verbs;
using SunLessons.CivilTime;
using SunLessons.Sun;

namespace SunLessons.App.Printing;

/// <summary>The Sun over a place as JSON.</summary>
public static class SunJson
{
    /// <summary>The whole answer. Every field is always there; what has no value is null.</summary>
    public static JsonObject Of(SunAnswer answer)
    {
        var times = new SunTimes(answer);
        var civil = answer.Moment as Moment.Civil;
        var at = answer.Moment.Sun;
        var (sun, sky) = (answer.Sun, answer.InSky);
        return new JsonObject
        {
            ["place"] = JsonText.Place(answer.Place, withZone: civil is { ZoneIsKnown: true }),
            ["moment"] = Time(times, at),
            ["clock_offset_minutes"] = civil is { ZoneIsKnown: true } ? civil.Rule.WallOffset.Seconds / 60.0 : null,
            ["time_zone_rules"] = civil is { ZoneIsKnown: true } ? CivilZones.TzdbVersion : null,
            ["tt_minus_ut1_seconds"] = at.TtMinusUt1Seconds,
            ["tt_minus_ut1_standard_uncertainty_seconds"] = civil is null ? null : at.DeltaTUncertaintySeconds,
            ["ut1_standard_uncertainty_seconds"] = civil is null ? null : at.Ut1UncertaintySeconds,
            ["time_model"] = civil is null ? null : DeltaT.ModelAt(civil.Instant),
            ["azimuth_degrees"] = sky.Azimuth.Degrees,
            ["altitude_geometric_degrees"] = sky.Altitude.Degrees,
            ["altitude_refracted_degrees"] = answer.Refraction is { } lift ? sky.Altitude.Degrees + lift.Degrees : null,
            ["hour_angle_degrees"] = sky.HourAngle.Degrees,
            ["solar_declination_topocentric_degrees"] = sky.Declination.Degrees,
            ["solar_declination_degrees"] = sun.Declination.Degrees,
            ["right_ascension_degrees"] = sun.RightAscension.Degrees,
            ["equation_of_time_seconds"] = sun.EquationOfTime.Seconds,
            ["semidiameter_arcminutes"] = sun.Semidiameter.Degrees * 60.0,
            ["penumbra_minutes"] = answer.PenumbraMinutes,
            ["penumbra_millimeters_per_meter"] = answer.PenumbraMillimetersPerMeter,
            ["distance_astronomical_units"] = sun.DistanceAu,
            ["true_dial_shows_hours"] = answer.DialShows.Hours,
            ["day"] = Day(answer.Day, times),
        };
    }

    private static JsonObject Day(SunDay day, SunTimes times)
    {
        (string Kind, SunInstant? Rise, SunInstant? Set, Altitude? NotPassed) found = day.Events switch
        {
            SunEvents.RisesAndSets both => ("rises and sets", both.Rise, both.Set, null),
            SunEvents.RisesOnly only => ("rises only", only.Rise, null, null),
            SunEvents.SetsOnly only => ("sets only", null, only.Set, null),
            SunEvents.NeverSets never => ("never sets", null, null, never.Lowest),
            SunEvents.NeverRises never => ("never rises", null, null, never.Highest),
            _ => throw new InvalidOperationException($"A kind of day was added and not handled: {day.Events}."),
        };
        return new JsonObject
        {
            ["kind"] = found.Kind,
            ["rise"] = found.Rise is { } r ? Time(times, r) : null,
            ["transit"] = Time(times, day.Transit),
            ["set"] = found.Set is { } s ? Time(times, s) : null,
            ["transit_altitude_degrees"] = day.TransitAltitude.Degrees,
            ["altitude_not_passed_degrees"] = found.NotPassed is { } e ? e.Degrees : null,
            ["twilight_civil"] = Twilight(day, TwilightKind.Civil, times),
            ["twilight_nautical"] = Twilight(day, TwilightKind.Nautical, times),
            ["twilight_astronomical"] = Twilight(day, TwilightKind.Astronomical, times),
        };
    }

    private static JsonObject Twilight(SunDay day, TwilightKind kind, SunTimes times)
    {
        (string Kind, SunInstant? Dawn, SunInstant? Dusk, Altitude? NotPassed) found = day.Twilight(kind) switch
        {
            TwilightEvents.DawnAndDusk both => ("dawn and dusk", both.Dawn, both.Dusk, null),
            TwilightEvents.DawnOnly only => ("dawn only", only.Dawn, null, null),
            TwilightEvents.DuskOnly only => ("dusk only", null, only.Dusk, null),
            TwilightEvents.NeverDarker never => ("never darker", null, null, never.Lowest),
            TwilightEvents.NeverLighter never => ("never lighter", null, null, never.Highest),
            var other => throw new InvalidOperationException($"A kind of twilight was added and not handled: {other}."),
        };
        return new JsonObject
        {
            ["kind"] = found.Kind,
            ["dawn"] = found.Dawn is { } dawn ? Time(times, dawn) : null,
            ["dusk"] = found.Dusk is { } dusk ? Time(times, dusk) : null,
            ["altitude_not_passed_degrees"] = found.NotPassed is { } e ? e.Degrees : null,
        };
    }

    private static JsonObject Time(SunTimes times, SunInstant instant) => new()
    {
        ["clock"] = times.Clock(instant) is { } clock ? JsonText.Clock(clock) : null,
        ["utc"] = times.Utc(instant) is { } utc ? JsonText.Utc(utc) : null,
        ["ut1"] = JsonText.Clock(SunTimes.Ut1(instant)),
        ["ut1_julian_date"] = instant.Ut1JulianDate,
    };
}
