using System.Text.Json.Nodes;
using NodaTime;
using SunLessons.Magnetism;
using SunLessons.Places;

namespace SunLessons.App.Printing;

/// <summary>Where a needle points, as JSON.</summary>
public static class NorthJson
{
    /// <summary>The whole answer; parameters as in <see cref="NorthText.Of"/>.</summary>
    public static JsonObject Of(Place place, LocalDate date, NorthAnswer.Known known, string? expiryNotice) => new()
    {
        ["place"] = JsonText.Place(place, withZone: false),
        ["date"] = JsonText.Date(date),
        ["decimal_year"] = known.DecimalYear,
        ["magnetic_declination_degrees"] = known.Declination.Degrees,
        ["standard_uncertainty_degrees"] = known.StandardUncertainty.Degrees,
        ["uncertainty_source"] = known.Span.UncertaintySource,
        ["yearly_change_degrees_per_year"] = known.YearlyChange.Degrees,
        ["inclination_degrees"] = known.Inclination.Degrees,
        ["horizontal_intensity_nanotesla"] = known.HorizontalIntensityNanotesla,
        ["total_intensity_nanotesla"] = known.TotalIntensityNanotesla,
        ["compass_zone"] = known.Zone switch
        {
            CompassZone.Blackout => "blackout",
            CompassZone.Caution => "caution",
            _ => "fine",
        },
        ["model"] = known.ModelName,
        ["model_valid_from_year"] = known.ValidFromYear,
        ["model_valid_to_year"] = known.ValidToYear,
        ["in_words"] = known.Summary,
        ["expiry_notice"] = expiryNotice,
    };
}
