using System.Globalization;

namespace SunLessons;

/// <summary>
/// How far the Sun stands north of the celestial equator: north positive; never more than some 23.44° in our age, allowed −90° to +90°.
/// The default value is an equinox. Not to be confused with <see cref="MagneticDeclination"/>.
/// </summary>
public readonly record struct SolarDeclination : IComparable<SolarDeclination>
{
    private SolarDeclination(Angle angle) => Angle = angle;

    /// <summary>The declination as a signed angle, north positive.</summary>
    public Angle Angle { get; }

    /// <summary>Degrees, north positive.</summary>
    public double Degrees => Angle.Degrees;

    /// <summary>Radians, north positive.</summary>
    public double Radians => Angle.Radians;

    /// <summary>Makes a declination from degrees, north positive.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside −90 to +90, or not a number.</exception>
    public static SolarDeclination FromDegrees(double degrees) => double.IsNaN(degrees) || degrees < -90.0 || degrees > 90.0
        ? throw new ArgumentOutOfRangeException(
            nameof(degrees),
            $"Solar declination {degrees.ToString("0.######", CultureInfo.InvariantCulture)} degrees is outside -90 to +90 degrees. The Sun keeps within 23.5 of the equator.")
        : new SolarDeclination(Angle.FromDegrees(degrees));

    /// <summary>Makes a declination from an angle, north positive.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside −90° to +90°.</exception>
    public static SolarDeclination FromAngle(Angle angle) => FromDegrees(angle.Degrees);

    /// <inheritdoc/>
    public int CompareTo(SolarDeclination other) => Angle.CompareTo(other.Angle);

    /// <summary>Such as <c>-23.4°</c>.</summary>
    public override string ToString() => Angle.ToString();
}
