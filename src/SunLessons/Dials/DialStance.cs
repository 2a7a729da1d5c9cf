namespace SunLessons.Dials;

/// <summary>
/// How a dial really stands: how far it is twisted and tipped from level and true. The default value is a dial that stands right.
/// </summary>
/// <remarks>
/// The three angles are those that can be measured on a standing dial, and their order follows from that. In words, with a card on the table:
/// lay the card level with its noon line along true north and south. First roll it about its own noon line until its EAST edge stands higher
/// (<see cref="EastEdgeRaised"/>); the noon line has not moved. Then lift its NORTH edge (<see cref="NorthEdgeRaised"/>), turning about the level line
/// east to west; now the noon line climbs northwards by just this angle. Last turn the whole clockwise as seen from above about the plumb line
/// (<see cref="TwistClockwise"/>); the north end of the noon line now points to just this azimuth. "North" and "east" edge are the plate's own,
/// also in the southern hemisphere. For faults of a degree the order hardly matters (two turns of 1° leave 0.0175°, below 0.1 minutes); for large ones it does.
/// </remarks>
/// <param name="TwistClockwise">
/// The true azimuth of the north end of the noon line: clockwise seen from above is positive. Any angle; ±90° and more are allowed.
/// </param>
/// <param name="EastEdgeRaised">The roll about the noon line, positive when the plate's east edge stands higher.</param>
/// <param name="NorthEdgeRaised">The climb of the noon line towards the plate's north, positive when that edge stands higher.</param>
public readonly record struct DialStance(Angle TwistClockwise, Angle EastEdgeRaised, Angle NorthEdgeRaised)
{
    /// <summary>Level, with the noon line along the true meridian.</summary>
    public static DialStance True => default;

    /// <summary>Makes a stance from degrees: twist clockwise seen from above, east edge raised, north edge raised, each positive as named.</summary>
    public static DialStance FromDegrees(double twistClockwiseDegrees, double eastEdgeRaisedDegrees = 0.0, double northEdgeRaisedDegrees = 0.0) =>
        new(Angle.FromDegrees(twistClockwiseDegrees), Angle.FromDegrees(eastEdgeRaisedDegrees), Angle.FromDegrees(northEdgeRaisedDegrees));

    /// <summary>A direction of the world as the dial sees it, along the plate's own axes: its east, its north and its upward normal.</summary>
    internal Vector3 ToPlate(Vector3 world)
    {
        var axes = Axes();
        return new Vector3(world.Dot(axes.East), world.Dot(axes.North), world.Dot(axes.Up));
    }

    /// <summary>A direction given along the plate's own axes, along the axes of the world.</summary>
    internal Vector3 ToWorld(Vector3 plate)
    {
        var (e, n, u) = Axes();
        return new Vector3(
            plate.X * e.X + plate.Y * n.X + plate.Z * u.X,
            plate.X * e.Y + plate.Y * n.Y + plate.Z * u.Y,
            plate.X * e.Z + plate.Y * n.Z + plate.Z * u.Z);
    }

    private (Vector3 East, Vector3 North, Vector3 Up) Axes()
    {
        var (sinRoll, cosRoll) = Math.SinCos(EastEdgeRaised.Radians);
        var (sinClimb, cosClimb) = Math.SinCos(NorthEdgeRaised.Radians);
        var (sinTwist, cosTwist) = Math.SinCos(TwistClockwise.Radians);

        // Roll about the noon line: the east axis gains height, the normal leans west.
        return (Place(cosRoll, 0.0, sinRoll), Place(0.0, 1.0, 0.0), Place(-sinRoll, 0.0, cosRoll));

        Vector3 Place(double x, double y, double z)
        {
            // Climb about the level east-west line.
            (y, z) = (y * cosClimb - z * sinClimb, y * sinClimb + z * cosClimb);

            // Turn about the plumb line: clockwise from above carries north towards east.
            return new Vector3(x * cosTwist + y * sinTwist, y * cosTwist - x * sinTwist, z);
        }
    }
}
