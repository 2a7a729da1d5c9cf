namespace SunLessons.Tests.Dials;

/// <summary>
/// A dial as a solid thing in the world, lit by a far Sun: points are turned about lines, a ray is cut with a plane. It shares no code with the library
/// and uses other steps on purpose: the turns are turns about edges that have moved already (Rodrigues), the Sun is carried round the pole from its noon place,
/// and the scale is a list of hour marks on the rim that was itself made by casting shadows.
/// </summary>
internal sealed class RayTracedDial
{
    private readonly double[] _root = [0, 0, 0];
    private readonly double[] _tip;
    private readonly double[] _northMark;
    private readonly double[] _eastMark;
    private readonly double _scaleDegrees;

    /// <summary>All in degrees: scale, style (signed latitudes), twist clockwise, east edge up, north edge up.</summary>
    public RayTracedDial(double scale, double style, double twist, double eastUp, double northUp)
    {
        _scaleDegrees = scale;

        // As made: level, root at the origin, north mark due north. The tip leans towards the pole that is up.
        double[] tip = style > 0 ? [0, Cos(style), Sin(style)] : [0, -Cos(style), Sin(-style)];
        double[] north = [0, 1, 0];
        double[] east = [1, 0, 0];

        // Twist first, then climb about the east edge where it now is, then roll about the noon line where it now is:
        // the same solid as roll, climb, twist about lines that stay.
        Turn([0, 0, 1], -twist, ref tip, ref north, ref east);
        Turn([.. east], northUp, ref tip, ref north, ref east);
        Turn([.. north], -eastUp, ref tip, ref north, ref east);
        (_tip, _northMark, _eastMark) = (tip, north, east);
    }

    /// <summary>The Sun: noon place in the meridian, then carried westwards round the pole.</summary>
    public static double[] Sun(double place, double declination, double hourAngle)
    {
        double[] noon = [0, -Sin(place - declination), Cos(place - declination)];
        return About([0, Cos(place), Sin(place)], noon, -hourAngle);
    }

    /// <summary>The reading in hours, or null when the face is dark.</summary>
    public double? Hours(double[] sun)
    {
        var angle = ShadowDegrees(sun);
        return sun[2] <= 0 || angle is null ? null : HourAtRim(angle.Value);
    }

    private double? ShadowDegrees(double[] sun)
    {
        var normal = Cross(_eastMark, _northMark);
        var facing = Dot(sun, normal);
        if (facing <= 0)
        {
            return null;
        }

        var k = (Dot(_tip, normal) - Dot(_root, normal)) / facing;
        double[] hit = [_tip[0] - k * sun[0], _tip[1] - k * sun[1], _tip[2] - k * sun[2]];
        return Math.Atan2(Dot(hit, _eastMark), Dot(hit, _northMark)) * 180.0 / Math.PI;
    }

    /// <summary>Halves the gap between two hours until the perfect dial's shadow, cast at the scale's own latitude, falls at the angle.</summary>
    private double HourAtRim(double angle)
    {
        var perfect = new RayTracedDial(_scaleDegrees, _scaleDegrees, 0, 0, 0);
        var polarSun = Math.Sign(_scaleDegrees) * (90 - Math.Abs(_scaleDegrees) / 2);
        double At(double h) => perfect.ShadowDegrees(Sun(_scaleDegrees, polarSun, 15 * (h - 12)))!.Value;
        double Off(double h) => Math.IEEERemainder(At(h) - angle, 360);

        for (var h = 0; h < 24; h++)
        {
            double low = h, high = h + 1;
            double atLow = Off(low), atHigh = Off(high);
            if (Math.Abs(atLow) > 120 || Math.Abs(atHigh) > 120 || (atLow > 0) == (atHigh > 0))
            {
                continue;
            }

            for (var i = 0; i < 60; i++)
            {
                var middle = (low + high) / 2;
                if ((Off(middle) > 0) == (atLow > 0))
                {
                    low = middle;
                }
                else
                {
                    high = middle;
                }
            }

            return low;
        }

        throw new InvalidOperationException($"No hour mark at {angle} degrees.");
    }

    private static void Turn(double[] axis, double degrees, ref double[] a, ref double[] b, ref double[] c)
    {
        a = About(axis, a, degrees);
        b = About(axis, b, degrees);
        c = About(axis, c, degrees);
    }

    /// <summary>Rodrigues' formula: v turned by the right-hand rule about a unit axis.</summary>
    private static double[] About(double[] axis, double[] v, double degrees)
    {
        var across = Cross(axis, v);
        var along = Dot(axis, v) * (1 - Cos(degrees));
        return
        [
            v[0] * Cos(degrees) + across[0] * Sin(degrees) + axis[0] * along,
            v[1] * Cos(degrees) + across[1] * Sin(degrees) + axis[1] * along,
            v[2] * Cos(degrees) + across[2] * Sin(degrees) + axis[2] * along,
        ];
    }

    private static double[] Cross(double[] a, double[] b) =>
        [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];

    private static double Dot(double[] a, double[] b) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];

    private static double Sin(double degrees) => Math.Sin(degrees * Math.PI / 180.0);

    private static double Cos(double degrees) => Math.Cos(degrees * Math.PI / 180.0);
}
