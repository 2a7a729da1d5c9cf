using System.Globalization;

namespace SunLessons.Uncertainty;

/// <summary>One input of a measurement: its value, how well it is known, and in what shape. Immutable.</summary>
/// <remarks>Source of the words: JCGM 100:2008 (GUM), 4.1 to 4.3. The unit is a word for people; nothing is converted by it.</remarks>
public sealed record Quantity
{
    private Quantity(string name, string unit, double value, double standardUncertainty, Distribution shape)
    {
        Name = name;
        Unit = unit;
        Value = value;
        StandardUncertainty = standardUncertainty;
        Shape = shape;
    }

    /// <summary>What it is, in plain words.</summary>
    public string Name { get; }

    /// <summary>The unit of value and uncertainty, such as <c>degrees</c> or <c>minutes</c>.</summary>
    public string Unit { get; }

    /// <summary>The estimate, in <see cref="Unit"/>.</summary>
    public double Value { get; }

    /// <summary>The standard uncertainty, in <see cref="Unit"/>; zero or positive.</summary>
    public double StandardUncertainty { get; }

    /// <summary>The shape from which the standard uncertainty was found.</summary>
    public Distribution Shape { get; }

    /// <summary>
    /// Degrees of freedom of the standard uncertainty (GUM G.3), more than 0; infinite where it is known for certain, which is the default.
    /// </summary>
    public double DegreesOfFreedom { get; private init; } = double.PositiveInfinity;

    /// <summary>A quantity known by its standard uncertainty (one standard deviation).</summary>
    /// <exception cref="ArgumentOutOfRangeException">A number is not finite or the uncertainty is negative.</exception>
    public static Quantity Normal(string name, string unit, double value, double standardUncertainty) =>
        new(name, unit, Finite(value), Size(standardUncertainty), Distribution.Normal);

    /// <summary>A quantity that lies within plus or minus a half-width, equally likely everywhere (GUM 4.3.7).</summary>
    /// <exception cref="ArgumentOutOfRangeException">A number is not finite or the half-width is negative.</exception>
    public static Quantity Uniform(string name, string unit, double value, double halfWidth) =>
        new(name, unit, Finite(value), Size(halfWidth) / Math.Sqrt(3.0), Distribution.Uniform);

    /// <summary>A quantity that lies within plus or minus a half-width, likeliest in the middle (GUM 4.3.9).</summary>
    /// <exception cref="ArgumentOutOfRangeException">A number is not finite or the half-width is negative.</exception>
    public static Quantity Triangular(string name, string unit, double value, double halfWidth) =>
        new(name, unit, Finite(value), Size(halfWidth) / Math.Sqrt(6.0), Distribution.Triangular);

    /// <summary>A quantity in a given shape; the size is the standard uncertainty of a bell and the half-width of the other shapes.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A number is not finite or the size is negative.</exception>
    public static Quantity Of(string name, string unit, double value, double size, Distribution shape) => shape switch
    {
        Distribution.Uniform => Uniform(name, unit, value, size),
        Distribution.Triangular => Triangular(name, unit, value, size),
        _ => Normal(name, unit, value, size),
    };

    /// <summary>The mean of repeated readings: their standard deviation over the root of their number, one degree of freedom less than readings (GUM 4.2).</summary>
    /// <param name="name">What it is, in plain words.</param>
    /// <param name="unit">The unit of the readings.</param>
    /// <param name="readings">Two readings or more, in that unit.</param>
    /// <exception cref="ArgumentException">Fewer than two readings, or one that is not finite.</exception>
    public static Quantity FromReadings(string name, string unit, IReadOnlyList<double> readings)
    {
        ArgumentNullException.ThrowIfNull(readings);
        if (readings.Count < 2 || !readings.All(double.IsFinite))
        {
            throw new ArgumentException(
                $"{readings.Count.ToString(CultureInfo.InvariantCulture)} readings of \"{name}\" cannot show their scatter; give 2 or more finite numbers.", nameof(readings));
        }

        var mean = readings.Average();
        var variance = readings.Sum(x => (x - mean) * (x - mean)) / (readings.Count - 1);
        return Normal(name, unit, mean, Math.Sqrt(variance / readings.Count)).WithDegreesOfFreedom(readings.Count - 1);
    }

    /// <summary>The same bell with its standard uncertainty known from few readings only: drawn as a t-distribution by <see cref="MonteCarlo"/> (JCGM 101, 6.4.9).</summary>
    /// <param name="degreesOfFreedom">Degrees of freedom, 1 or more; infinite for a bell of known width.</param>
    /// <exception cref="ArgumentOutOfRangeException">Fewer than 1 degree of freedom.</exception>
    /// <exception cref="InvalidOperationException">The quantity is no bell.</exception>
    public Quantity WithDegreesOfFreedom(double degreesOfFreedom) => !(degreesOfFreedom >= 1.0)
        ? throw new ArgumentOutOfRangeException(
            nameof(degreesOfFreedom),
            $"{degreesOfFreedom.ToString(CultureInfo.InvariantCulture)} degrees of freedom are not allowed; give 1 or more, one less than the number of readings.")
        : Shape == Distribution.Normal
            ? this with { DegreesOfFreedom = degreesOfFreedom }
            : throw new InvalidOperationException(
                $"\"{Name}\" is known by its limits, which have no degrees of freedom; make it with Quantity.Normal if its uncertainty came from readings.");

    /// <summary>Such as <c>level, east to west = 0 ± 0.577 degrees (standard)</c>.</summary>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture, $"{Name} = {Value:0.######} ± {StandardUncertainty:0.###} {Unit} (standard)");

    private static double Finite(double value) => double.IsFinite(value)
        ? value
        : throw new ArgumentOutOfRangeException(nameof(value), "A quantity's value must be a finite number; leave an unknown one out of the budget.");

    private static double Size(double size) => double.IsFinite(size) && size >= 0.0
        ? size
        : throw new ArgumentOutOfRangeException(
            nameof(size),
            $"Uncertainty {size.ToString(CultureInfo.InvariantCulture)} is not allowed; give 0 or a positive number in the quantity's unit.");
}
