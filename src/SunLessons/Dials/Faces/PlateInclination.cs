using System.Globalization;

namespace SunLessons.Dials.Faces;

/// <summary>
/// How far a plate's lit face leans from looking straight up: 0° a level plate that looks up, 90° an upright wall, beyond 90° a face that overhangs,
/// 180° one that looks straight down; both ends included. It is the angle between the face's outward normal and the zenith. The default value is level.
/// </summary>
/// <remarks>The picture that goes with it is described at <see cref="Face"/>. Sign: none; the side it leans to is the <see cref="PlateDeclination"/>.</remarks>
public readonly record struct PlateInclination : IComparable<PlateInclination>
{
    private PlateInclination(Angle angle) => Angle = angle;

    /// <summary>A level plate that looks up.</summary>
    public static PlateInclination Level => default;

    /// <summary>An upright plate.</summary>
    public static PlateInclination Upright => FromDegrees(90.0);

    /// <summary>The inclination as an angle, 0° to 180°.</summary>
    public Angle Angle { get; }

    /// <summary>Degrees, 0 to 180.</summary>
    public double Degrees => Angle.Degrees;

    /// <summary>Makes an inclination from degrees.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside 0 to 180, or not a number.</exception>
    public static PlateInclination FromDegrees(double degrees) => degrees is >= 0.0 and <= 180.0
        ? new PlateInclination(Angle.FromDegrees(degrees))
        : throw new ArgumentOutOfRangeException(
            nameof(degrees),
            $"Plate inclination {degrees.ToString("0.######", CultureInfo.InvariantCulture)} degrees is outside 0 to 180 degrees (0 level, 90 upright). "
            + "For a plate that leans the other way turn its declination by 180 degrees.");

    /// <inheritdoc/>
    public int CompareTo(PlateInclination other) => Angle.CompareTo(other.Angle);

    /// <summary>Such as <c>90°</c>.</summary>
    public override string ToString() => Angle.ToString();
}
