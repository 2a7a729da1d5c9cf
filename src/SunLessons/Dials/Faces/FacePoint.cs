namespace SunLessons.Dials.Faces;

/// <summary>
/// A point of a face, in heights of the nodus over the plate (a nodus 20 mm over the plate makes 1 mean 20 mm), from the foot of the perpendicular under it.
/// </summary>
/// <param name="Right">To the right for one who stands before the lit face, nodus heights; negative to the left.</param>
/// <param name="Up">Up the steepest slope, nodus heights; negative downwards. On a level face: see <see cref="Face"/>.</param>
public readonly record struct FacePoint(double Right, double Up)
{
    /// <summary>The straight distance to another point, in nodus heights.</summary>
    public double DistanceTo(FacePoint other) => Math.Sqrt((Right - other.Right) * (Right - other.Right) + (Up - other.Up) * (Up - other.Up));
}
