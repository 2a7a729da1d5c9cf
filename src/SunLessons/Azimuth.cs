namespace SunLessons;

/// <summary>
/// A direction along the horizon: from TRUE north through east, 0° up to but not including 360°. The default value is north.
/// A compass shows a direction from magnetic north, which is not this: see <see cref="MagneticDeclination"/>.
/// </summary>
public readonly record struct Azimuth
{
    private Azimuth(Angle angle) => Angle = angle;

    /// <summary>The azimuth as an angle from north through east, in one turn.</summary>
    public Angle Angle { get; }

    /// <summary>Degrees from north through east, 0 up to but not including 360.</summary>
    public double Degrees => Angle.Degrees;

    /// <summary>Radians from north through east, 0 up to but not including 2π.</summary>
    public double Radians => Angle.Radians;

    /// <summary>The opposite direction: where the shadow of a thing lit from here falls.</summary>
    public Azimuth Opposite => FromDegrees(Degrees + 180.0);

    /// <summary>Makes an azimuth from degrees from north through east; any finite number is reduced to one turn.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not a finite number.</exception>
    public static Azimuth FromDegrees(double degrees) => new(Angle.FromDegrees(degrees).InOneTurn());

    /// <summary>Makes an azimuth from an angle from north through east; reduced to one turn.</summary>
    public static Azimuth FromAngle(Angle angle) => new(angle.InOneTurn());

    /// <summary>The turn from this direction to another, clockwise positive, from −180° (excluded) to +180°.</summary>
    public Angle TurnTo(Azimuth other) => (other.Angle - Angle).AroundZero();

    /// <summary>Such as <c>122.5°</c>.</summary>
    public override string ToString() => Angle.ToString();
}
