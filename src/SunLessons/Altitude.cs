using System.Globalization;

namespace SunLessons;

/// <summary>
/// Height above the horizon, upwards positive, −90° to +90° inclusive. The default value is the horizon.
/// Geometric unless a name or a comment says that refraction is included.
/// </summary>
public readonly record struct Altitude : IComparable<Altitude>
{
    private Altitude(Angle angle) => Angle = angle;

    /// <summary>The altitude as a signed angle, upwards positive.</summary>
    public Angle Angle { get; }

    /// <summary>Degrees, upwards positive, −90 to +90.</summary>
    public double Degrees => Angle.Degrees;

    /// <summary>Radians, upwards positive, −π/2 to +π/2.</summary>
    public double Radians => Angle.Radians;

    /// <summary>Makes an altitude from degrees, upwards positive.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside −90 to +90, or not a number.</exception>
    public static Altitude FromDegrees(double degrees) => double.IsNaN(degrees) || degrees < -90.0 || degrees > 90.0
        ? throw new ArgumentOutOfRangeException(
            nameof(degrees),
            $"Altitude {degrees.ToString("0.######", CultureInfo.InvariantCulture)} degrees is outside -90 to +90 degrees. Give the height above the horizon.")
        : new Altitude(Angle.FromDegrees(degrees));

    /// <summary>Makes an altitude from an angle, upwards positive.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside −90° to +90°.</exception>
    public static Altitude FromAngle(Angle angle) => FromDegrees(angle.Degrees);

    /// <inheritdoc/>
    public int CompareTo(Altitude other) => Angle.CompareTo(other.Angle);

    /// <summary>Such as <c>47.8°</c>.</summary>
    public override string ToString() => Angle.ToString();
}
