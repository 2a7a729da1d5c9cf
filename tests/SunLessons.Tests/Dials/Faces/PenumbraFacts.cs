using SunLessons.Dials;
using SunLessons.Dials.Faces;

namespace SunLessons.Tests.Dials.Faces;

/// <summary>The blur of a shadow by the Sun's width, against discs of light points sampled in the world.</summary>
public class PenumbraFacts
{
    private const double SunDegrees = 959.63 / 3600.0;

    // Points of a disc of that radius about a direction, its rim well filled: a plain construction with two vectors square to it.
    private static IEnumerable<double[]> Disc(double[] centre)
    {
        double[] helper = Math.Abs(centre[2]) < 0.9 ? [0, 0, 1] : [1, 0, 0];
        var a = Unit(Cross(centre, helper));
        var b = Cross(centre, a);
        for (var ring = 1; ring <= 40; ring++)
        {
            var r = Math.Tan(SunDegrees * Math.PI / 180 * ring / 40);
            for (var k = 0; k < 720; k++)
            {
                var (sin, cos) = Math.SinCos(k * Math.PI / 360);
                yield return Unit([.. centre.Select((x, i) => x + r * (cos * a[i] + sin * b[i]))]);
            }
        }
    }

    // A point of a level plate beside a straight style sees a point of the Sun if that lies on one side of the plane through style and point.
    // At the limits the share seen passes to none and to all.
    [Theory]
    [InlineData(42.24, 35.0, 23.4)]
    [InlineData(42.24, -50.0, -10.0)]
    [InlineData(-45.87, 20.0, 5.0)]
    [InlineData(69.65, 80.0, 20.0)]
    public void The_limits_of_a_styles_blur_are_where_none_and_all_of_the_disc_is_seen(double latitude, double hour, double declination)
    {
        var sun = SolidFace.Sun(latitude, declination, hour);
        var blur = BlurredEdge.Of(
            new FaceDial(Face.Horizontal, Latitude.FromDegrees(latitude)), DialStance.True, LocalDirection.FromVector(sun[0], sun[1], sun[2]), Angle.FromDegrees(SunDegrees))!.Value;
        var disc = Disc(sun).ToList();
        var style = latitude > 0 ? SolidFace.Sun(latitude, 90, 0) : [.. SolidFace.Sun(latitude, 90, 0).Select(x => -x)];

        double Seen(double hours)
        {
            // A point on the line of that reading: the handbooks' tangent form, from the noon line clockwise in the north.
            var h = (hours - 12) * Math.PI / 12;
            var angle = Math.Atan2(Math.Abs(Math.Sin(latitude * Math.PI / 180)) * Math.Sin(h), Math.Cos(h));
            double[] point = latitude > 0 ? [Math.Sin(angle), Math.Cos(angle), 0] : [Math.Sin(angle), -Math.Cos(angle), 0];
            var plane = Cross(style, point);
            return disc.Count(p => plane[0] * p[0] + plane[1] * p[1] + plane[2] * p[2] > 0) / (double)disc.Count;
        }

        // The rings stand a fortieth of the radius apart: a hundredth of the width inside the limit some of the rim is parted off, outside it none.
        var width = (blur.Later.Hours - blur.Earlier.Hours) * 0.01;
        var (outside, inside) = (Seen(blur.Earlier.Hours - width), Seen(blur.Earlier.Hours + width));
        Assert.True(outside is 0.0 or 1.0 && inside is > 0.0 and < 1.0, $"{outside} {inside}");
        var (beyond, within) = (Seen(blur.Later.Hours + width), Seen(blur.Later.Hours - width));
        Assert.True(beyond == 1.0 - outside && within is > 0.0 and < 1.0, $"{beyond} {within}");
        Assert.Equal(0.5, Seen(12 + hour / 15), 0.01);
    }

