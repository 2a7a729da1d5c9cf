namespace SunLessons.Dials.Faces;

/// <summary>
/// The error of a dial on any flat face that is wrongly made or set: what it shows less the true local apparent time. Exact: a run of
/// <see cref="FaceModel"/>, no small-angle law.
/// </summary>
/// <remarks>
/// Twist, roll and tip of the solid dial and a wrong latitude err by the SAME minutes on every face that is lit then, because a sound style and its hour lines
/// turn together. To the first order, minutes, degrees, hour angle H, Sun's declination d, latitude f: fast = −4 twist (sin f − cos f cos H tan d)
/// − 4 roll (cos f + sin f cos H tan d) + 4 (made for − f) sin H tan d; the tests hold the model's derivative to that within 0.001 minutes per degree.
/// A style out of its place is another fault, and differs from face to face.
/// </remarks>
public static class FaceError
{
    /// <summary>
    /// Minutes that the dial is FAST (positive) or slow (negative) against the Sun, within 12 hours; null when it shows nothing there
    /// (ask <see cref="FaceModel.Read(FaceDial, DialStance, Latitude, HourAngle, SolarDeclination)"/> why).
    /// </summary>
    /// <param name="dial">The dial's design and its style as made.</param>
    /// <param name="stance">How it stands, against how it was meant to.</param>
    /// <param name="place">The latitude of the place where it stands.</param>
    /// <param name="hourAngle">The Sun's true hour angle.</param>
    /// <param name="declination">The Sun's declination.</param>
    /// <param name="clockSlowMinutes">
    /// By how much the clock that it is compared with is slow, minutes, also what the numbering is ahead: it is added whole, since clock and Sun know nothing of
    /// each other.
    /// </param>
    public static double? FastMinutes(
        FaceDial dial, DialStance stance, Latitude place, HourAngle hourAngle, SolarDeclination declination, double clockSlowMinutes = 0.0) =>
        FaceModel.Read(dial, stance, place, hourAngle, declination) is FaceReading.Shows shows
            ? (shows.Time.HourAngle.Angle - hourAngle.Angle).AroundZero().TimeMinutes + clockSlowMinutes
            : null;
}
