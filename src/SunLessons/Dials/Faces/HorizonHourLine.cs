namespace SunLessons.Dials.Faces;

/// <summary>
/// The line on which the shadow of the nodus lies at one hour counted from the horizon, through the year. Hours from sunrise or sunset have straight lines;
/// those of unequal hours are bent, by so little that old dials draw them straight.
/// </summary>
/// <param name="Count">How the hours are counted.</param>
/// <param name="Hour">The hour.</param>
/// <param name="Points">Its lit points from the least declination to the greatest; empty where it has none.</param>
public sealed record HorizonHourLine(HorizonHours Count, double Hour, IReadOnlyList<DeclinationPoint> Points)
{
    /// <summary>Draws the line through the year by points at even steps of the Sun's declination.</summary>
    /// <param name="layout">The face at its latitude.</param>
    /// <param name="count">How the hours are counted.</param>
    /// <param name="hour">The hour, 0 to 24, or 0 to 12 for unequal ones.</param>
    /// <param name="points">How many declinations between the solstices, 2 or more.</param>
    /// <param name="reach">How far from the foot of the nodus points are wanted, in nodus heights, above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">An hour outside its range, fewer than 2 points or a reach that is not above 0.</exception>
    public static HorizonHourLine Of(FaceLayout layout, HorizonHours count, double hour, int points = 49, double reach = 20.0)
    {
        ArgumentNullException.ThrowIfNull(layout);
        if (points < 2 || !(reach > 0.0))
        {
            throw new ArgumentOutOfRangeException(
                nameof(points), $"{points} points within {reach} nodus heights are too few or too near; give 2 or more points and a reach above 0, such as 49 and 20.");
        }

        var found = new List<DeclinationPoint>();
        for (var i = 0; i < points; i++)
        {
            var declination = SolarDeclination.FromAngle(LitHours.GreatestDeclination * (2.0 * i / (points - 1) - 1.0));
            if (HorizonHour.Of(count, hour, layout.Latitude, declination) is HorizonHour.At at
                && layout.ShadowOfNodus(at.HourAngle, declination) is NodusShadow.At shadow
                && shadow.Point.DistanceTo(default) <= reach)
            {
                found.Add(new DeclinationPoint(at.HourAngle, declination, shadow.Point));
            }
        }

        return new HorizonHourLine(count, hour, found);
    }
}
