namespace SunLessons.Figures;

/// <summary>The shape of a marker, so that no point is known by its colour alone.</summary>
public enum MarkerShape
{
    /// <summary>No marker.</summary>
    None,

    /// <summary>A filled disc.</summary>
    Disc,

    /// <summary>A square with white inside.</summary>
    Square,

    /// <summary>A filled diamond.</summary>
    Diamond,

    /// <summary>A triangle with white inside, point up.</summary>
    Triangle,
}
