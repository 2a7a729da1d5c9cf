namespace SunLessons.Magnetism;

/// <summary>
/// A variation line engraved under the needle of a dial: the dial is turned until the needle's north end lies over the line, and then
/// stands right if the magnetic declination is the one the line was made for.
/// </summary>
/// <remarks>
/// Picture of a line engraved "15 W": seen from above with the plate's noon line pointing up the page to its north, the line runs from
/// the needle's pivot up and 15° to the LEFT. A line to the right is one for an east declination. A dial without a line, where the needle
/// is brought over the noon line itself, has a line for 0°.
/// </remarks>
public sealed record CompassLine
{
    /// <summary>Describes an engraved line.</summary>
    /// <param name="madeFor">The declination that the line was made for: where it stands from the plate's north, east (right) positive.</param>
    /// <param name="needleError">
    /// How far the needle's north end stands clockwise of magnetic north through a fault of its own (magnetised askew, bent); zero if unknown.
    /// </param>
    public CompassLine(MagneticDeclination madeFor, Angle needleError = default)
    {
        MadeFor = madeFor;
        NeedleError = needleError.AroundZero();
    }

    /// <summary>The declination that the line was made for, east positive.</summary>
    public MagneticDeclination MadeFor { get; }

    /// <summary>How far the needle's north end stands clockwise of magnetic north through its own fault.</summary>
    public Angle NeedleError { get; }

    /// <summary>How the dial stands when the needle lies over the line at a place and date with this declination.</summary>
    public CompassSetting SettingAt(MagneticDeclination today) => new(CompassSigns.PlateNorthFromLine(MadeFor, today, NeedleError));

    /// <summary>The declination for which a line ought to be engraved so that this needle sets the dial right: today's, with the needle's fault.</summary>
    public MagneticDeclination RightLine(MagneticDeclination today) =>
        MagneticDeclination.FromAngle(SettingAt(today).Twist + MadeFor.Angle);
}
