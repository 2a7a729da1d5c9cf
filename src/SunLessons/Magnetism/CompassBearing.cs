namespace SunLessons.Magnetism;

/// <summary>
/// A direction along the horizon counted clockwise from MAGNETIC north, 0° up to but not including 360°. The default value is magnetic
/// north. Counted from true north it is an <see cref="Azimuth"/>; the way between them is <see cref="CompassSigns"/>.
/// </summary>
public readonly record struct CompassBearing
{
    private CompassBearing(Angle angle) => Angle = angle;

    /// <summary>The bearing as an angle, clockwise from magnetic north, within one turn.</summary>
    public Angle Angle { get; }

    /// <summary>Degrees clockwise from magnetic north, 0 up to but not including 360.</summary>
    public double Degrees => Angle.Degrees;

    /// <summary>Makes a bearing from degrees clockwise from magnetic north; any finite number is reduced to one turn.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not a finite number.</exception>
    public static CompassBearing FromDegrees(double degrees) => new(Angle.FromDegrees(degrees).InOneTurn());

    /// <summary>Makes a bearing from an angle clockwise from magnetic north; reduced to one turn.</summary>
    public static CompassBearing FromAngle(Angle angle) => new(angle.InOneTurn());

    /// <summary>Such as <c>340° magnetic</c>.</summary>
    public override string ToString() => Angle + " magnetic";
}
