namespace SunLessons.Dials;

/// <summary>
/// A direction from where the dial stands, as a unit vector along the local axes east, north (true) and up. The default value is not a direction;
/// make one by <see cref="FromAzimuthAltitude"/> or <see cref="FromHourAngle"/>.
/// </summary>
/// <remarks>Geometric: light is not bent by air here. Each part lies within −1 to +1, without unit.</remarks>
public readonly record struct LocalDirection
{
    private LocalDirection(double east, double north, double up)
    {
        East = east;
        North = north;
        Up = up;
    }

    /// <summary>The part towards true east, −1 to +1, without unit.</summary>
    public double East { get; }

    /// <summary>The part towards true north, −1 to +1, without unit.</summary>
    public double North { get; }

    /// <summary>The part upwards, −1 to +1; it is the sine of the altitude.</summary>
    public double Up { get; }

    /// <summary>The altitude of the direction, upwards positive.</summary>
    public Altitude Altitude => Altitude.FromDegrees(Math.Atan2(Up, Math.Sqrt(East * East + North * North)) * (180.0 / Math.PI));

    /// <summary>The azimuth of the direction from true north through east; north if it points straight up or down.</summary>
    public Azimuth Azimuth => Azimuth.FromDegrees(Math.Atan2(East, North) * (180.0 / Math.PI));

    /// <summary>The direction at an azimuth and an altitude.</summary>
    public static LocalDirection FromAzimuthAltitude(Azimuth azimuth, Altitude altitude)
    {
        var level = altitude.Angle.Cos;
        return new LocalDirection(level * azimuth.Angle.Sin, level * azimuth.Angle.Cos, altitude.Angle.Sin);
    }

    /// <summary>
    /// The direction of the Sun at an hour angle and declination, seen from a latitude: the celestial axes turned by the place's colatitude.
    /// Source: the spherical triangle of pole, zenith and Sun, as in any textbook of spherical astronomy (from memory).
    /// </summary>
    public static LocalDirection FromHourAngle(HourAngle hourAngle, SolarDeclination declination, Latitude place)
    {
        var axis = PolarFrame.At(place);

        // In the polar frame the Sun stands cos d from the axis, turned by the hour angle from the meridian towards the west.
        var west = declination.Angle.Cos * hourAngle.Angle.Sin;
        var meridian = declination.Angle.Cos * hourAngle.Angle.Cos;
        var pole = declination.Angle.Sin;
        var v = axis.ToLocal(west, meridian, pole);
        return new LocalDirection(v.X, v.Y, v.Z);
    }

    /// <summary>Makes a direction from any vector along east, north and up, in any unit: its length does not matter.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The vector has no length or is not finite.</exception>
    public static LocalDirection FromVector(double east, double north, double up)
    {
        var length = Math.Sqrt(east * east + north * north + up * up);
        return length > 0.0 && double.IsFinite(length)
            ? new LocalDirection(east / length, north / length, up / length)
            : throw new ArgumentOutOfRangeException(
                nameof(up),
                $"Direction ({east}, {north}, {up}) has no finite length; give the parts towards east, north and up, not all zero.");
    }

    internal Vector3 ToVector() => new(East, North, Up);
}
