using System.Globalization;

namespace SunLessons.Dials.Faces;

/// <summary>
/// From the Sun's direction to what a dial on any flat face shows: the steps of <see cref="ForwardModel"/> with the face's axes in place of a level plate's.
/// </summary>
/// <remarks>
/// The stance is that of the whole dial as a solid thing, the same three turns for every face: rolled until its EAST side stands higher, then tipped until its
/// NORTH side stands higher, then twisted clockwise as seen from above, all from the way it was meant to stand. So a southern wall dial hung crooked is a roll,
/// one that leans from its wall is a tip. A level face gives the very readings of <see cref="ForwardModel"/>.
/// Measured: against a solid ray-traced in the world, 12,500 crooked dials of every kind, within 1e-7 minutes.
/// </remarks>
public static class FaceModel
{
    /// <summary>What a dial shows when the Sun stands in a given direction.</summary>
    /// <param name="dial">The dial's design and its style as made.</param>
    /// <param name="stance">How it stands, against how it was meant to.</param>
    /// <param name="sun">The Sun's direction along east, north and up.</param>
    public static FaceReading Read(FaceDial dial, DialStance stance, LocalDirection sun)
    {
        ArgumentNullException.ThrowIfNull(dial);
        return Read(dial, FaceLayout.Of(dial.Face, dial.MadeFor), stance, sun);
    }

    /// <summary>What a dial shows at an hour angle and declination of the Sun, standing at a latitude.</summary>
    public static FaceReading Read(FaceDial dial, DialStance stance, Latitude place, HourAngle hourAngle, SolarDeclination declination) =>
        Read(dial, stance, LocalDirection.FromHourAngle(hourAngle, declination, place));

    internal static FaceReading Read(FaceDial dial, FaceLayout layout, DialStance stance, LocalDirection sun)
    {
        if (sun.Up <= 0.0)
        {
            return new FaceReading.Nothing(NoReading.SunBelowHorizon, BelowHorizon(sun));
        }

        var onFace = layout.Axes.ToFace(stance.ToPlate(sun.ToVector()));
        if (onFace.Z <= 0.0)
        {
            return new FaceReading.Nothing(NoReading.SunBehindPlate, BehindPlate(onFace));
        }

        return ReadOnFace(dial, layout, onFace);
    }

    /// <summary>The reading for a direction along the face's own axes that lies before it: the Sun's centre, or a point of its rim.</summary>
    internal static FaceReading ReadOnFace(FaceDial dial, FaceLayout layout, Vector3 sun)
    {
        if (StyleAsMade(dial, layout, out var fault) is not { } style)
        {
            return fault!;
        }

        // Along the plate the style has no point in it: its shadow is as far beside the substyle as the Sun makes it, the scale's own style stands at height 1 over
        // the same substyle. From the shadow (as made) back to the style (as meant), multiplied by the Sun's height over the plate.
        var shadow = layout.IsParallel
            ? new Vector3(-(1.0 + dial.StyleTooHighFraction) * sun.X, -(1.0 + dial.StyleTooHighFraction) * sun.Y, -sun.Z)
            : ForwardModel.ShadowOnPlate(style, sun);
        return new FaceReading.Shows(ForwardModel.ScaleAt(layout.Sky, shadow));
    }

    /// <summary>The direction of the style as it was made, along right, up and normal; null, with the reason, where such a style shows nothing.</summary>
    internal static Vector3? StyleAsMade(FaceDial dial, FaceLayout layout, out FaceReading.Nothing? fault)
    {
        fault = Fault(dial, layout);
        if (fault is not null)
        {
            return null;
        }

        var style = layout.Style;
        if (dial.StyleTooSteep == Angle.Zero)
        {
            return style;
        }

        var height = Math.Asin(Math.Clamp(style.Z, -1.0, 1.0)) + dial.StyleTooSteep.Radians;
        var along = Math.Sqrt(style.X * style.X + style.Y * style.Y);
        return new Vector3(style.X / along * Math.Cos(height), style.Y / along * Math.Cos(height), Math.Sin(height));
    }

    private static FaceReading.Nothing? Fault(FaceDial dial, FaceLayout layout)
    {
        if (layout.IsParallel)
        {
            return dial.StyleTooSteep != Angle.Zero
                ? new FaceReading.Nothing(
                    NoReading.StyleParallelToPlate,
                    "The style of a polar face has no centre to be too steep about; give the part by which it stands too high.")
                : 1.0 + dial.StyleTooHighFraction is not (> 0.0 and < double.PositiveInfinity)
                    ? new FaceReading.Nothing(
                        NoReading.StyleUnderPlate,
                        $"A style {dial.StyleTooHighFraction.ToString("0.###", CultureInfo.InvariantCulture)} of its height too high lies in or under the plate; give a part above -1.")
                    : null;
        }

        if (dial.StyleTooSteep == Angle.Zero)
        {
            return null;
        }

        return Math.Asin(Math.Clamp(layout.Style.Z, -1.0, 1.0)) + dial.StyleTooSteep.Radians <= 0.0
            ? new FaceReading.Nothing(
                NoReading.StyleUnderPlate,
                $"A style {Degrees(-dial.StyleTooSteep.Degrees)} degrees too flat would run into the plate, over which it should stand {Degrees(Math.Abs(layout.StyleHeight.Degrees))} degrees; give a smaller fault.")
            : layout.Substyle is Substyle.None none
                ? new FaceReading.Nothing(NoReading.OffTheScale, none.Sentence + " A style out of square there is a tilt of the dial.")
                : null;
    }

    internal static string BelowHorizon(LocalDirection sun) =>
        $"The Sun stands {Degrees(-sun.Altitude.Degrees)} degrees below the horizon and casts no shadow; choose a time between sunrise and sunset.";

    internal static string BehindPlate(Vector3 sunOnFace) =>
        $"The Sun stands {Degrees(Math.Asin(Math.Clamp(-sunOnFace.Z, -1.0, 1.0)) * (180.0 / Math.PI))} degrees behind the plate and leaves its face dark; "
        + "choose a time when it shines on the face.";

    private static string Degrees(double degrees) => degrees.ToString("0.0", CultureInfo.InvariantCulture);
}
