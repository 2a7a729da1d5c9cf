using SunLessons.Dials;
using SunLessons.Dials.Faces;

namespace SunLessons.Tests.Dials.Faces;

/// <summary>
/// The three-number law of small faults (see <see cref="SmallFaultLaw"/> for the level dial) on faces of every slope, and the derivative for a style out of
/// its place. The law stands in tests only.
/// </summary>
public class SmallFaultLawOnEveryFace
{
    [Fact]
    public void Twist_tilts_and_wrong_latitude_err_alike_on_every_face_that_is_lit()
    {
        const double Step = 0.01;
        var worst = 0.0;
        var compared = 0;
        foreach (var f in new[] { 69.65, 42.24, 27.72, -1.29, -12.46, -45.87, -54.80, 47.56 })
        {
            var place = Latitude.FromDegrees(f);
            foreach (var face in new[]
            {
                Face.VerticalSouth, Face.VerticalNorth, Face.VerticalEast, Face.VerticalWest, Face.FromDegrees(90, 37), Face.FromDegrees(30, -75),
                Face.FromDegrees(120, 20), Face.Polar(place), Face.EquatorialUpper(place), Face.EquatorialLower(place),
            })
            {
                for (var d = -23.4; d <= 23.41; d += 7.8)
                {
                    for (var h = -75.0; h <= 75; h += 15)
                    {
                        for (var fault = 0; fault < 4; fault++)
                        {
                            if (Exact(face, f, d, h, fault, +Step) is { } plus && Exact(face, f, d, h, fault, -Step) is { } minus)
                            {
                                worst = Math.Max(worst, Math.Abs((plus - minus) / (2 * Step) - Law(f, d, h, fault)));
                                compared++;
                            }
                        }
                    }
                }
            }
        }

        // 0.001 minutes per degree: third-order terms of a hundredth of a degree.
        Assert.True(worst <= 0.001 && compared > 8000, $"worst {worst} in {compared}");
    }

    [Fact]
    public void A_clock_slip_is_added_whole_and_is_the_same_observation_as_a_turn_about_the_axis()
    {
        var place = Latitude.FromDegrees(42.24);
        var dial = new FaceDial(Face.VerticalSouth, place);
        double At(DialStance stance, double slip) => FaceError.FastMinutes(
            dial, stance, place, HourAngle.FromDegrees(20), SolarDeclination.FromDegrees(10), slip)!.Value;
        Assert.Equal(3.5, At(DialStance.True, 3.5), 9);

        // Twist t sin f and roll t cos f together are a turn t about the axis: 4 minutes to the degree. The two do not commute: 0.01 at half a degree.
        const double Turn = 0.5;
        var turned = DialStance.FromDegrees(-Turn * place.Angle.Sin, -Turn * place.Angle.Cos);
        Assert.Equal(4 * Turn, At(turned, 0), 0.01);
    }

    [Theory]
    [InlineData("level", 0.0, 0.0, 42.24)]
    [InlineData("southern wall", 90.0, 0.0, 42.24)]
    [InlineData("declining wall", 90.0, -32.5, 51.5)]
    [InlineData("leaning", 25.0, 40.0, -37.0)]
    public void A_style_too_steep_has_the_derivative_of_the_handbooks_hour_line(string name, double inclination, double declination, double latitude)
    {
        // On any face with a centre tan(line from substyle) = sin(height) tan(h), h counted from the substyle's hour and height the style's over the plate.
        // The shadow's line itself is written out here in the substyle's own axes.
        var place = Latitude.FromDegrees(latitude);
        var face = Face.FromDegrees(inclination, declination);
        var layout = FaceLayout.Of(face, place);
        var s = Math.Abs(layout.StyleHeight.Radians);
        var h0 = Assert.IsType<Substyle.Stands>(layout.Substyle).DifferenceOfLongitude.Degrees;
        var pole = Math.Sign(layout.StyleHeight.Degrees);
        const double Step = 0.01;
        var worst = 0.0;
        var compared = 0;
        for (var h = -80.0; h <= 80; h += 8)
        {
            foreach (var d in new[] { -20.0, 0.0, 20.0 })
            {
                double? Exact(double by) => FaceError.FastMinutes(
                    new FaceDial(face, place) { StyleTooSteep = Angle.FromDegrees(by) }, DialStance.True, place, HourAngle.FromDegrees(h), SolarDeclination.FromDegrees(d));
                if (Exact(Step) is not { } plus || Exact(-Step) is not { } minus)
                {
                    continue;
                }

                var expected = (ByFrame(Step) - ByFrame(-Step)) / (2 * Step);
                worst = Math.Max(worst, Math.Abs((plus - minus) / (2 * Step) - expected));
                compared++;

                // Substyle along x, square to it y (where the Sun goes), z off the plate; line angle by cross product, hour by the handbooks' formula.
                double ByFrame(double by)
                {
                    double hour = (h - h0) * Math.PI / 180, dec = pole * d * Math.PI / 180, height = s + by * Math.PI / 180;
                    double equator = Math.Cos(dec) * Math.Cos(hour), along = Math.Sin(dec);
                    double x = along * Math.Cos(s) - equator * Math.Sin(s), z = along * Math.Sin(s) + equator * Math.Cos(s), y = Math.Cos(dec) * Math.Sin(hour);
                    var line = Math.Atan2(-y * Math.Sin(height), z * Math.Cos(height) - x * Math.Sin(height));
                    var read = Math.Atan2(-Math.Sin(line), Math.Sin(s) * Math.Cos(line));
                    return (read - hour) * 720 / Math.PI;
                }
            }
        }

        Assert.True(worst <= 0.001 && compared > 20, $"{name}: worst {worst} in {compared}"); // Minutes per degree, as for the other faults; rounding in fact.
    }

    private static double? Exact(Face face, double f, double d, double h, int fault, double degrees)
    {
        var stance = DialStance.FromDegrees(fault == 0 ? degrees : 0, fault == 1 ? degrees : 0, fault == 2 ? degrees : 0);
        var madeFor = Latitude.FromDegrees(f + (fault == 3 ? degrees : 0));
        return FaceError.FastMinutes(new FaceDial(face, madeFor), stance, Latitude.FromDegrees(f), HourAngle.FromDegrees(h), SolarDeclination.FromDegrees(d));
    }

    private static double Law(double f, double d, double h, int fault)
    {
        double Sin(double x) => Math.Sin(x * Math.PI / 180);
        double Cos(double x) => Math.Cos(x * Math.PI / 180);
        var tan = Sin(d) / Cos(d);
        return fault switch
        {
            0 => -4 * (Sin(f) - Cos(f) * Cos(h) * tan),
            1 => -4 * (Cos(f) + Sin(f) * Cos(h) * tan),
            _ => 4 * Sin(h) * tan, // The north edge raised does what a dial made for a more northern latitude does.
        };
    }
}
