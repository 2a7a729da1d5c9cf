using System.Globalization;

namespace SunLessons;

/// <summary>
/// Longitude of a place: degrees from the prime meridian, EAST positive, −180 to +180 inclusive. The default value is the prime meridian.
/// </summary>
public readonly record struct Longitude : IComparable<Longitude>
{
    private Longitude(Angle angle) => Angle = angle;

    /// <summary>The longitude as a signed angle, east positive.</summary>
    public Angle Angle { get; }

    /// <summary>Degrees, east positive, −180 to +180.</summary>
    public double Degrees => Angle.Degrees;

    /// <summary>Radians, east positive, −π to +π.</summary>
    public double Radians => Angle.Radians;

    /// <summary>Makes a longitude from degrees, east positive.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside −180 to +180, or not a number.</exception>
    public static Longitude FromDegrees(double degrees)
    {
        if (double.IsNaN(degrees) || degrees < -180.0 || degrees > 180.0)
        {
            var text = degrees.ToString("0.######", CultureInfo.InvariantCulture);
            throw new ArgumentOutOfRangeException(
                nameof(degrees),
                $"Longitude {text} degrees is outside -180 to +180 degrees (east positive). Write west as a negative number or with W.");
        }

        return new Longitude(Angle.FromDegrees(degrees));
    }

    /// <summary>Makes a longitude from an angle, east positive.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside −180° to +180°.</exception>
    public static Longitude FromAngle(Angle angle) => FromDegrees(angle.Degrees);

    /// <inheritdoc/>
    public int CompareTo(Longitude other) => Angle.CompareTo(other.Angle);

    /// <summary>Such as <c>8.72° W</c>; up to six decimals, invariant culture.</summary>
    public override string ToString() =>
        Math.Abs(Degrees).ToString("0.######", CultureInfo.InvariantCulture) + (Degrees < 0 ? "° W" : "° E");
}
