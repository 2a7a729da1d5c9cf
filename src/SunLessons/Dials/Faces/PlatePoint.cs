namespace SunLessons.Dials.Faces;

/// <summary>A point of a level plate, in half lengths of the dial's ellipse from its centre.</summary>
/// <param name="East">To the east, half lengths; negative to the west.</param>
/// <param name="North">To true north, half lengths; negative to the south.</param>
public readonly record struct PlatePoint(double East, double North);
