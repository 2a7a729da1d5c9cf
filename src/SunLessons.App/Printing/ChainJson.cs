using System.Text.Json.Nodes;
using SunLessons.Places;
using SunLessons.Readings;

namespace SunLessons.App.Printing;

/// <summary>Chains of corrections as JSON. Names of fields carry their units and are kept from version to version.</summary>
public static class ChainJson
{
    /// <summary>All answers of one reading; several where a reading fits several times, with the sentence that names them.</summary>
    public static JsonObject Of(Place place, IReadOnlyList<ReadingChain> chains, string? sentence) => new()
    {
        ["place"] = JsonText.Place(place),
        ["several_in_words"] = sentence,
        ["answers"] = JsonText.List(chains, One),
    };

    /// <summary>One chain.</summary>
    internal static JsonObject One(ReadingChain chain) => new()
    {
        ["date"] = JsonText.Date(chain.Date),
        ["shown_hours"] = chain.Shown.Hours,
        ["steps"] = JsonText.List(chain.Steps, step => new JsonObject
        {
            ["name"] = ChainText.Name(step.Name),
            ["amount_minutes"] = step.Amount.Minutes,
            ["in_words"] = step.InWords,
            ["standard_uncertainty_minutes"] = step.StandardUncertaintyMinutes,
            ["running_time"] = JsonText.Clock(step.RunningTime),
        }),
        ["clock"] = JsonText.Clock(chain.Clock),
        ["clock_offset_minutes"] = chain.Rule.WallOffset.Seconds / 60.0,
        ["instant_utc"] = JsonText.Utc(chain.Instant),
        ["doubled_hour"] = chain.DoubledHour,
        ["caution"] = chain.Caution,
        ["total_minutes"] = chain.Total.Minutes,
        ["standard_uncertainty_minutes"] = chain.Budget.CombinedStandardUncertainty,
        ["coverage_factor"] = Uncertainty.Budget.CoverageFactor,
        ["expanded_uncertainty_minutes"] = chain.Budget.ExpandedUncertainty,
        ["parts"] = JsonText.List(chain.Budget.Lines, line => new JsonObject
        {
            ["name"] = line.Quantity.Name,
            ["contribution_minutes"] = line.Contribution,
        }),
        ["taken_as_right"] = JsonText.List(chain.TakenAsRight, sentence => JsonValue.Create(sentence)),
        ["equation_of_time_seconds"] = chain.EquationOfTime.Seconds,
        ["hour_angle_degrees"] = chain.HourAngle.Degrees,
        ["solar_declination_degrees"] = chain.Declination.Degrees,
        ["sun_azimuth_degrees"] = chain.SunAzimuth.Degrees,
        ["sun_altitude_degrees"] = chain.SunAltitude.Degrees,
        ["time_zone_rules"] = chain.TzdbVersion,
    };
}
