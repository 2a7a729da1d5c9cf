using SunLessons.Magnetism;
using SunLessons.Uncertainty;

namespace SunLessons.Readings;

/// <summary>
/// The sizes of the causes of doubt in a reading taken with a pocket dial that is set by its own compass, each with its source.
/// They were written down before any total was computed from them, so that none could be chosen for the sake of the total; change one only with a source
/// for the new size.
/// </summary>
/// <remarks>
/// The pocket dial thought of: a plate some 50 mm across, hour lines ending 25 mm from the style's root with a line every 15 minutes,
/// a style hinged or swung whose end is 30 mm from its hinge, a needle with an arm of 20 mm.
/// Computed from them afterwards, expanded (k = 2), equinoxes and solstices of 2026, the Sun at least 10° high: towns from 27.7° to 69.7°, corrected for the
/// scale, 6.0 to 9.6 minutes; with the nearest of scales five degrees apart and no correction for the rest, up to 13.7. "Good to 10 to 20 minutes"
/// (common practice, no source) so holds there with some room, which an engraved line 3° out of date alone fills (4 to 12 minutes at noon). It does not hold
/// for a level plate in the tropics: Darwin up to 12.9 corrected and 29.1 not, Nairobi 47 and more, where the hour lines crowd together.
/// </remarks>
public static class ReadingComponents
{
    private const string Practice = "Common practice, no source";

    /// <summary>Estimating the shadow's place between two hour lines.</summary>
    public static ComponentSize PlateReading { get; } = new(
        "reading the plate",
        1.5,
        ComponentUnit.Minutes,
        Distribution.Uniform,
        $"{Practice}: lines stand every 15 minutes and the eye tells fifths of a space, 3 minutes, so a reading lies within half of that.");

    /// <summary>Where in the blurred edge of the shadow the reader sets the mark.</summary>
    public static ComponentSize ShadowEdge { get; } = new(
        "blurred edge of the shadow",
        SunSemidiameterDegrees * 4.0,
        ComponentUnit.Minutes,
        Distribution.Uniform,
        "The blur is as wide as the Sun, 0.533 degrees or 2.1 minutes (mean semidiameter 959.63 arcseconds, Auwers 1891, from memory); "
        + "the reader may settle anywhere within it, so within half of it from its middle.");

    /// <summary>The hour lines are not quite where they should be.</summary>
    public static ComponentSize HourLineEngraving { get; } = new(
        "engraving of the hour lines",
        WithinMillimetres(0.1, 25.0),
        ComponentUnit.Degrees,
        Distribution.Uniform,
        "Reasoned: an engraved line is some 0.1 mm wide and lies within its own width of its place, 25 mm from the root: 0.23 degrees on the plate.");

    /// <summary>The plate's east edge is higher or lower than it should be.</summary>
    public static ComponentSize LevelEastWest { get; } = new(
        "level, east to west",
        1.0,
        ComponentUnit.Degrees,
        Distribution.Uniform,
        $"{Practice}: a small plate levelled by eye, by a plumb bob in its lid or on a table is level within a degree.");

    /// <summary>The plate's north edge is higher or lower than it should be.</summary>
    public static ComponentSize LevelNorthSouth { get; } = new(
        "level, north to south",
        1.0,
        ComponentUnit.Degrees,
        Distribution.Uniform,
        $"{Practice}: as for east to west.");

    /// <summary>Turning the dial until the needle lies on its mark.</summary>
    public static ComponentSize CompassReading { get; } = new(
        "reading the compass",
        WithinMillimetres(0.5, 20.0),
        ComponentUnit.Degrees,
        Distribution.Uniform,
        "Reasoned: the end of a needle 20 mm long from the pivot is brought to its mark within half a millimetre, "
        + "for parallax and the friction of the pivot: 1.4 degrees.");

    /// <summary>Iron near the needle that the model of the Earth's field does not know.</summary>
    public static ComponentSize LocalIron { get; } = new(
        "iron near the compass",
        1.0,
        ComponentUnit.Degrees,
        Distribution.Uniform,
        $"{Practice}: out of doors, a metre and more from iron, telephones and spectacles, the needle is taken to be pulled by less than a degree. "
        + "Indoors, near vehicles or on reinforced concrete it can be ten times as much.");

