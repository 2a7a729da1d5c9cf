using System.Globalization;

namespace SunLessons.Dials.Faces;

/// <summary>
/// A ring hung upright and turned to the Sun: light through a hole in its rim falls on the inner side opposite: a dial by altitude. Immutable.
/// </summary>
/// <remarks>
/// The spot moves along the rim by TWO degrees, seen from the ring's centre, for one of altitude (the angle at the rim is half that at the centre), whatever
/// the ring's size and wherever the hole: so its hours stand wider apart than on a quadrant. Checked by cutting a ray with a circle in the tests.
/// </remarks>
/// <param name="MadeFor">The latitude that its hour lines are drawn for, north positive.</param>
public sealed record RingDial(Latitude MadeFor)
{
    /// <summary>The hours as altitudes.</summary>
    public AltitudeHours Hours => new(MadeFor);

    /// <summary>How far down the rim the spot falls, seen from the ring's centre, from where a level ray through the hole would strike: 0° to 180°.</summary>
    /// <param name="altitude">The Sun's altitude; below the horizon there is no spot.</param>
    /// <param name="leanTowardsSun">By how much the ring leans towards the Sun at the top, positive: each degree counts as one more of altitude. A ring that hangs freely has none.</param>
    /// <returns>The arc down the rim; null where no light comes.</returns>
    public static Angle? SpotArc(Altitude altitude, Angle leanTowardsSun = default)
    {
        var seen = altitude.Angle + leanTowardsSun;
        return altitude.Degrees > 0.0 && seen.Degrees is > 0.0 and <= 90.0 ? 2.0 * seen : null;
    }

    /// <summary>Where the line of a local apparent time crosses that of a date: arc down the rim; null while the Sun is down.</summary>
    public Angle? SpotArcAt(DialTime time, SolarDeclination declination) => SpotArc(Hours.AltitudeAt(time, declination));

    /// <summary>The two times that a spot stands for.</summary>
    /// <param name="arc">The spot's arc down the rim, above 0° to 180°.</param>
    /// <param name="setFor">The declination of the date whose line the spot lies on.</param>
    /// <exception cref="ArgumentOutOfRangeException">An arc outside that range.</exception>
    public AltitudeReading Read(Angle arc, SolarDeclination setFor) => arc.Degrees is > 0.0 and <= 180.0
        ? Hours.Read(Altitude.FromAngle(arc / 2.0), setFor)
        : throw new ArgumentOutOfRangeException(
            nameof(arc), $"Arc {arc.Degrees.ToString("0.###", CultureInfo.InvariantCulture)} degrees is outside 0 to 180 degrees; measure down the rim from where a level ray would strike.");
}
