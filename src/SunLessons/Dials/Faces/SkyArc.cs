namespace SunLessons.Dials.Faces;

/// <summary>
/// The part of a day's circle of the Sun that lies before a plane: all of it, nothing, or an arc of hour angles about a middle. The plane is given by the
/// heights over it of the three axes of the sky.
/// </summary>
internal readonly record struct SkyArc(double Middle, double Half)
{
    // A circle whose every point stands within this sine of the plane is taken as lying in it, and lights nothing: rounding only.
    private const double Grazing = 1e-12;

    public bool IsNone => Half <= 0.0;

    public bool IsAll => double.IsPositiveInfinity(Half);

    /// <summary>The arc before the plane whose normal is the third axis along which the sky is given.</summary>
    public static SkyArc Before(PolarFrame sky, SolarDeclination declination)
    {
        // Height over the plane: a cos H + b sin H + c.
        var a = sky.Meridian.Z * declination.Angle.Cos;
        var b = sky.West.Z * declination.Angle.Cos;
        var c = sky.Pole.Z * declination.Angle.Sin;
        var size = Math.Sqrt(a * a + b * b);
        if (c >= size || size < Grazing)
        {
            return new SkyArc(0.0, c > Grazing ? double.PositiveInfinity : 0.0);
        }

        return c <= -size ? default : new SkyArc(Math.Atan2(b, a), Math.Acos(-c / size));
    }

    /// <summary>The arc above the horizon of a latitude.</summary>
    public static SkyArc AboveHorizon(Latitude latitude, SolarDeclination declination) => Before(PolarFrame.At(latitude), declination);

    public bool Holds(double hourAngle) => !IsNone && (IsAll || Math.Abs(Math.IEEERemainder(hourAngle - Middle, 2.0 * Math.PI)) < Half);
}
