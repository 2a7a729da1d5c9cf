namespace SunLessons.Magnetism;

/// <summary>
/// The figure read on a compass card: 0° up to but not including 360°, as engraved. It is not a direction yet: what it means depends on
/// the instrument (<see cref="Compass"/>). The default value is 0. Neighbours: <see cref="CompassBearing"/>, <see cref="Azimuth"/>.
/// </summary>
public readonly record struct CompassReading
{
    private CompassReading(Angle figure) => Figure = figure;

    /// <summary>The figure as an angle, within one turn.</summary>
    public Angle Figure { get; }

    /// <summary>The figure in degrees, 0 up to but not including 360.</summary>
    public double Degrees => Figure.Degrees;

    /// <summary>Makes a reading from the engraved degrees; any finite number is reduced to one turn.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not a finite number.</exception>
    public static CompassReading FromDegrees(double degrees) => new(Angle.FromDegrees(degrees).InOneTurn());

    /// <summary>Such as <c>reads 345°</c>.</summary>
    public override string ToString() => "reads " + Figure;
}
