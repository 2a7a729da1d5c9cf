namespace SunLessons.Dials.Faces;

/// <summary>The line of a face straight under the style.</summary>
public abstract record Substyle
{
    private Substyle()
    {
    }

    /// <summary>The face has a substyle.</summary>
    /// <param name="Clockwise">
    /// Its direction on the face from up, clockwise for one who stands before it, −180° (excluded) to +180°: the way the style climbs away from the plate;
    /// on a polar face the way to the north pole.
    /// </param>
    /// <param name="DifferenceOfLongitude">
    /// The Sun's hour angle when it stands in the plane of style and substyle, square before the face, afternoon positive. The face is parallel to a level
    /// plate on a meridian so far WEST of its own if this is positive: hence the old name.
    /// </param>
    public sealed record Stands(Angle Clockwise, HourAngle DifferenceOfLongitude) : Substyle;

    /// <summary>The style stands square on the plate: no line is under it, and every hour line serves as well.</summary>
    /// <param name="Sentence">The reason, for people.</param>
    public sealed record None(string Sentence) : Substyle;
}
