using System.Globalization;
using SunLessons.Dials;

namespace SunLessons.Readings;

/// <summary>The words for how a dial stands.</summary>
internal static class StanceInWords
{
    public static string Of(DialStance stance)
    {
        var degrees = Rounded(stance.TwistClockwise.AroundZero());
        var twist = degrees == 0.0
            ? "the noon line points to true north"
            : $"the noon line points {Text(degrees)} degrees {(degrees > 0.0 ? "clockwise (east)" : "anticlockwise (west)")} of true north";
        return twist + Tilt(stance.EastEdgeRaised, "east") + Tilt(stance.NorthEdgeRaised, "north");
    }

    /// <summary>Of a face that does not lie level, against how it was meant to stand.</summary>
    public static string OfFace(DialStance stance)
    {
        var degrees = Rounded(stance.TwistClockwise.AroundZero());
        var twist = degrees == 0.0 ? "the face looks where it was meant to" : $"the face is turned {Text(degrees)} degrees {(degrees > 0.0 ? "clockwise" : "anticlockwise")} as seen from above";
        return twist + Tilt(stance.EastEdgeRaised, "east") + Tilt(stance.NorthEdgeRaised, "north");
    }

    private static string Tilt(Angle raised, string edge)
    {
        var degrees = Rounded(raised);
        return degrees == 0.0 ? "" : $", its {edge} edge {Text(degrees)} degrees too {(degrees > 0.0 ? "high" : "low")}";
    }

    private static double Rounded(Angle angle) => Math.Round(angle.Degrees, 1, MidpointRounding.AwayFromZero);

    private static string Text(double degrees) => Math.Abs(degrees).ToString("0.0", CultureInfo.InvariantCulture);
}
