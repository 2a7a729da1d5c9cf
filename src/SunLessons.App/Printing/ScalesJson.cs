using System.Text.Json.Nodes;
using SunLessons.App.Verbs;
using SunLessons.CivilTime;
using SunLessons.Dials;
using SunLessons.Readings;

namespace SunLessons.App.Printing;

/// <summary>The scales of a dial in their order of merit, as JSON.</summary>
public static class ScalesJson
{
    /// <summary>The whole answer, best scale first.</summary>
    public static JsonObject Of(ScalesAnswer answer) => new()
    {
        ["place"] = JsonText.Place(answer.Place),
        ["clock"] = JsonText.Clock(answer.Place.Zone.ClockAt(answer.Instant)),
        ["time_zone_rules"] = CivilZones.TzdbVersion,
        ["instant_utc"] = JsonText.Utc(answer.Instant),
        ["style_set_for"] = answer.Style == StyleSet.ForPlace ? "place" : "scale",
        ["least_sun_altitude_degrees"] = ScaleRanking.LeastSun.Degrees,
        ["scales"] = JsonText.List(answer.Ranked, scale => new JsonObject
        {
            ["scale_latitude_degrees"] = scale.Scale.Degrees,
            ["fast_now_minutes"] = scale.FastMinutesNow,
            ["worst_fast_of_year_minutes"] = scale.WorstFastMinutes,
            ["worst_date"] = scale.WorstOn is { } on ? JsonText.Date(on) : null,
            ["worst_solar_time_hours"] = scale.WorstAt?.Hours,
            ["cannot_be_used_in_words"] = scale.Why,
        }),
    };
}
