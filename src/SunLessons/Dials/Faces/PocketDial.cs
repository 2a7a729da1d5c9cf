using SunLessons.Dials.Planning;
using SunLessons.Magnetism;

namespace SunLessons.Dials.Faces;

/// <summary>
/// A pocket dial: a level plate with scales for a few latitudes, a style that folds up, and a compass whose needle is brought over an engraved line.
/// Immutable.
/// </summary>
/// <remarks>
/// A dial and its numbers serve one hemisphere; a place in the other gets no reading from it. For learning, not for navigation. For a clock time from its
/// reading, with reasons and doubts, see <c>Readings.ClockFromDial</c>.
/// </remarks>
public sealed record PocketDial
{
    /// <summary>Describes a pocket dial.</summary>
    /// <param name="scales">The latitudes of its scales, north positive, one or more, all north or all south of the equator and none on it.</param>
    /// <param name="style">To what the style is raised.</param>
    /// <param name="needleLine">The line that the needle is brought over; one for 0° where it is the noon line itself.</param>
    /// <exception cref="ArgumentException">No scale, one on the equator, or scales of both hemispheres.</exception>
    public PocketDial(IEnumerable<Latitude> scales, StyleSet style, CompassLine needleLine)
    {
        ArgumentNullException.ThrowIfNull(scales);
        ArgumentNullException.ThrowIfNull(needleLine);
        Scales = [.. scales.OrderBy(scale => Math.Abs(scale.Degrees))];
        Style = style;
        NeedleLine = needleLine;
        if (Scales.Count == 0 || Scales.Any(scale => scale.Degrees == 0.0 || scale.IsSouthern != Scales[0].IsSouthern))
        {
            throw new ArgumentException(
                "A pocket dial needs one or more scales, all north or all south of the equator and none on it; name latitudes such as 35, 40 and 45 degrees.",
                nameof(scales));
        }
    }

    /// <summary>The latitudes of its scales, the nearest to the equator first.</summary>
    public IReadOnlyList<Latitude> Scales { get; }

    /// <summary>To what the style is raised.</summary>
    public StyleSet Style { get; }

    /// <summary>The line that the needle is brought over.</summary>
    public CompassLine NeedleLine { get; }

    /// <summary>The dial as it is when one of its scales is used at a place.</summary>
    public FlatDial DialOn(Latitude scale, Latitude place) => new(scale, Style == StyleSet.ForPlace ? place : scale);

    /// <summary>
    /// The scale with the least worst error over a year at a place, level and true; null where none serves: the other hemisphere, or the equator.
    /// </summary>
    /// <param name="place">The latitude of the place.</param>
    /// <param name="leastSun">The least altitude of the Sun at which a reading counts; null for 5°.</param>
    public Latitude? BestScale(Latitude place, Altitude? leastSun = null)
    {
        if (place.Degrees == 0.0 || place.IsSouthern != Scales[0].IsSouthern)
        {
            return null;
        }

        return Scales.MinBy(scale => ScaleError.WorstMinutes(scale, place, Style, leastSun) ?? double.PositiveInfinity);
    }

    /// <summary>How the dial stands when it lies level with its needle over the line.</summary>
    public DialStance StanceAt(MagneticDeclination today) => new(NeedleLine.SettingAt(today).Twist, Angle.Zero, Angle.Zero);

    /// <summary>What the dial shows when it lies level and was set by its needle.</summary>
    /// <param name="scale">The scale that is read.</param>
    /// <param name="place">The latitude of the place.</param>
    /// <param name="today">The magnetic declination of place and date.</param>
    /// <param name="hourAngle">The Sun's hour angle.</param>
    /// <param name="declination">The Sun's declination.</param>
    public DialReading Read(Latitude scale, Latitude place, MagneticDeclination today, HourAngle hourAngle, SolarDeclination declination) =>
        ForwardModel.Read(DialOn(scale, place), StanceAt(today), place, hourAngle, declination);

    /// <summary>
    /// Minutes that the dial so set is fast (positive) or slow against the Sun; null when it shows nothing.
    /// </summary>
    /// <param name="scale">The scale that is read.</param>
    /// <param name="place">The latitude of the place.</param>
    /// <param name="today">The magnetic declination of place and date.</param>
    /// <param name="hourAngle">The Sun's hour angle.</param>
    /// <param name="declination">The Sun's declination.</param>
    public double? FastMinutes(Latitude scale, Latitude place, MagneticDeclination today, HourAngle hourAngle, SolarDeclination declination) =>
        DialError.FastMinutes(DialOn(scale, place), StanceAt(today), place, hourAngle, declination);
}
