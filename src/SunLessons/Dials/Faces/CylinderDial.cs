using System.Globalization;

namespace SunLessons.Dials.Faces;

/// <summary>
/// An upright cylinder with a level gnomon at its top, turned so that the shadow falls straight down on the date's line: a dial by altitude. Lengths are in
/// lengths of the gnomon, from the surface to its tip. Immutable.
/// </summary>
/// <param name="MadeFor">The latitude that its hour curves are drawn for, north positive.</param>
public sealed record CylinderDial(Latitude MadeFor)
{
    /// <summary>The hours as altitudes.</summary>
    public AltitudeHours Hours => new(MadeFor);

    /// <summary>
    /// How far below the gnomon the curve of a local apparent time crosses the line of a date, in gnomon lengths; null while the Sun is down.
    /// </summary>
    public double? DepthAt(DialTime time, SolarDeclination declination) =>
        Hours.AltitudeAt(time, declination) is { Degrees: > 0.0 } altitude ? altitude.Angle.Tan : null;

    /// <summary>
    /// How far down the shadow falls when the Sun stands at an altitude and the cylinder leans.
    /// </summary>
    /// <param name="altitude">The Sun's altitude.</param>
    /// <param name="leanTowardsSun">By how much the top leans towards the Sun, positive; negative away. Each degree counts as one MORE of altitude.</param>
    /// <returns>Gnomon lengths; null where the shadow misses the cylinder.</returns>
    public static double? Depth(Altitude altitude, Angle leanTowardsSun = default)
    {
        // The top leaning to the Sun, the gnomon dips by as much, and the Sun stands so much higher over it.
        var seen = altitude.Angle + leanTowardsSun;
        return seen.Degrees is > 0.0 and < 90.0 && altitude.Degrees > 0.0 ? seen.Tan : null;
    }

    /// <summary>The two times that a shadow's depth stands for.</summary>
    /// <param name="depth">How far down the shadow reaches, gnomon lengths, above 0.</param>
    /// <param name="setFor">The declination of the date whose line the shadow lies on.</param>
    /// <exception cref="ArgumentOutOfRangeException">A depth that is not above 0.</exception>
    public AltitudeReading Read(double depth, SolarDeclination setFor) => depth > 0.0 && double.IsFinite(depth)
        ? Hours.Read(Altitude.FromAngle(Angle.FromRadians(Math.Atan(depth))), setFor)
        : throw new ArgumentOutOfRangeException(
            nameof(depth), $"Depth {depth.ToString("0.###", CultureInfo.InvariantCulture)} gnomon lengths is not above 0; give the length of the shadow, such as 0.9.");
}
