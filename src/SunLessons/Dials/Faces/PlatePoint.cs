namespace SunLessons.Dials.Faces;

/// <summary>A point of a level plate, in half lengths of the dial's ellipse from its centre.</summary>
/// <param name="East">To the east; negative to the west.</param>
/// <param name="North">To true north; negative to the south.</param>
public readonly record struct PlatePoint(double East, double North);
