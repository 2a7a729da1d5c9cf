using SunLessons.Places;
using SunLessons.Sun;

namespace SunLessons.App.Verbs;

/// <summary>What <c>sun</c> found, before it is printed.</summary>
/// <param name="Place">Where.</param>
/// <param name="Moment">When.</param>
/// <param name="Sun">The Sun from the Earth's centre.</param>
/// <param name="InSky">The Sun over the place.</param>
/// <param name="Day">Its day there.</param>
public sealed record SunAnswer(Place Place, Moment Moment, ApparentSun Sun, SunInSky InSky, SunDay Day)
{
    // Below this geometric altitude the Sun is down, whatever the air does.
    private const double LowestRefractedDegrees = -1.5;

    /// <summary>How far standard air lifts the Sun, or null where it is well below the horizon.</summary>
    public Angle? Refraction => InSky.Altitude.Degrees >= LowestRefractedDegrees ? SunLessons.Sun.Refraction.FromGeometric(InSky.Altitude) : null;

    /// <summary>
    /// The penumbra of a straight edge, square to the rays, in millimetres for each metre behind the edge: the Sun's whole width, twice the tangent of its semidiameter.
    /// </summary>
    public double PenumbraMillimetersPerMeter => 2000.0 * Sun.Semidiameter.Tan;

    /// <summary>
    /// The penumbra on a sound dial whose style points to the pole, minutes of time from rim to rim, at any hour and size (see <see cref="Dials.Faces.BlurredEdge"/>).
    /// </summary>
    public double PenumbraMinutes => 2.0 * Angle.FromRadians(Math.Asin(Sun.Semidiameter.Sin / Sun.Declination.Angle.Cos)).TimeMinutes;

    /// <summary>What a dial that stands right shows: local apparent time.</summary>
    public DialTime DialShows => DialTime.FromHourAngle(Sun.HourAngleAt(Place.Point.Longitude));
}
