using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using NodaTime.Text;
using SunLessons.Places;
using SunLessons.Readings;

namespace SunLessons.App.Printing;

/// <summary>Chains of corrections as JSON. Names of fields carry their units and are kept from version to version.</summary>
public static class ChainJson
{
    /// <summary>Written to be read by people too.</summary>
    public static JsonSerializerOptions Indented { get; } = new() { WriteIndented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>All answers of one reading: usually one, several where a reading fits several times.</summary>
    public static JsonObject Of(Place place, IReadOnlyList<ReadingChain> chains) => new()
    {
        ["place"] = PlaceOf(place),
        ["answers"] = new JsonArray([.. chains.Select(chain => (JsonNode)One(chain))]),
    };

    /// <summary>A place.</summary>
    public static JsonObject PlaceOf(Place place) => new()
    {
        ["name"] = place.Name,
        ["latitude_degrees"] = Math.Round(place.Point.Latitude.Degrees, 9),
        ["longitude_degrees"] = Math.Round(place.Point.Longitude.Degrees, 9),
        ["height_meters"] = place.Point.HeightMeters,
        ["zone"] = place.ZoneId,
    };

    private static JsonObject One(ReadingChain chain) => new()
    {
        ["date"] = LocalDatePattern.Iso.Format(chain.Date),
        ["shown_hours"] = chain.Shown.Hours,
        ["steps"] = new JsonArray([.. chain.Steps.Select(step => (JsonNode)new JsonObject
        {
            ["name"] = ChainText.Name(step.Name),
            ["amount_minutes"] = step.Amount.Minutes,
            ["in_words"] = step.InWords,
            ["standard_uncertainty_minutes"] = step.StandardUncertaintyMinutes,
            ["running_time"] = LocalDateTimePattern.ExtendedIso.Format(step.RunningTime),
        })]),
        ["clock"] = LocalDateTimePattern.ExtendedIso.Format(chain.Clock),
        ["clock_offset_minutes"] = chain.Rule.WallOffset.Seconds / 60.0,
        ["instant_utc"] = InstantPattern.ExtendedIso.Format(chain.Instant),
        ["doubled_hour"] = chain.DoubledHour,
        ["total_minutes"] = chain.Total.Minutes,
        ["standard_uncertainty_minutes"] = chain.Budget.CombinedStandardUncertainty,
        ["coverage_factor"] = Uncertainty.Budget.CoverageFactor,
        ["expanded_uncertainty_minutes"] = chain.Budget.ExpandedUncertainty,
        ["parts"] = new JsonArray([.. chain.Budget.Lines.Select(line => (JsonNode)new JsonObject
        {
            ["name"] = line.Quantity.Name,
            ["contribution_minutes"] = line.Contribution,
        })]),
        ["taken_as_right"] = new JsonArray([.. chain.TakenAsRight.Select(sentence => (JsonNode)sentence)]),
        ["equation_of_time_seconds"] = chain.EquationOfTime.Seconds,
        ["hour_angle_degrees"] = chain.HourAngle.Degrees,
        ["solar_declination_degrees"] = chain.Declination.Degrees,
        ["sun_azimuth_degrees"] = chain.SunAzimuth.Degrees,
        ["sun_altitude_degrees"] = chain.SunAltitude.Degrees,
        ["time_zone_rules"] = chain.TzdbVersion,
    };
}
