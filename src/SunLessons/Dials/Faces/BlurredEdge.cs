namespace SunLessons.Dials.Faces;

/// <summary>
/// The penumbra beside a straight style: what a dial would show at the two limits of the blur, where the Sun's rim just vanishes behind the style and just
/// comes out whole. Between them the shadow fades; its middle, by the Sun's centre, is what the scale is drawn for.
/// </summary>
/// <remarks>
/// The limits are the two planes through the style that touch the Sun's disc: turned about it by asin(sin s / sin γ) from the Sun's centre, s the semidiameter and γ
/// the angle between style and Sun. On a sound dial that is asin(sin s / cos d) of hour angle, 1.07 minutes either way at an equinox and 1.16 at a solstice.
/// Checked in the tests by counting which points of the disc a point of the plate sees. Left out: the style's thickness, darkening towards the Sun's rim, refraction.
/// </remarks>
/// <param name="Earlier">The reading at the limit that lies on the side of the earlier hours.</param>
/// <param name="Later">The reading at the other limit.</param>
public readonly record struct BlurredEdge(DialTime Earlier, DialTime Later)
{
    /// <summary>The width of the blur on the scale, minutes of time, above 0.</summary>
    public double WidthMinutes => (Later.HourAngle.Angle - Earlier.HourAngle.Angle).InOneTurn().TimeMinutes;

    /// <summary>The blur of a dial on any flat face; null where the dial shows nothing, or where a limit of the blur falls behind the plate.</summary>
    /// <param name="dial">The dial's design and its style as made.</param>
    /// <param name="stance">How it stands, against how it was meant to.</param>
    /// <param name="sun">The direction of the Sun's centre along east, north and up.</param>
    /// <param name="semidiameter">Half the width of the Sun's disc, such as <c>ApparentSun.Semidiameter</c>; some 16′.</param>
    public static BlurredEdge? Of(FaceDial dial, DialStance stance, LocalDirection sun, Angle semidiameter)
    {
        ArgumentNullException.ThrowIfNull(dial);
        var layout = FaceLayout.Of(dial.Face, dial.MadeFor);
        if (sun.Up <= 0.0 || FaceModel.StyleAsMade(dial, layout, out _) is not { } style)
        {
            return null;
        }

        var centre = layout.Axes.ToFace(stance.ToPlate(sun.ToVector()));
        var across = style.Cross(centre);
        var turn = Math.Asin(semidiameter.Sin / Math.Sqrt(across.Dot(across)));
        return Reading(-turn) is { } one && Reading(turn) is { } other
            ? (other.HourAngle.Angle - one.HourAngle.Angle).AroundZero() > Angle.Zero ? new BlurredEdge(one, other) : new BlurredEdge(other, one)
            : null;

        // A Sun that stands along the style (turn not a number) throws no edge at all.
        DialTime? Reading(double by)
        {
            var limit = Turned(centre, style, across, by);
            return limit.Z > 0.0 && FaceModel.ReadOnFace(dial, layout, limit) is FaceReading.Shows shows ? shows.Time : null;
        }
    }

    // Rodrigues' formula about a unit axis; across is axis × v.
    private static Vector3 Turned(Vector3 v, Vector3 axis, Vector3 across, double by)
    {
        var (sin, cos) = Math.SinCos(by);
        var along = axis.Dot(v) * (1.0 - cos);
        return new Vector3(v.X * cos + across.X * sin + axis.X * along, v.Y * cos + across.Y * sin + axis.Y * along, v.Z * cos + across.Z * sin + axis.Z * along);
    }
}
