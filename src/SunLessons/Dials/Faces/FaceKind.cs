namespace SunLessons.Dials.Faces;

/// <summary>The trade's name for a face at a latitude. The narrowest name is given: an upright face at the equator that is parallel to the equator's plane is called equatorial.</summary>
public enum FaceKind
{
    /// <summary>Level, looking up.</summary>
    Horizontal,

    /// <summary>Upright, looking due south or north.</summary>
    VerticalDirect,

    /// <summary>Upright, looking anywhere else (east and west walls are <see cref="Polar"/>).</summary>
    VerticalDeclining,

    /// <summary>Leaning, looking due south or north.</summary>
    Inclining,

    /// <summary>Leaning, looking anywhere else.</summary>
    IncliningDeclining,

    /// <summary>Along the Earth's axis: the style is parallel to the plate and the hour lines to each other.</summary>
    Polar,

    /// <summary>Parallel to the equator: the style stands square on the plate and the hour lines are 15° apart.</summary>
    Equatorial,

    /// <summary>Level, looking straight down.</summary>
    Overhead,
}
