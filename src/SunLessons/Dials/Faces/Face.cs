namespace SunLessons.Dials.Faces;

/// <summary>
/// A flat plate as a dial's face: how it leans and where it looks. The default value is level and looks up. All angles are those of the design;
/// how the finished dial really stands is a <see cref="DialStance"/>.
/// </summary>
/// <remarks>
/// <para>THE SIGNS, stated here once, with the figure <c>plate-signs.svg</c> beside this file, and the same in words. Draw a plate seen edge-on as a line. Draw from its lit side an arrow, square to it: the outward
/// normal. Draw another arrow straight up. The angle between the two arrows is the <see cref="Inclination"/>, 0° to 180°. Now look at the same thing from
/// above, true north up the page. The shadow that the outward arrow would throw on the ground under a lamp overhead points to where the face looks. The angle
/// to it from the arrow pointing down the page (south), positive towards the left of the page (west), is the <see cref="Declination"/>.</para>
/// <para>Points and angles ON the face are given as they look to one who stands before the lit face: "right" is level, "up" is up the steepest slope, and
/// angles run clockwise from up. On a level face "up" is the side away from <see cref="Declination"/>: with the default, right is east and up is north, as on a
/// map. A face that looks straight down (180°) has no steepest slope either and keeps the same rule.</para>
/// <para>A face that is one and the same wherever it stands: upright or level. One whose design needs the latitude: see <see cref="Polar"/>,
/// <see cref="EquatorialUpper"/> and <see cref="EquatorialLower"/>.</para>
/// </remarks>
/// <param name="Inclination">The lean of the outward normal from the zenith.</param>
/// <param name="Declination">Where the outward normal looks, from the south, west positive.</param>
public readonly record struct Face(PlateInclination Inclination, PlateDeclination Declination)
{
    /// <summary>Level, looking up; right is east and up is north on it.</summary>
    public static Face Horizontal => default;

    /// <summary>Upright, looking south.</summary>
    public static Face VerticalSouth => FromDegrees(90.0, 0.0);

    /// <summary>Upright, looking north.</summary>
    public static Face VerticalNorth => FromDegrees(90.0, 180.0);

    /// <summary>Upright, looking east. Its plane is the meridian's, so the style lies along it.</summary>
    public static Face VerticalEast => FromDegrees(90.0, -90.0);

    /// <summary>Upright, looking west. Its plane is the meridian's, so the style lies along it.</summary>
    public static Face VerticalWest => FromDegrees(90.0, 90.0);

    /// <summary>Makes a face from degrees.</summary>
    /// <param name="inclinationDegrees">0 level to 180, 90 upright.</param>
    /// <param name="declinationDegrees">From the south, west positive.</param>
    /// <exception cref="ArgumentOutOfRangeException">Inclination outside 0 to 180, or a number that is not finite.</exception>
    public static Face FromDegrees(double inclinationDegrees, double declinationDegrees) =>
        new(PlateInclination.FromDegrees(inclinationDegrees), PlateDeclination.FromDegrees(declinationDegrees));

    /// <summary>Upright, looking to a true azimuth.</summary>
    public static Face VerticalTowards(Azimuth azimuth) => new(PlateInclination.Upright, PlateDeclination.Towards(azimuth));

    /// <summary>
    /// The direct polar face of a latitude: along the Earth's axis and level from east to west; it looks to the equator's side of the sky.
    /// </summary>
    public static Face Polar(Latitude latitude) => FromDegrees(Math.Abs(latitude.Degrees), latitude.IsSouthern ? 180.0 : 0.0);

    /// <summary>The face parallel to the equator that looks to the pole that is up: lit in the warm half of the year.</summary>
    public static Face EquatorialUpper(Latitude latitude) => latitude.Degrees >= 0.0
        ? FromDegrees(90.0 - latitude.Degrees, 180.0)
        : FromDegrees(90.0 + latitude.Degrees, 0.0);

    /// <summary>The face parallel to the equator that looks to the pole that is down: lit in the cold half of the year.</summary>
    public static Face EquatorialLower(Latitude latitude) => EquatorialUpper(latitude).Back;

    /// <summary>The other side of the same plate.</summary>
    public Face Back => FromDegrees(180.0 - Inclination.Degrees, Declination.Degrees + 180.0);

    /// <summary>Such as <c>inclination 90°, declination -32.5°</c>.</summary>
    public override string ToString() => $"inclination {Inclination}, declination {Declination}";
}
