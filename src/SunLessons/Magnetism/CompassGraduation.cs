namespace SunLessons.Magnetism;

/// <summary>Which way the figures on a compass card grow, seen from above.</summary>
public enum CompassGraduation
{
    /// <summary>
    /// As on a clock face. Picture: 0 at the top, 90 at the right hand, 180 at the bottom, 270 at the left hand.
    /// </summary>
    Clockwise,

    /// <summary>
    /// Against the clock. Picture: 0 at the top, 90 at the LEFT hand, 180 at the bottom, 270 at the right hand; E and W look exchanged.
    /// Common on instruments with a needle over a fixed card, because the needle then shows the bearing of the sights directly
    /// (common practice, no source).
    /// </summary>
    Anticlockwise,
}
