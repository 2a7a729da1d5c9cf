using System.Globalization;

namespace SunLessons;

/// <summary>
/// An angle of no particular meaning: positive or negative, not reduced to one turn. Zero is the default value.
/// Quantities of the trade have types of their own (<see cref="Latitude"/>, <see cref="Azimuth"/>, <see cref="HourAngle"/> and others),
/// so that one cannot be taken for another; they are made from and give back an <see cref="Angle"/>.
/// </summary>
public readonly record struct Angle : IComparable<Angle>
{
    private readonly double _radians;

    private Angle(double radians) => _radians = radians;

    /// <summary>The angle zero.</summary>
    public static Angle Zero => default;

    /// <summary>Degrees; a full turn is 360. Any finite number.</summary>
    public double Degrees => _radians * (180.0 / Math.PI);

    /// <summary>Radians; a full turn is 2π. Any finite number.</summary>
    public double Radians => _radians;

    /// <summary>Arcseconds; 3600 to a degree.</summary>
    public double ArcSeconds => Degrees * 3600.0;

    /// <summary>Minutes of time; the sky turns one degree in 4 of them.</summary>
    public double TimeMinutes => Degrees * 4.0;

    /// <summary>The sine.</summary>
    public double Sin => Math.Sin(_radians);

    /// <summary>The cosine.</summary>
    public double Cos => Math.Cos(_radians);

    /// <summary>The tangent.</summary>
    public double Tan => Math.Tan(_radians);

    /// <summary>Makes an angle from degrees.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The number is not finite.</exception>
    public static Angle FromDegrees(double degrees) => new(Finite(degrees, "degrees") * (Math.PI / 180.0));

    /// <summary>Makes an angle from radians.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The number is not finite.</exception>
    public static Angle FromRadians(double radians) => new(Finite(radians, "radians"));

    /// <summary>Makes an angle from arcseconds.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The number is not finite.</exception>
    public static Angle FromArcSeconds(double arcSeconds) => FromDegrees(arcSeconds / 3600.0);

    /// <summary>Makes an angle from minutes of time, 4 to a degree.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The number is not finite.</exception>
    public static Angle FromTimeMinutes(double minutes) => FromDegrees(minutes / 4.0);

    /// <summary>
    /// Makes an angle from degrees, arcminutes and arcseconds under ONE sign, so that minus 0° 7′ keeps its sign.
    /// The three parts are not negative.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">A part is negative or not finite.</exception>
    public static Angle FromDegreesMinutesSeconds(bool negative, double degrees, double arcMinutes, double arcSeconds)
    {
        if (degrees < 0 || arcMinutes < 0 || arcSeconds < 0)
        {
            throw new ArgumentOutOfRangeException(
                nameof(degrees),
                $"Parts {Text(degrees)} {Text(arcMinutes)} {Text(arcSeconds)} hold a minus sign; give the sign once, as the first argument.");
        }

        var size = degrees + arcMinutes / 60.0 + arcSeconds / 3600.0;
        return FromDegrees(negative ? -size : size);
    }

    /// <summary>The same direction within one turn, 0° up to but not including 360°.</summary>
    public Angle InOneTurn()
    {
        var d = Degrees % 360.0;
        if (d < 0)
        {
            d += 360.0;
        }

        return FromDegrees(d >= 360.0 ? 0.0 : d);
    }

    /// <summary>The same direction within half a turn of zero, from −180° (excluded) to +180° (included).</summary>
    public Angle AroundZero()
    {
        var d = InOneTurn().Degrees;
        return FromDegrees(d > 180.0 ? d - 360.0 : d);
    }

    /// <summary>The size of the angle without its sign.</summary>
    public Angle Abs() => new(Math.Abs(_radians));

    /// <inheritdoc/>
    public int CompareTo(Angle other) => _radians.CompareTo(other._radians);

    /// <summary>Degrees to six decimals with the degree sign, in the invariant culture.</summary>
    public override string ToString() => Degrees.ToString("0.######", CultureInfo.InvariantCulture) + "°";

    /// <summary>The sum.</summary>
    public static Angle operator +(Angle a, Angle b) => new(a._radians + b._radians);

    /// <summary>The difference.</summary>
    public static Angle operator -(Angle a, Angle b) => new(a._radians - b._radians);

    /// <summary>The opposite angle.</summary>
    public static Angle operator -(Angle a) => new(-a._radians);

    /// <summary>The angle times a number.</summary>
    public static Angle operator *(double k, Angle a) => new(k * a._radians);

    /// <summary>The angle times a number.</summary>
    public static Angle operator *(Angle a, double k) => new(k * a._radians);

    /// <summary>The angle divided by a number.</summary>
    public static Angle operator /(Angle a, double k) => new(a._radians / k);

    /// <summary>Whether the left angle is the smaller.</summary>
    public static bool operator <(Angle a, Angle b) => a._radians < b._radians;

    /// <summary>Whether the left angle is the larger.</summary>
    public static bool operator >(Angle a, Angle b) => a._radians > b._radians;

    /// <summary>Whether the left angle is smaller or equal.</summary>
    public static bool operator <=(Angle a, Angle b) => a._radians <= b._radians;

    /// <summary>Whether the left angle is larger or equal.</summary>
    public static bool operator >=(Angle a, Angle b) => a._radians >= b._radians;

    private static double Finite(double value, string unit) => double.IsFinite(value)
        ? value
        : throw new ArgumentOutOfRangeException(unit, $"Angle {Text(value)} {unit} is not a number; give a finite number of {unit}.");

    private static string Text(double value) => value.ToString(CultureInfo.InvariantCulture);
}
