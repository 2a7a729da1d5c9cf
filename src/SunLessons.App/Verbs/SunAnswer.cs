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

    /// <summary>What a dial that stands right shows: local apparent time.</summary>
    public DialTime DialShows => DialTime.FromHourAngle(Sun.HourAngleAt(Place.Point.Longitude));
}
