using System.Globalization;

namespace SunLessons.Dials;

/// <summary>
/// From the Sun's direction to what a dial shows. THE model of a dial in this library: hour lines, errors of a badly set dial, sensitivities and
/// corrections are this function run again.
/// </summary>
/// <remarks>
/// Steps: the Sun's direction is turned into the plate's own axes by the stance; the plane of Sun and style cuts the plate in the shadow;
/// the scale says which hour plane of its own latitude cuts the plate there. Left out: refraction, the Sun's width, the style's thickness.
/// Measured: equal to tan(theta) = sin(latitude) tan(H) within 1e-11 degrees; through the 300 ray-traced nodus shadows of the test authorities
/// within 5e-6 degrees, which is what their printed digits allow; as a solid dial ray-traced in the world, 4000 crooked stances, within 1e-8 minutes.
/// </remarks>
public static class ForwardModel
{
    // A style nearer to the plate than this, radians, is taken as lying on it: the hour lines would be one line to within rounding.
    private const double FlatStyleRadians = 1e-12;

    /// <summary>What a dial shows when the Sun stands in a given direction.</summary>
    /// <param name="dial">The dial's design.</param>
    /// <param name="stance">How it really stands.</param>
    /// <param name="sun">The Sun's direction along east, north and up.</param>
    public static DialReading Read(FlatDial dial, DialStance stance, LocalDirection sun)
    {
        if (ScaleFault(dial) is { } fault)
        {
            return fault;
        }

        if (sun.Up <= 0.0)
        {
            return new DialReading.Nothing(
                NoReading.SunBelowHorizon,
                $"The Sun stands {Degrees(-sun.Altitude.Degrees)} degrees below the horizon and casts no shadow; choose a time between sunrise and sunset.");
        }

        var onPlate = stance.ToPlate(sun.ToVector());
        if (onPlate.Z <= 0.0)
        {
            return new DialReading.Nothing(
                NoReading.SunBehindPlate,
                $"The Sun stands {Degrees(Math.Asin(Math.Clamp(-onPlate.Z, -1.0, 1.0)) * (180.0 / Math.PI))} degrees behind the plate and leaves its face dark; choose a time when it shines on the face.");
        }

        var shadow = ShadowOnPlate(dial.StyleLatitude, onPlate);
        var time = ScaleAt(dial.ScaleLatitude, shadow);
        return dial.Engraved is { } hours && !hours.Hold(time)
            ? new DialReading.Nothing(
                NoReading.OffTheScale,
                $"The shadow falls at {time}, outside the engraved hours {hours.First} to {hours.Last}; choose a time when it falls on them.")
            : new DialReading.Shows(time, Angle.FromRadians(ClockwiseFromNoonLine(dial.ScaleLatitude, shadow)).AroundZero());
    }

    /// <summary>What a dial shows at an hour angle and declination of the Sun, standing at a latitude.</summary>
    public static DialReading Read(FlatDial dial, DialStance stance, Latitude place, HourAngle hourAngle, SolarDeclination declination) =>
        Read(dial, stance, LocalDirection.FromHourAngle(hourAngle, declination, place));

    /// <summary>Why a dial has no scale that could be read in any light, or null when it has one.</summary>
    public static DialReading.Nothing? ScaleFault(FlatDial dial)
    {
        if (Math.Abs(dial.ScaleLatitude.Radians) < FlatStyleRadians || Math.Abs(dial.StyleLatitude.Radians) < FlatStyleRadians)
        {
            return new DialReading.Nothing(
                NoReading.StyleParallelToPlate,
                "A level dial for latitude 0 degrees has its style along the plate and no hour lines; choose a scale and style away from the equator, or another kind of dial.");
        }

        return dial.ScaleLatitude.IsSouthern != dial.StyleLatitude.IsSouthern
            ? new DialReading.Nothing(
                NoReading.StyleUnderPlate,
                $"A style for {dial.StyleLatitude} would run into a plate with a scale for {dial.ScaleLatitude}; use style and scale of one hemisphere.")
            : null;
    }

    /// <summary>
    /// Direction of the style's shadow along the plate's axes (Z is zero). The point u of the style throws its shadow where the ray u − k·sun meets the
    /// plate, k = u.Z / sun.Z; multiplied by sun.Z, which is positive, so that a grazing Sun divides by nothing.
    /// </summary>
    internal static Vector3 ShadowOnPlate(Latitude style, Vector3 sun) => ShadowOnPlate(Style(style), sun);

    /// <summary>The same on a plate of any slope, style and Sun along the plate's own axes (Z is the normal on the lit side, style.Z is positive).</summary>
    internal static Vector3 ShadowOnPlate(Vector3 style, Vector3 sun) =>
        new(sun.Z * style.X - style.Z * sun.X, sun.Z * style.Y - style.Z * sun.Y, 0.0);

    /// <summary>The part of the axis that rises over the plate: towards the pole that is up.</summary>
    internal static Vector3 Style(Latitude latitude) => Style(latitude, PolarFrame.At(latitude));

    /// <summary>The same where the latitude's axes are at hand.</summary>
    internal static Vector3 Style(Latitude latitude, PolarFrame sky)
    {
        var pole = sky.Pole;
        return latitude.IsSouthern ? new Vector3(-pole.X, -pole.Y, -pole.Z) : pole;
    }

    /// <summary>
    /// The reading where a shadow lies: the hour plane of the scale's own sky that cuts the plate along it. The Sun of that plane stands opposite the shadow.
    /// </summary>
    internal static DialTime ScaleAt(Latitude scale, Vector3 shadow) => ScaleAt(PolarFrame.At(scale), shadow);

    /// <summary>The same for a scale whose sky is given along the axes of a plate of any slope.</summary>
    internal static DialTime ScaleAt(PolarFrame scale, Vector3 shadow)
    {
        var hourAngle = scale.HourAngleOf(new Vector3(-shadow.X, -shadow.Y, -shadow.Z));
        return DialTime.FromHourAngle(HourAngle.FromAngle(Angle.FromRadians(hourAngle)));
    }

    private static double ClockwiseFromNoonLine(Latitude scale, Vector3 shadow) =>
        scale.IsSouthern ? Math.Atan2(-shadow.X, -shadow.Y) : Math.Atan2(shadow.X, shadow.Y);

    private static string Degrees(double degrees) => degrees.ToString("0.0", CultureInfo.InvariantCulture);
}
