namespace SunLessons.Dials;

/// <summary>
/// The axes in which the Sun turns evenly, laid into axes east-north-up: the pole (the axis of the sky), the meridian (where the equator crosses it,
/// above the horizon) and the west. An hour angle is a turn about the pole from the meridian towards the west.
/// The same three axes serve the sky at the place's latitude and a scale at the latitude it was designed for.
/// </summary>
internal readonly record struct PolarFrame(Vector3 Pole, Vector3 Meridian, Vector3 West)
{
    public static PolarFrame At(Latitude latitude)
    {
        var (sin, cos) = Math.SinCos(latitude.Radians);
        return new PolarFrame(new Vector3(0.0, cos, sin), new Vector3(0.0, -sin, cos), new Vector3(-1.0, 0.0, 0.0));
    }

    public Vector3 ToLocal(double west, double meridian, double pole) => new(
        west * West.X + meridian * Meridian.X + pole * Pole.X,
        west * West.Y + meridian * Meridian.Y + pole * Pole.Y,
        west * West.Z + meridian * Meridian.Z + pole * Pole.Z);

    /// <summary>The hour angle, radians, of the half-plane that is bounded by the axis and holds the vector; meaningless along the axis itself.</summary>
    public double HourAngleOf(Vector3 v) => Math.Atan2(v.Dot(West), v.Dot(Meridian));
}