    /// <summary>The style is not quite at the height of its mark.</summary>
    public static ComponentSize StyleHeight { get; } = new(
        "height of the style",
        WithinMillimetres(0.5, 30.0),
        ComponentUnit.Degrees,
        Distribution.Uniform,
        "Reasoned: a style whose end is 30 mm from its hinge stands within half a millimetre of its mark, for the play of the hinge and the width of the mark: 0.95 degrees.");

    /// <summary>The correction for the date is taken from a table of whole minutes instead of being computed.</summary>
    public static ComponentSize DateTable { get; } = new(
        "date table in whole minutes",
        0.5,
        ComponentUnit.Minutes,
        Distribution.Uniform,
        "A table that prints whole minutes is wrong by up to half of one (GUM F.2.2.1, rounding). A computed equation of time has none of this.");

    /// <summary>The place is known as a town, not as a spot: longitude.</summary>
    public static ComponentSize LongitudeOfPlace { get; } = new(
        "longitude of the place",
        0.05,
        ComponentUnit.Degrees,
        Distribution.Uniform,
        "Reasoned: a town is some kilometres across; 0.05 degrees is 5.6 km at the equator and 2.8 km at latitude 60.");

    /// <summary>The place is known as a town, not as a spot: latitude.</summary>
    public static ComponentSize LatitudeOfPlace { get; } = new(
        "latitude of the place",
        0.05,
        ComponentUnit.Degrees,
        Distribution.Uniform,
        "Reasoned: a town is some kilometres across; 0.05 degrees of latitude is 5.6 km.");

    /// <summary>A clock, where one is used to set the dial or to judge it.</summary>
    public static ComponentSize Clock { get; } = new(
        "clock read to the minute",
        0.5,
        ComponentUnit.Minutes,
        Distribution.Uniform,
        "Reasoned: a clock that keeps to a time signal and shows whole minutes is taken at the middle of the minute, within half a minute.");

    /// <summary>The nearest of several scales is used as if it were the place's own.</summary>
    /// <param name="spacing">How far the scales stand apart in latitude; its sign does not matter.</param>
    public static ComponentSize NearestScale(Angle spacing) => new(
        "nearest scale, not corrected for",
        Math.Abs(spacing.Degrees) / 2.0,
        ComponentUnit.Degrees,
        Distribution.Uniform,
        "Geometry: of scales so far apart the nearest is within half of that, and any place between is as likely.");

    /// <summary>
    /// The doubt in the model of the Earth's field: one standard deviation of the magnetic declination at the place and date, degrees.
    /// </summary>
    /// <remarks>
    /// Decided: the standard deviation and not the smaller size within which 68 cases of 100 lie, because a budget adds squares. WMM2025 publishes one size that is both.
    /// For IGRF-14, before 2025, they differ (144 and 136 nT against 87 and 73): a few stations on strongly magnetic rock count in the one and hardly in the other. It is taken for all
    /// years back to 1900, though it was found for 1980 to 2021; older years are likelier worse, and nobody has published by how much.
    /// </remarks>
    /// <param name="north">What the field model says.</param>
    public static ComponentSize CompassModel(NorthAnswer.Known north)
    {
        ArgumentNullException.ThrowIfNull(north);
        return new(
            "model of the Earth's field",
            north.StandardDeviation.Degrees,
            ComponentUnit.Degrees,
            Distribution.Normal,
            $"One standard deviation of the magnetic declination by {north.ModelName} at this place: {north.Span.UncertaintySource}.");
    }

    /// <summary>
    /// Bending of light by air, which the dial model leaves out: it lifts the Sun, always upwards, by an amount known to a tenth.
    /// The whole amount is taken as the half-width, because it is not corrected.
    /// </summary>
    /// <param name="refraction">How far the air lifts the Sun at its altitude; not negative.</param>
    public static ComponentSize Refraction(Angle refraction) => new(
        "air lifts the Sun",
        Math.Abs(refraction.Degrees),
        ComponentUnit.Degrees,
        Distribution.Uniform,
        "Reasoned: the model of the dial leaves refraction out, so the Sun's altitude is off by the whole of it at most.");

    // 959.63 arcseconds at the mean distance, in degrees.
    private const double SunSemidiameterDegrees = 959.63 / 3600.0;

    private static double WithinMillimetres(double millimetres, double radiusMillimetres) =>
        Math.Atan(millimetres / radiusMillimetres) * (180.0 / Math.PI);
}
