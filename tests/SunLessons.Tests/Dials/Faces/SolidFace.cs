namespace SunLessons.Tests.Dials.Faces;

/// <summary>
/// A dial on a plate of any slope as a solid thing in the world: three points of the plate and two of the style, carried about lines by Rodrigues' formula, and
/// rays cut with the plane through the three points. Shares no code with the library. Hours are found by looking for the hour line of the same solid,
/// standing as it was meant to, that runs through the shadow.
/// </summary>
internal sealed class SolidFace
{
    private readonly double[][] _plate;      // A corner, one to its right, one up from it.
    private readonly double[] _nodus;
    private readonly double[] _pole;         // From the nodus along the style, towards the north pole as designed.
    private readonly double[] _asMeantNodus;
    private readonly double[] _asMeantPole;
    private readonly double[][] _asMeantPlate;
    private readonly double _latitude;

    /// <summary>All in degrees: latitude made for, inclination 0 to 180, declination from south west positive, then twist, east up, north up.</summary>
    public SolidFace(
        double latitude, double inclination, double declination, double twist = 0, double eastUp = 0, double northUp = 0,
        double styleTooSteep = 0, double styleTooHigh = 0)
    {
        _latitude = latitude;

        // Hinge a plate on the ground: level first, right is east; tip it about its right-left line until it leans, then carry it round the plumb line.
        double[][] plate = [[0, 0, 0], [1, 0, 0], [0, 1, 0]];
        plate = [.. plate.Select(p => About([1, 0, 0], p, inclination))];
        plate = [.. plate.Select(p => About([0, 0, 1], p, -declination))];
        var normal = Cross(plate[1], plate[2]);
        double[] pole = [0, Cos(latitude), Sin(latitude)];
        _asMeantPlate = plate;
        _asMeantNodus = normal;
        _asMeantPole = pole;

        double[] nodus = normal;
        if (styleTooSteep != 0)
        {
            // Turn the style about the line through the centre that lies in the plate and square to the style.
            var high = Dot(pole, normal);
            double[] centre = [.. normal.Zip(pole, (n, p) => n - p / high)];
            var axis = Unit(Cross(pole, normal));
            var turned = About(axis, pole, Math.Sign(high) * styleTooSteep);
            double[] reach = [.. nodus.Zip(centre, (n, c) => n - c)];
            var moved = About(axis, reach, Math.Sign(high) * styleTooSteep);
            (pole, nodus) = (turned, [.. centre.Zip(moved, (c, m) => c + m)]);
        }

        nodus = styleTooHigh == 0 ? nodus : [.. nodus.Select(x => x * (1 + styleTooHigh))];

        // The whole solid as it stands: twist, then tip about its moved east, then roll about its moved north.
        double[] east = [1, 0, 0], north = [0, 1, 0];
        void Carry(double[] axis, double by)
        {
            plate = [.. plate.Select(p => About(axis, p, by))];
            nodus = About(axis, nodus, by);
            pole = About(axis, pole, by);
            east = About(axis, east, by);
            north = About(axis, north, by);
        }

        Carry([0, 0, 1], -twist);
        Carry([.. east], northUp);
        Carry([.. north], -eastUp);
        (_plate, _nodus, _pole) = (plate, nodus, pole);
    }

    public static double[] Sun(double place, double declination, double hourAngle) => RayTracedDial.Sun(place, declination, hourAngle);

    /// <summary>Where the shadow of a point of the style falls, right and up on the plate, or null when the face is dark.</summary>
    public (double Right, double Up)? Shadow(double[] sun, double alongStyle = 0) =>
        sun[2] <= 0 || Dot(sun, Normal(_plate)) <= 0 ? null : Cast(_plate, [.. _nodus.Zip(_pole, (n, p) => n + alongStyle * p)], sun);

    /// <summary>The reading in hours, or null when the face is dark.</summary>
    public double? Hours(double[] sun)
    {
        if (Shadow(sun) is not { } spot)
        {
            return null;
        }

        // Signed distance of the spot from the line of hour h of the solid as meant; the line is where the plane of style and Sun cuts the plate.
        double Off(double h)
        {
            double[] light = Sun(_latitude, 0, 15 * (h - 12));

            // The hour plane holds the style and the Sun; it cuts the plate in the line a x + b y + c = 0.
            double[] normal = Cross(_asMeantPole, light);
            double a = Dot(normal, _asMeantPlate[1]), b = Dot(normal, _asMeantPlate[2]), c = -Dot(normal, _asMeantNodus);
            return (a * spot.Right + b * spot.Up + c) / Math.Sqrt(1 + spot.Right * spot.Right + spot.Up * spot.Up);
        }

        // The line runs both ways: the spot belongs to the hour whose Sun stands on the other side of the style.
        bool Opposite(double h)
        {
            double[] light = Sun(_latitude, 0, 15 * (h - 12));
            double[] toStyle =
            [
                .. _asMeantNodus.Select((n, k) => n - spot.Right * _asMeantPlate[1][k] - spot.Up * _asMeantPlate[2][k]),
            ];
            return Dot(toStyle, light) > 0;
        }

        for (var h = 0.0; h < 24; h += 0.5)
        {
            double low = h, high = h + 0.5;
            var atLow = Off(low);
            if ((atLow > 0) == (Off(high) > 0) || !Opposite(h + 0.25))
            {
                continue;
            }

            for (var i = 0; i < 60; i++)
            {
                var middle = (low + high) / 2;
                (low, high) = (Off(middle) > 0) == (atLow > 0) ? (middle, high) : (low, middle);
            }

            return low;
        }

        throw new InvalidOperationException("No hour line runs through the shadow.");
    }

    private static (double Right, double Up) Cast(double[][] plate, double[] point, double[] sun)
    {
        var normal = Normal(plate);
        var k = Dot(point, normal) / Dot(sun, normal);
        double[] hit = [.. point.Zip(sun, (p, s) => p - k * s)];
        return (Dot(hit, plate[1]), Dot(hit, plate[2]));
    }

    private static double[] Normal(double[][] plate) => Cross(plate[1], plate[2]);

    private static double[] About(double[] axis, double[] v, double degrees)
    {
        var across = Cross(axis, v);
        var along = Dot(axis, v) * (1 - Cos(degrees));
        return [.. v.Select((x, k) => x * Cos(degrees) + across[k] * Sin(degrees) + axis[k] * along)];
    }

    private static double[] Unit(double[] v) => [.. v.Select(x => x / Math.Sqrt(Dot(v, v)))];

    private static double[] Cross(double[] a, double[] b) =>
        [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];

    private static double Dot(double[] a, double[] b) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];

    private static double Sin(double degrees) => Math.Sin(degrees * Math.PI / 180.0);

    private static double Cos(double degrees) => Math.Cos(degrees * Math.PI / 180.0);
}
