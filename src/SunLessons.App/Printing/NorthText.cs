using NodaTime;
using SunLessons.Magnetism;
using SunLessons.Places;

namespace SunLessons.App.Printing;

/// <summary>Where a needle points, as text for a terminal.</summary>
public static class NorthText
{
    /// <summary>The whole answer.</summary>
    /// <param name="place">Where.</param>
    /// <param name="date">When.</param>
    /// <param name="known">What the model says.</param>
    /// <param name="expiryNotice">A sentence about the model's end, or null.</param>
    public static string Of(Place place, LocalDate date, NorthAnswer.Known known, string? expiryNotice)
    {
        var lines = new Lines();
        lines.Paragraph($"{PlainWords.Place(place)}, height {PlainWords.Number(place.Point.HeightMeters, "0.#")} m; {PlainWords.Date(date)}");
        lines.Gap();
        if (known.Zone == CompassZone.Blackout)
        {
            lines.Paragraph(known.Summary);
            lines.Gap();
        }

        var degrees = known.Declination.Degrees;
        var side = degrees < 0.0 ? "west" : "east";
        var size = PlainWords.Number(Math.Abs(degrees), "0.00") + "°";
        var change = known.YearlyChange.Degrees;
        lines.Item("the needle points", $"{size} {side}", "of true north (magnetic declination)");
        lines.Item("give or take", PlainWords.Number(known.StandardUncertainty.Degrees, "0.00") + "°", "in 68 of 100 cases (k = 1)");
        lines.Item("moving", PlainWords.Number(Math.Abs(change), "0.00") + "°", $"a year to the {(change < 0.0 ? "west" : "east")}, for a few years");
        lines.Item("compass to true", PlainWords.Signed(degrees, "0.00") + "°", "to be added to a bearing by compass");
        lines.Item("dip", PlainWords.Number(Math.Abs(known.Inclination.Degrees), "0.0") + "°", known.Inclination.Degrees >= 0.0 ? "the needle's north end down" : "the needle's south end down");
        lines.Item("level field", PlainWords.Number(known.HorizontalIntensityNanotesla, "0") + " nT", ZoneInWords(known));
        lines.Item("whole field", PlainWords.Number(known.TotalIntensityNanotesla, "0") + " nT");
        lines.Item("model", known.ModelName, $"answers here for {Year(known.ValidFromYear)} to {Year(known.ValidToYear)}");
        lines.Gap();
        lines.Paragraph($"Source of the give or take: {known.Span.UncertaintySource}.");
        lines.Paragraph("The model knows the Earth's core. Rock, iron and steel near the needle come on top, often by degrees: step away from them. For learning, not for navigation.");
        if (expiryNotice is not null)
        {
            lines.Paragraph(expiryNotice);
        }

        return lines.ToString();
    }

    private static string ZoneInWords(NorthAnswer.Known known) => known.Zone switch
    {
        CompassZone.Blackout => $"too weak: below {CompassZones.BlackoutBelowNanotesla:0} nT no compass can be used (blackout zone)",
        CompassZone.Caution => $"weak: below {CompassZones.CautionBelowNanotesla:0} nT use a compass with caution (caution zone)",
        _ => "turns the needle: strong enough",
    };

    private static string Year(double year) => PlainWords.Number(year, "0.0");
}
