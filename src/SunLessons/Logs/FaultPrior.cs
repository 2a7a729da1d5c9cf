using System.Globalization;

namespace SunLessons.Logs;

/// <summary>An independent measurement of one fault: a level, a compass, a time signal, a protractor on the style.</summary>
public sealed record FaultPrior
{
    /// <summary>States a measurement.</summary>
    /// <param name="fault">Which fault was measured.</param>
    /// <param name="value">What was found, degrees (<see cref="Fault.ClockSlow"/>: minutes).</param>
    /// <param name="standardUncertainty">Its standard uncertainty, in the same unit; 0 where it is taken as exactly known.</param>
    /// <param name="source">How it was measured, in words; it is quoted beside every named fault.</param>
    /// <exception cref="ArgumentException">No source, or a number that is not finite or negative.</exception>
    public FaultPrior(Fault fault, double value, double standardUncertainty, string source)
    {
        if (string.IsNullOrWhiteSpace(source) || !double.IsFinite(value) || !(standardUncertainty >= 0.0 && double.IsFinite(standardUncertainty)))
        {
            throw new ArgumentException(string.Create(
                CultureInfo.InvariantCulture,
                $"A measurement of {fault} as {value} with uncertainty {standardUncertainty} from \"{source}\" cannot be used; give finite numbers, an uncertainty of 0 or more, and say how it was measured."));
        }

        Fault = fault;
        Value = value;
        StandardUncertainty = standardUncertainty;
        Source = source;
    }

    /// <summary>Which fault was measured.</summary>
    public Fault Fault { get; }

    /// <summary>Degrees, or minutes for the clock.</summary>
    public string Unit => Fault == Fault.ClockSlow ? "minutes" : "degrees";

    /// <summary>What was found, in <see cref="Unit"/>.</summary>
    public double Value { get; }

    /// <summary>Its standard uncertainty, in <see cref="Unit"/>, zero or positive.</summary>
    public double StandardUncertainty { get; }

    /// <summary>How it was measured.</summary>
    public string Source { get; }
}
