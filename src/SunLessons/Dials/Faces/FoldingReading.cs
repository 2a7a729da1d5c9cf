namespace SunLessons.Dials.Faces;

/// <summary>What the two plates of a folding pair show in the same light.</summary>
/// <param name="Flat">The flat plate.</param>
/// <param name="Upright">The upright plate.</param>
public sealed record FoldingReading(FaceReading Flat, FaceReading Upright)
{
    /// <summary>The upright plate's reading less the flat one's, minutes; null where one of them is dark.</summary>
    public double? UprightAheadMinutes => Flat is FaceReading.Shows flat && Upright is FaceReading.Shows upright
        ? (upright.Time.HourAngle.Angle - flat.Time.HourAngle.Angle).AroundZero().TimeMinutes
        : null;
}
