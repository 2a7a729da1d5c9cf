namespace SunLessons.Dials.Faces;

/// <summary>
/// From what a dial on any flat face shows back to the Sun: every true hour angle at which that dial, standing as it does, would show a given time. Level, upright,
/// leaning, polar and equatorial faces, sound or with a fault of the style.
/// </summary>
/// <remarks>
/// The line of the reading and the style span a plane; the Sun's circle for the day meets it in at most two points, and each is kept only if
/// <see cref="FaceModel"/> run there shows that very reading. Checked in the tests by searching the whole day forwards.
/// For local apparent time; where longitude is built into the numbers, ask with <see cref="HourNumbering.ApparentAt"/> of the number.
/// </remarks>
public static class FaceInverse
{
    /// <summary>
    /// All true hour angles that fit, in the order of the day: two at most; empty when the Sun never throws that shadow on that face on that day, or
    /// when such a dial shows nothing at all (ask <see cref="FaceModel"/> why). Nothing is chosen between two.
    /// </summary>
    /// <param name="dial">The dial's design and its style as made.</param>
    /// <param name="stance">How it stands, against how it was meant to.</param>
    /// <param name="place">The latitude of the place where it stands.</param>
    /// <param name="declination">The Sun's declination at that time.</param>
    /// <param name="shown">What the dial shows, local apparent time by its lines.</param>
    public static IReadOnlyList<HourAngle> HourAngles(
        FaceDial dial, DialStance stance, Latitude place, SolarDeclination declination, DialTime shown)
    {
        ArgumentNullException.ThrowIfNull(dial);
        var layout = FaceLayout.Of(dial.Face, dial.MadeFor);
        return PlaneOf(dial, layout, shown) is { } plane
            ? DayCircle.WhereItShows(
                stance.ToWorld(plane),
                place,
                declination,
                shown,
                hourAngle => FaceModel.Read(dial, layout, stance, LocalDirection.FromHourAngle(hourAngle, declination, place)) is FaceReading.Shows shows
                    ? [shows.Time]
                    : [])
            : [];
    }

    /// <summary>The normal of the plane of style and line, along east, north and up as the face was meant to stand; null where there is none.</summary>
    internal static Vector3? PlaneOf(FaceDial dial, FaceLayout layout, DialTime shown) =>
        FaceModel.StyleAsMade(dial, layout, out _) is { } style && FromStyleToLine(dial, layout, shown) is { } toLine
            ? layout.Axes.FromFace(style.Cross(toLine))
            : null;

    /// <summary>A vector from a point of the style to a point of the line, along right, up and normal; null where the face has no such line.</summary>
    private static Vector3? FromStyleToLine(FaceDial dial, FaceLayout layout, DialTime shown) => layout.LineFor(shown) switch
    {
        // Style and line meet in the centre, so the line's own direction does.
        FaceHourLine.FromCentre line => new Vector3(line.Clockwise.Sin, line.Clockwise.Cos, 0.0),

        // The style runs over the foot of the nodus, as high as it was made.
        FaceHourLine.BesideStyle line => new Vector3(line.Through.Right, line.Through.Up, -(1.0 + dial.StyleTooHighFraction)),
        _ => null,
    };
}
