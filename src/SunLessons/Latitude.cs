using System.Globalization;

namespace SunLessons;

/// <summary>
/// Geodetic latitude of a place: degrees from the equator, north positive, −90 to +90 inclusive. The default value is the equator.
/// </summary>
public readonly record struct Latitude : IComparable<Latitude>
{
    private Latitude(Angle angle) => Angle = angle;

    /// <summary>The latitude as a signed angle, north positive.</summary>
    public Angle Angle { get; }

    /// <summary>Degrees, north positive, −90 to +90.</summary>
    public double Degrees => Angle.Degrees;

    /// <summary>Radians, north positive, −π/2 to +π/2.</summary>
    public double Radians => Angle.Radians;

    /// <summary>Whether the place lies south of the equator; the equator itself does not.</summary>
    public bool IsSouthern => Angle < Angle.Zero;

    /// <summary>Makes a latitude from degrees, north positive.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside −90 to +90, or not a number.</exception>
    public static Latitude FromDegrees(double degrees)
    {
        if (double.IsNaN(degrees) || degrees < -90.0 || degrees > 90.0)
        {
            var text = degrees.ToString("0.######", CultureInfo.InvariantCulture);
            throw new ArgumentOutOfRangeException(
                nameof(degrees),
                $"Latitude {text} degrees is outside -90 to +90 degrees (north positive). Did you swap latitude and longitude?");
        }

        return new Latitude(Angle.FromDegrees(degrees));
    }

    /// <summary>Makes a latitude from an angle, north positive.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside −90° to +90°.</exception>
    public static Latitude FromAngle(Angle angle) => FromDegrees(angle.Degrees);

    /// <inheritdoc/>
    public int CompareTo(Latitude other) => Angle.CompareTo(other.Angle);

    /// <summary>Such as <c>42.24° N</c>; up to six decimals, invariant culture.</summary>
    public override string ToString() =>
        Math.Abs(Degrees).ToString("0.######", CultureInfo.InvariantCulture) + (IsSouthern ? "° S" : "° N");
}
