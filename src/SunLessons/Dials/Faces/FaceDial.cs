namespace SunLessons.Dials.Faces;

/// <summary>
/// A dial on a flat face: the layout that was meant, and what is wrong with the style as made. Design only: how and where it stands is a
/// <see cref="DialStance"/> and a place. Immutable.
/// </summary>
/// <param name="Face">How the face is meant to lean and look.</param>
/// <param name="MadeFor">The latitude that style and hour lines were made for, north positive.</param>
public sealed record FaceDial(Face Face, Latitude MadeFor)
{
    /// <summary>
    /// By how much the style's angle over the plate exceeds the right one, turned about the centre in the plane of style and substyle; positive too steep.
    /// Zero for a sound dial. It means nothing on a polar or an equatorial face, which then have no reading.
    /// </summary>
    public Angle StyleTooSteep { get; init; }

    /// <summary>
    /// On a polar face: by what part of the right height the style stands too high over the plate, more than −1; 0.05 is 5 % too high. Zero for a sound
    /// dial; it means nothing on another face, where only the direction of the style counts.
    /// </summary>
    public double StyleTooHighFraction { get; init; }
}
