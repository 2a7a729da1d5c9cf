namespace SunLessons.Magnetism;

/// <summary>
/// Every sign of the compass, decided here and nowhere else. All angles are seen from above and clockwise positive; magnetic declination
/// is east positive, which is the same thing: magnetic north stands clockwise of true north.
/// </summary>
public static class CompassSigns
{
    /// <summary>
    /// Whether the figures of a card grow with the bearing of the sighting line (+1) or against it (−1).
    /// </summary>
    /// <remarks>
    /// Needle over a fixed card: turn the case 10° clockwise and the needle, which stays, lies 10° anticlockwise of where it was on the card;
    /// so figures engraved anticlockwise grow by 10 (+1) and figures engraved clockwise fall by 10 (−1).
    /// Card read at a lubber line: turn the case 10° clockwise and the mark moves 10° clockwise along the card, which stays;
    /// so figures engraved clockwise grow by 10 (+1) and figures engraved anticlockwise fall by 10 (−1).
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value that is none of the named ones.</exception>
    public static int OfFigures(CompassBuild build, CompassGraduation graduation) => (build, graduation) switch
    {
        (CompassBuild.NeedleOverFixedCard, CompassGraduation.Anticlockwise) => +1,
        (CompassBuild.NeedleOverFixedCard, CompassGraduation.Clockwise) => -1,
        (CompassBuild.CardReadAtLubberLine, CompassGraduation.Clockwise) => +1,
        (CompassBuild.CardReadAtLubberLine, CompassGraduation.Anticlockwise) => -1,
        _ => throw new ArgumentOutOfRangeException(
            nameof(build),
            $"Compass build {build} with graduation {graduation} is not known; use a needle over a fixed card or a card read at a lubber line, graduated clockwise or anticlockwise."),
    };

    /// <summary>Magnetic bearing of the sighting line: the figure, freed of the index error (reading minus truth), with the sign of the card.</summary>
    public static CompassBearing MagneticFromReading(CompassReading reading, CompassBuild build, CompassGraduation graduation, Angle indexError) =>
        CompassBearing.FromAngle(OfFigures(build, graduation) * (reading.Figure - indexError));

    /// <summary>The figure that shows when the sighting line has a magnetic bearing: the opposite of <see cref="MagneticFromReading"/>.</summary>
    public static CompassReading ReadingFromMagnetic(CompassBearing bearing, CompassBuild build, CompassGraduation graduation, Angle indexError) =>
        CompassReading.FromDegrees((OfFigures(build, graduation) * bearing.Angle + indexError).Degrees);

    /// <summary>
    /// True = magnetic + declination (east positive). Picture: declination 20° east, so magnetic north stands 20° to the right of true
    /// north; a line 30° to the right of magnetic north stands 50° to the right of true north.
    /// </summary>
    public static Azimuth TrueFromMagnetic(CompassBearing bearing, MagneticDeclination declination) =>
        Azimuth.FromAngle(bearing.Angle + declination.Angle);

    /// <summary>Magnetic = true − declination (east positive): the opposite of <see cref="TrueFromMagnetic"/>.</summary>
    public static CompassBearing MagneticFromTrue(Azimuth azimuth, MagneticDeclination declination) =>
        CompassBearing.FromAngle(azimuth.Angle - declination.Angle);

    /// <summary>
    /// Where the plate's north points when the needle lies over an engraved line that stands <paramref name="engraved"/> from the plate's
    /// north (east positive): plate north = needle − line.
    /// </summary>
    /// <remarks>
    /// Picture: the line is engraved 15° to the LEFT of the plate's north (15 W). Today the needle points nearly to true north (1.2° left of
    /// it). Turning the plate until the line lies under the needle swings the plate's north to the RIGHT: −1.2 − (−15) = 13.8° clockwise.
    /// </remarks>
    /// <param name="engraved">Where the line stands, from the plate's north, as a declination: the one the line was made for.</param>
    /// <param name="today">Magnetic declination at the place and date of use.</param>
    /// <param name="needleError">How far the needle's north end stands clockwise of magnetic north through its own fault.</param>
    public static Azimuth PlateNorthFromLine(MagneticDeclination engraved, MagneticDeclination today, Angle needleError) =>
        Azimuth.FromAngle(today.Angle + needleError - engraved.Angle);

    /// <summary>How far the plate stands clockwise of its right position, from −180° (excluded) to +180°.</summary>
    public static Angle TwistFromPlateNorth(Azimuth plateNorth) => plateNorth.Angle.AroundZero();

    /// <summary>A quoted number of degrees as a declination, east positive, under the sign rule of its source.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not a finite number, or a sign rule that is none of the named ones.</exception>
    public static MagneticDeclination FromQuoted(double degrees, CompassQuoteSign sign) => sign switch
    {
        CompassQuoteSign.EastPositive => MagneticDeclination.FromDegrees(degrees),
        CompassQuoteSign.WestPositive => MagneticDeclination.FromDegrees(-degrees),
        _ => throw new ArgumentOutOfRangeException(nameof(sign), $"Sign rule {sign} is not known; use east positive or west positive."),
    };
}
