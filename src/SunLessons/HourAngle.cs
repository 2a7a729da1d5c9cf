namespace SunLessons;

/// <summary>
/// The Sun's hour angle: how far it is past the meridian, 15° to the hour, POSITIVE AFTER NOON,
/// from −180° (excluded) to +180° (included). The default value is solar noon.
/// </summary>
public readonly record struct HourAngle
{
    private HourAngle(Angle angle) => Angle = angle;

    /// <summary>The hour angle as a signed angle, afternoon positive.</summary>
    public Angle Angle { get; }

    /// <summary>Degrees, afternoon positive.</summary>
    public double Degrees => Angle.Degrees;

    /// <summary>Radians, afternoon positive.</summary>
    public double Radians => Angle.Radians;

    /// <summary>Hours after noon (before noon negative), 15° to the hour.</summary>
    public double Hours => Angle.Degrees / 15.0;

    /// <summary>Makes an hour angle from degrees, afternoon positive; reduced to half a turn of noon.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not a finite number.</exception>
    public static HourAngle FromDegrees(double degrees) => new(Angle.FromDegrees(degrees).AroundZero());

    /// <summary>Makes an hour angle from hours after noon (before noon negative); reduced to twelve hours of noon.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not a finite number.</exception>
    public static HourAngle FromHours(double hours) => FromDegrees(hours * 15.0);

    /// <summary>Makes an hour angle from an angle, afternoon positive; reduced to half a turn of noon.</summary>
    public static HourAngle FromAngle(Angle angle) => new(angle.AroundZero());

    /// <summary>Such as <c>-37.5°</c>.</summary>
    public override string ToString() => Angle.ToString();
}
