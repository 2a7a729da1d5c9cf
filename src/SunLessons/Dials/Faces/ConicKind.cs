namespace SunLessons.Dials.Faces;

/// <summary>What the nodus' shadow draws on a face in a day of one solar declination.</summary>
public enum ConicKind
{
    /// <summary>A straight line: an equinox, on any face but one parallel to the equator.</summary>
    StraightLine,

    /// <summary>One branch of a hyperbola: the common case.</summary>
    Hyperbola,

    /// <summary>A parabola: declination and style height together make just 90°.</summary>
    Parabola,

    /// <summary>An ellipse: the Sun goes round the face without leaving it.</summary>
    Ellipse,

    /// <summary>A circle: the face is parallel to the equator.</summary>
    Circle,

    /// <summary>Nothing: that Sun never comes before the plane of the face.</summary>
    Nothing,
}
