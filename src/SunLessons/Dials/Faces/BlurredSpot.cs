namespace SunLessons.Dials.Faces;

/// <summary>
/// How far the Sun's width smears the shadow of a point, the nodus, on a face: an ellipse, in nodus heights (a nodus 20 mm over the plate makes 1 mean 20 mm).
/// </summary>
/// <remarks>
/// The rays from the Sun's rim through the nodus make a cone of half angle s; the plate cuts it in an ellipse as wide across as 2 tan s over the sine of the Sun's height over
/// the plate, to first order, and as long as cot(h − s) − cot(h + s). A hole in place of a bead throws the same ellipse as a bright spot.
/// </remarks>
/// <param name="AcrossNodusHeights">Its width, square to the shadow's direction, nodus heights, above 0.</param>
/// <param name="AlongNodusHeights">Its length in the shadow's direction, nodus heights, not below its width.</param>
public readonly record struct BlurredSpot(double AcrossNodusHeights, double AlongNodusHeights)
{
    /// <summary>The smear on a face that stands as designed; null where the Sun's whole disc is not above the horizon and before the plate.</summary>
    /// <param name="layout">The face at its latitude.</param>
    /// <param name="sun">The direction of the Sun's centre along east, north and up.</param>
    /// <param name="semidiameter">Half the width of the Sun's disc; some 16′.</param>
    public static BlurredSpot? Of(FaceLayout layout, LocalDirection sun, Angle semidiameter)
    {
        ArgumentNullException.ThrowIfNull(layout);
        var s = semidiameter.Radians;
        var h = Math.Asin(Math.Clamp(layout.Axes.ToFace(sun.ToVector()).Z, -1.0, 1.0));
        if (h <= s || sun.Altitude.Radians <= s)
        {
            return null;
        }

        // A cone of half angle s about an axis h over the plate, cut at distance 1 from its tip: half axes from sin²h − sin²s.
        var room = Math.Sin(h - s) * Math.Sin(h + s);
        var along = Math.Sin(2.0 * s) / room;
        var across = 2.0 * Math.Sin(s) / Math.Sqrt(room);
        return new BlurredSpot(across, along);
    }
}
