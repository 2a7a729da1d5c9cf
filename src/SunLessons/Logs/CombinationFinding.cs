using System.Globalization;

namespace SunLessons.Logs;

/// <summary>What a log says of one combination of faults.</summary>
/// <param name="Which">The combination.</param>
/// <param name="Value">In <see cref="Unit"/>; null where it stays open with these readings.</param>
/// <param name="StandardUncertainty">In <see cref="Unit"/>; infinite where nothing at all is known.</param>
public sealed record CombinationFinding(Combination Which, double? Value, double StandardUncertainty)
{
    /// <summary>Degrees, or minutes for the constant.</summary>
    public string Unit => Which == Combination.Constant ? "minutes" : "degrees";

    /// <summary>One sentence for the owner of the dial.</summary>
    public string Sentence
    {
        get
        {
            var what = Which switch
            {
                Combination.Constant => "The same at every hour and season (a turn about the style, or clock, longitude or zone)",
                Combination.StyleSideways => "The style off the pole sideways, as a clockwise twist turns it",
                Combination.StyleForLatitude => "The style off the pole in height, as for a place further north",
                _ => "The hour lines drawn for a latitude further north than the style's",
            };
            return Value is { } value
                ? string.Create(CultureInfo.InvariantCulture, $"{what}: {value:+0.00;-0.00;0.00} {Unit}, standard uncertainty {StandardUncertainty:0.00}.")
                : double.IsFinite(StandardUncertainty)
                    ? string.Create(CultureInfo.InvariantCulture, $"{what}: open with these readings (standard uncertainty {StandardUncertainty:0} {Unit}, which says nothing).")
                    : $"{what}: open with these readings.";
        }
    }
}
