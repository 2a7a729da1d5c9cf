namespace SunLessons.Dials.Faces;

/// <summary>Which way the hours follow each other on a face, as seen by one who stands before it.</summary>
public enum NumbersRun
{
    /// <summary>Round the centre like the hands of a clock: the north pole stands over the face.</summary>
    Clockwise,

    /// <summary>Round the centre against the hands of a clock: the south pole stands over the face, as on a southern wall in the north.</summary>
    Anticlockwise,

    /// <summary>Across the face in parallel lines, from left to right of the style when one looks along it towards the north: a polar face.</summary>
    AcrossTheFace,
}
