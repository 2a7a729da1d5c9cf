using SunLessons.Dials.Faces;
using SunLessons.Magnetism;
using SunLessons.Readings;

namespace SunLessons.App.Printing;

/// <summary>How a dial was set by its compass, with every convention said, so that a wrong guess at an instrument is seen.</summary>
internal static class DialWords
{
    /// <summary>One sentence, or null where no compass was used.</summary>
    public static string? Setting(DialSetting setting) => setting switch
    {
        DialSetting.NeedleOnLine line =>
            $"Set by its compass: the needle lay over a line engraved for {Declination(line.Line.MadeFor)}, that is {Side(line.Line.MadeFor)}{Fault(line.Line.NeedleError, "the needle stands", "clockwise of magnetic north", "anticlockwise of magnetic north")}{Known(line.MeasuredDeclination)}.",
        DialSetting.CompassShowed { Compass: var compass } showed =>
            $"Set by its compass: {Build(compass.Build)}, figures growing {Graduation(compass.Graduation)}, read {Degrees(showed.Reading.Degrees)}{Fault(compass.IndexError, "it reads", "too much", "too little")}{Known(showed.MeasuredDeclination)}.",
        _ => null,
    };

    /// <summary>One sentence on a plate that does not lie level, or null for one that does.</summary>
    public static string? Plate(Face? face) => face is { } plate
        ? $"A plate that leans {Degrees(plate.Inclination.Degrees)} from looking straight up and looks {Direction(plate.Declination.Degrees)}."
        : null;

    private static string Direction(double fromSouth) => Math.Abs(fromSouth) switch
    {
        0.0 => "south",
        180.0 => "north",
        var size => $"{Degrees(size)} {(fromSouth > 0.0 ? "west" : "east")} of south",
    };

    /// <summary>Such as <c>1.2° W</c>.</summary>
    private static string Declination(MagneticDeclination declination) =>
        declination.Degrees == 0.0 ? "0°" : Degrees(Math.Abs(declination.Degrees)) + (declination.Degrees < 0.0 ? " W" : " E");

    private static string Side(MagneticDeclination madeFor) => madeFor.Degrees switch
    {
        < 0.0 => "to the left of the plate's north",
        > 0.0 => "to the right of the plate's north",
        _ => "along the noon line",
    };

    private static string Build(CompassBuild build) => build == CompassBuild.NeedleOverFixedCard
        ? "a needle over a fixed card, read at its north end"
        : "a moving card, read at the mark on the case";

    private static string Graduation(CompassGraduation graduation) => graduation == CompassGraduation.Clockwise
        ? "clockwise (90 at the right hand of 0)"
        : "anticlockwise (90 at the left hand of 0)";

    private static string Fault(Angle error, string before, string positive, string negative) =>
        error == Angle.Zero ? "" : $"; {before} {Degrees(Math.Abs(error.Degrees))} {(error > Angle.Zero ? positive : negative)}";

    private static string Known(MagneticDeclination? measured) =>
        measured is { } declination ? $"; magnetic declination given as {Declination(declination)}" : "";

    private static string Degrees(double degrees) => PlainWords.Number(degrees, "0.##") + "°";
}
