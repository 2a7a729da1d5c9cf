using System.Globalization;

namespace SunLessons.Magnetism;

/// <summary>
/// How a dial plate stands after it was set by a compass: where its noon line points, and so its twist. The default value stands right.
/// </summary>
/// <param name="PlateNorth">
/// True azimuth of the plate's noon line, taken in the direction that is north when the dial stands right (in either hemisphere).
/// </param>
public readonly record struct CompassSetting(Azimuth PlateNorth)
{
    /// <summary>
    /// How far the plate stands turned from its right position: clockwise positive seen from above, from −180° (excluded) to +180°.
    /// Turn the plate by the opposite to put it right.
    /// </summary>
    public Angle Twist => CompassSigns.TwistFromPlateNorth(PlateNorth);

    /// <summary>In words, one decimal: <c>the plate stands 13.8 degrees clockwise of true north: turn it 13.8 degrees anticlockwise</c>.</summary>
    public string InWords()
    {
        var degrees = Math.Round(Twist.Degrees, 1, MidpointRounding.AwayFromZero);
        if (degrees == 0.0)
        {
            return "the plate stands true north";
        }

        var size = Math.Abs(degrees).ToString("0.0", CultureInfo.InvariantCulture);
        return degrees > 0.0
            ? $"the plate stands {size} degrees clockwise of true north: turn it {size} degrees anticlockwise"
            : $"the plate stands {size} degrees anticlockwise of true north: turn it {size} degrees clockwise";
    }

    /// <summary>As <see cref="InWords"/>.</summary>
    public override string ToString() => InWords();
}
