using System.Globalization;

namespace SunLessons.Logs;

/// <summary>A named fault, told by the log together with independent measurements.</summary>
/// <param name="Which">The fault.</param>
/// <param name="Value">In <see cref="Unit"/>.</param>
/// <param name="StandardUncertainty">In <see cref="Unit"/>.</param>
/// <param name="RestsOn">The measurements without which it could not be named, in the words they were stated in.</param>
public sealed record FaultFinding(Fault Which, double Value, double StandardUncertainty, IReadOnlyList<string> RestsOn)
{
    /// <summary>Degrees, or minutes for the clock.</summary>
    public string Unit => Which == Fault.ClockSlow ? "minutes" : "degrees";

    /// <summary>One sentence for the owner of the dial.</summary>
    public string Sentence
    {
        get
        {
            var size = string.Create(CultureInfo.InvariantCulture, $"{Math.Abs(Value):0.00}");
            var what = (Which, Value >= 0.0) switch
            {
                (Fault.TwistClockwise, true) => $"The dial is twisted {size} degrees clockwise",
                (Fault.TwistClockwise, _) => $"The dial is twisted {size} degrees anticlockwise",
                (Fault.EastEdgeRaised, true) => $"The east edge is {size} degrees too high",
                (Fault.EastEdgeRaised, _) => $"The east edge is {size} degrees too low",
                (Fault.NorthEdgeRaised, true) => $"The north edge is {size} degrees too high",
                (Fault.NorthEdgeRaised, _) => $"The north edge is {size} degrees too low",
                (Fault.StyleNorthward, true) => $"The style is set for a latitude {size} degrees too far north",
                (Fault.StyleNorthward, _) => $"The style is set for a latitude {size} degrees too far south",
                (Fault.LinesNorthward, true) => $"The hour lines are drawn for a latitude {size} degrees too far north",
                (Fault.LinesNorthward, _) => $"The hour lines are drawn for a latitude {size} degrees too far south",
                (_, true) => $"The clock is {size} minutes slow, or longitude or zone wrong to that effect",
                _ => $"The clock is {size} minutes fast, or longitude or zone wrong to that effect",
            };
            return string.Create(
                CultureInfo.InvariantCulture, $"{what}, standard uncertainty {StandardUncertainty:0.00}, if one trusts: {string.Join("; ", RestsOn)}.");
        }
    }
}