    // Common practice, no source: the shadow of a sound dial is blurred over the Sun's own width, 0.533 degrees or 2.13 minutes at an equinox, and over 1/cos d of that else.
    [Fact]
    public void A_sound_dials_blur_is_the_suns_width_over_the_cosine_of_its_declination_on_every_face()
    {
        var vigo = Latitude.FromDegrees(42.24);
        foreach (var face in new[] { Face.Horizontal, Face.VerticalSouth, Face.FromDegrees(60, 30), Face.Polar(vigo), Face.EquatorialUpper(vigo) })
        {
            foreach (var declination in new[] { 0.5, 12.0, 23.4 })
            {
                var sun = LocalDirection.FromHourAngle(HourAngle.FromDegrees(20), SolarDeclination.FromDegrees(declination), vigo);
                if (BlurredEdge.Of(new FaceDial(face, vigo), DialStance.True, sun, Angle.FromDegrees(SunDegrees)) is { } blur)
                {
                    Assert.Equal(8.0 * Math.Asin(Math.Sin(SunDegrees * Math.PI / 180) / Math.Cos(declination * Math.PI / 180)) * 180 / Math.PI, blur.WidthMinutes, 1e-9);
                    Assert.InRange(12 + 20 / 15.0, blur.Earlier.Hours, blur.Later.Hours);
                }
                else
                {
                    // The upper equatorial face is grazed by a Sun half a degree north: part of its disc stands behind the plate.
                    Assert.True(face == Face.EquatorialUpper(vigo) && declination == 0.5);
                }
            }
        }

        Assert.Equal(2.13, 8.0 * SunDegrees, 0.005);
    }

    [Fact]
    public void In_the_dark_and_along_the_style_there_is_no_edge()
    {
        var vigo = Latitude.FromDegrees(42.24);
        var dial = new FaceDial(Face.Horizontal, vigo);
        var s = Angle.FromDegrees(SunDegrees);
        Assert.Null(BlurredEdge.Of(dial, DialStance.True, LocalDirection.FromHourAngle(HourAngle.FromDegrees(170), SolarDeclination.FromDegrees(0), vigo), s));
        Assert.Null(BlurredEdge.Of(dial, DialStance.True, LocalDirection.FromAzimuthAltitude(Azimuth.FromDegrees(0), Altitude.FromDegrees(42.24)), s));
    }

    // Rays from the disc's rim through the nodus, cut with the plate one height below it: the smear's own extent.
    [Theory]
    [InlineData(0.0, 0.0, 40.0)]
    [InlineData(90.0, -32.5, -20.0)]
    [InlineData(60.0, 30.0, 10.0)]
    public void The_smear_of_a_nodus_is_the_ellipse_that_rays_from_the_rim_draw(double inclination, double declination, double hour)
    {
        var vigo = Latitude.FromDegrees(42.24);
        var layout = FaceLayout.Of(Face.FromDegrees(inclination, declination), vigo);
        var sun = SolidFace.Sun(42.24, 10, hour);
        var solid = new SolidFace(42.24, inclination, declination);
        var spots = Disc(sun).Select(p => solid.Shadow(p)!.Value).ToList();
        var (right, up) = solid.Shadow(sun)!.Value;
        var far = Math.Sqrt(right * right + up * up);
        double Extent(double x, double y) => spots.Max(p => x * p.Right + y * p.Up) - spots.Min(p => x * p.Right + y * p.Up);
        var smear = BlurredSpot.Of(layout, LocalDirection.FromVector(sun[0], sun[1], sun[2]), Angle.FromDegrees(SunDegrees))!.Value;

        // The rim is sampled every half degree: its widest point is met within 1e-5 of the width.
        Assert.Equal(1.0, Extent(right / far, up / far) / smear.AlongNodusHeights, 1e-4);
        Assert.Equal(1.0, Extent(-up / far, right / far) / smear.AcrossNodusHeights, 1e-4);
    }

    // Common practice, no source: at a metre from the edge a blur of 9.3 mm, the Sun's width of 1/107. Square before the plate the smear is round.
    [Fact]
    public void Square_before_the_plate_the_smear_is_a_hundredth_and_seventh_of_the_distance()
    {
        var smear = BlurredSpot.Of(
            FaceLayout.Of(Face.Horizontal, Latitude.FromDegrees(10)), LocalDirection.FromAzimuthAltitude(Azimuth.FromDegrees(180), Altitude.FromDegrees(90)), Angle.FromDegrees(SunDegrees))!.Value;
        Assert.Equal(9.3, 1000.0 * smear.AcrossNodusHeights, 0.01);
        Assert.Equal(smear.AcrossNodusHeights, smear.AlongNodusHeights, 1e-12);
    }

    private static double[] Unit(double[] v)
    {
        var length = Math.Sqrt(v.Sum(x => x * x));
        return [.. v.Select(x => x / length)];
    }

    private static double[] Cross(double[] a, double[] b) =>
        [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
}
