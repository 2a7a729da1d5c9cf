namespace SunLessons;

/// <summary>
/// How far magnetic north lies EAST of true north (compass offset): east positive, from −180° (excluded) to +180°.
/// True direction = magnetic direction + this. The default value is zero. Not to be confused with <see cref="SolarDeclination"/>.
/// </summary>
public readonly record struct MagneticDeclination : IComparable<MagneticDeclination>
{
    private MagneticDeclination(Angle angle) => Angle = angle;

    /// <summary>The declination as a signed angle, east positive.</summary>
    public Angle Angle { get; }

    /// <summary>Degrees, east positive.</summary>
    public double Degrees => Angle.Degrees;

    /// <summary>Radians, east positive.</summary>
    public double Radians => Angle.Radians;

    /// <summary>Makes a magnetic declination from degrees, east positive; reduced to half a turn of zero.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not a finite number.</exception>
    public static MagneticDeclination FromDegrees(double degrees) => new(Angle.FromDegrees(degrees).AroundZero());

    /// <summary>Makes a magnetic declination from an angle, east positive; reduced to half a turn of zero.</summary>
    public static MagneticDeclination FromAngle(Angle angle) => new(angle.AroundZero());

    /// <inheritdoc/>
    public int CompareTo(MagneticDeclination other) => Angle.CompareTo(other.Angle);

    /// <summary>Such as <c>26.4°</c>.</summary>
    public override string ToString() => Angle.ToString();
}
