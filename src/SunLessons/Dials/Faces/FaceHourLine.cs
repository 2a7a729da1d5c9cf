namespace SunLessons.Dials.Faces;

/// <summary>One hour line of a face, or why there is none.</summary>
public abstract record FaceHourLine
{
    private FaceHourLine()
    {
    }

    /// <summary>The line starts at the centre, where the style meets the plate.</summary>
    /// <param name="Centre">The centre, in nodus heights from the foot of the nodus; it moves far away as the style sinks to the plate.</param>
    /// <param name="Clockwise">The line's direction from up, clockwise for one who stands before the face, −180° (excluded) to +180°.</param>
    public sealed record FromCentre(FacePoint Centre, Angle Clockwise) : FaceHourLine;

    /// <summary>The line of a polar face, parallel to the style.</summary>
    /// <param name="Through">Its nearest point to the foot of the nodus, in heights of the style over the plate.</param>
    /// <param name="Clockwise">Its direction towards the north, from up, clockwise for one who stands before the face.</param>
    /// <param name="RightOfStyle">
    /// The distance from the substyle, in heights of the style, positive to the right for one who looks along the style towards the north.
    /// </param>
    public sealed record BesideStyle(FacePoint Through, Angle Clockwise, double RightOfStyle) : FaceHourLine;

    /// <summary>The face has no such line.</summary>
    /// <param name="Sentence">The reason, for people.</param>
    public sealed record None(string Sentence) : FaceHourLine;
}
