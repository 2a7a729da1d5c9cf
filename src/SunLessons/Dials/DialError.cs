namespace SunLessons.Dials;

/// <summary>
/// The error of a dial that is wrongly made or set: what it shows less what a faultless dial shows in the same light. Exact: two runs of the
/// <see cref="ForwardModel"/>, no small-angle law.
/// </summary>
public static class DialError
{
    /// <summary>
    /// Minutes that the dial is FAST (positive) or slow (negative), within 12 hours; null when it shows nothing there
    /// (ask <see cref="ForwardModel.Read(FlatDial, DialStance, Latitude, HourAngle, SolarDeclination)"/> why).
    /// </summary>
    /// <param name="dial">The dial's design.</param>
    /// <param name="stance">How it really stands.</param>
    /// <param name="place">The latitude of the place where it stands.</param>
    /// <param name="hourAngle">The Sun's true hour angle, which is what a faultless dial shows.</param>
    /// <param name="declination">The Sun's declination.</param>
    public static double? FastMinutes(FlatDial dial, DialStance stance, Latitude place, HourAngle hourAngle, SolarDeclination declination) =>
        ForwardModel.Read(dial, stance, place, hourAngle, declination) is DialReading.Shows shows
            ? (shows.Time.HourAngle.Angle - hourAngle.Angle).AroundZero().TimeMinutes
            : null;
}
