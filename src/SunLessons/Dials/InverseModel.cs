namespace SunLessons.Dials;

/// <summary>
/// From what a dial shows back to the Sun: every true hour angle at which a dial, standing as it does, would show a given time. For plates that are not meant to
/// lie level see <see cref="Faces.FaceInverse"/>.
/// </summary>
/// <remarks>
/// The reading fixes a half-plane from the style through the shadow's line; the Sun's circle for the day meets its plane in at most two points.
/// Each is kept only if the <see cref="ForwardModel"/> run there shows that very reading, so the two models cannot disagree.
/// </remarks>
public static class InverseModel
{
    /// <summary>
    /// All true hour angles that fit, in the order of the day; empty when the Sun never throws that shadow on that day.
    /// Nothing is chosen among several.
    /// </summary>
    /// <param name="dial">The dial's design.</param>
    /// <param name="stance">How it really stands.</param>
    /// <param name="place">The latitude of the place where it stands.</param>
    /// <param name="declination">The Sun's declination at that time.</param>
    /// <param name="shown">What the dial shows.</param>
    public static IReadOnlyList<HourAngle> HourAngles(
        FlatDial dial, DialStance stance, Latitude place, SolarDeclination declination, DialTime shown)
    {
        if (ForwardModel.ScaleFault(dial) is not null)
        {
            return [];
        }

        // The shadow's line on the plate: where the scale's own hour plane cuts it.
        var clockwise = HourLines.At(dial.ScaleLatitude, shown).Clockwise;
        var towards = dial.ScaleLatitude.IsSouthern ? -1.0 : 1.0;
        var shadow = new Vector3(towards * clockwise.Sin, towards * clockwise.Cos, 0.0);
        return DayCircle.WhereItShows(
            stance.ToWorld(ForwardModel.Style(dial.StyleLatitude).Cross(shadow)),
            place,
            declination,
            shown,
            hourAngle => ForwardModel.Read(dial, stance, place, hourAngle, declination) is DialReading.Shows shows ? [shows.Time] : []);
    }
}
