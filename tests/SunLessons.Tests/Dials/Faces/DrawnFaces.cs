using SunLessons.Dials.Faces;

namespace SunLessons.Tests.Dials.Faces;

public enum Drawn
{
    Any,
    Upright,
    Polar,
    Equatorial,
    LevelUpOrDown,
}

/// <summary>Faces of a kind at random.</summary>
internal static class DrawnFaces
{
    public static Face Of(Drawn drawn, Random random, Latitude latitude)
    {
        double Between(double low, double high) => low + (high - low) * random.NextDouble();
        return drawn switch
        {
            Drawn.Upright => Face.FromDegrees(90, Between(-180, 180)),
            Drawn.Polar => Polar(random, latitude),
            Drawn.Equatorial => random.Next(2) == 0 ? Face.EquatorialUpper(latitude) : Face.EquatorialLower(latitude),
            Drawn.LevelUpOrDown => Face.FromDegrees(180 * random.Next(2), Between(-180, 180)),
            _ => Face.FromDegrees(Between(0, 180), Between(-180, 180)),
        };
    }

    private static Face Polar(Random random, Latitude latitude)
    {
        // Any plane through the axis: its normal is a mix of the meridian's and the west's direction.
        var turn = (random.NextDouble() * 2 - 1) * Math.PI;
        double east = -Math.Sin(turn), north = -latitude.Angle.Sin * Math.Cos(turn), up = latitude.Angle.Cos * Math.Cos(turn);
        return Face.FromDegrees(Math.Acos(Math.Clamp(up, -1, 1)) * 180 / Math.PI, Math.Atan2(east, north) * 180 / Math.PI - 180);
    }
}
