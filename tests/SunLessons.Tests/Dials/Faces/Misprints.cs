using SunLessons.Dials.Faces;

namespace SunLessons.Tests.Dials.Faces;

/// <summary>
/// Where a printed example is off by more than its rounding: by how much, and what can be said of the cause. The causes are inferred from the numbers; no
/// book says them.
/// </summary>
public class Misprints
{
    [Fact]
    public void Stirrup_chapter_XIX_prints_17_30_for_the_16_20_of_chapter_XVIII()
    {
        // Declines 35 degrees to the east, leans 25. The same quantity of the same plane, twice: one of the two is a slip of pen or type.
        var exact = DifferenceOfLongitude(52.5, 25, 35);
        Assert.Equal(16 + 20 / 60.0, exact, 1.0 / 60);
        Assert.InRange((17.5 - exact) * 60, 68, 70); // Arcminutes; no rounding explains more than a degree.
    }

    [Fact]
    public void Stirrup_chapter_XVI_prints_43_38_once_and_43_28_twice()
    {
        var exact = DifferenceOfLongitude(52.5, 30, 90);
        Assert.Equal(43 + 28 / 60.0, exact, 1.0 / 60); // The value printed twice, to its rounding; 43 38 has one figure wrong.
        Assert.InRange((43 + 38 / 60.0 - exact) * 60, 8.5, 9.5);
    }

    [Fact]
    public void Sturmys_6_in_the_morning_prints_32_from_49_for_32_49()
    {
        var layout = FaceLayout.Of(Face.FromDegrees(90, -32.5), Latitude.FromDegrees(51.5));
        var line = Assert.IsType<FaceHourLine.FromCentre>(layout.LineFor(DialTime.FromHours(6)));
        var substyle = Assert.IsType<Substyle.Stands>(layout.Substyle);
        Assert.Equal(32 + 49 / 60.0, Math.Abs((line.Clockwise - substyle.Clockwise).AroundZero().Degrees), 1.0 / 60); // To its rounding.
    }

    [Fact]
    public void Stirrups_far_decliner_is_off_by_2_8_because_a_sine_near_90_degrees_magnifies_half_a_minute()
    {
        // Declines 80 degrees to the east, upright: printed 82 05, exact 82 02.2.
        var layout = FaceLayout.Of(Face.FromDegrees(90, -80), Latitude.FromDegrees(52.5));
        var substyle = Assert.IsType<Substyle.Stands>(layout.Substyle);
        var exact = -substyle.DifferenceOfLongitude.Degrees;
        Assert.Equal(2.8, (82 + 5 / 60.0 - exact) * 60, 0.05);

        // sin(difference of longitude) = sin(substyle) / cos(latitude): with the substyle 37 04.6 rounded to whole minutes, up or down, it comes out
        // at 82 05.7 or 81 56.2. The print lies within what that way of reckoning can tell.
        double By(double substyleArcMinutes) => Math.Asin(Sin(37 + substyleArcMinutes / 60) / Cos(52.5)) * 180 / Math.PI;
        Assert.Equal(37 + 4.63 / 60, 180 - Math.Abs(substyle.Clockwise.Degrees), 0.01 / 60);
        Assert.InRange(82 + 5 / 60.0, By(4), By(5));
    }

    [Fact]
    public void Stirrups_substyle_8_35_is_off_by_6_because_a_cosine_near_1_magnifies_half_a_minute()
    {
        // Declines 35 to the east, leans 25: exact 8 28.8. cos(substyle) = cos(arc from the pole to the plate along the meridian) / cos(style height),
        // with 52 30 - 20 54 = 31 36 and 30 33 as printed, each rounded by up to half a minute.
        double By(double alongMeridian, double height) => Math.Acos(Cos(alongMeridian) / Cos(height)) * 180 / Math.PI;
        var layout = FaceLayout.Of(Face.FromDegrees(25, -35), Latitude.FromDegrees(52.5));
        var noon = Assert.IsType<FaceHourLine.FromCentre>(layout.NoonLine).Clockwise;
        var turn = Math.Abs((Assert.IsType<Substyle.Stands>(layout.Substyle).Clockwise - noon).AroundZero().Degrees);
        var exact = Math.Min(turn, 180 - turn);
        Assert.Equal(6.2, (8 + 35 / 60.0 - exact) * 60, 0.05);

        // The printed whole minutes give 8 30; half a minute in each moves that by 4 either way. The last minute is left to his logarithms.
        Assert.Equal(8.5, By(31.6, 30.55), 0.01);
        Assert.Equal(8 + 34 / 60.0, By(31.6 + 0.5 / 60, 30.55 - 0.5 / 60), 0.01);
    }

    [Fact]
    public void Stirrups_30_52_is_off_by_2_2_of_which_rounding_explains_less_than_one()
    {
        // Declines 60 to the east, leans 30: exact 30 49.8. cos(difference) = tan(32 20) / tan(52 30 - 16 06) from his whole minutes gives 30 50.6; one
        // unit in the fourth figure of a logarithm makes that 30 52.0.
        var exact = DifferenceOfLongitude(52.5, 30, 60);
        Assert.Equal(2.2, (30 + 52 / 60.0 - exact) * 60, 0.05);
        var reckoned = Tan(32 + 20 / 60.0) / Tan(52.5 - 16.1);
        Assert.Equal(50.65, (Math.Acos(reckoned) * 180 / Math.PI - 30) * 60, 0.01);
        Assert.Equal(52.0, (Math.Acos(reckoned * Math.Pow(10, -0.0001)) * 180 / Math.PI - 30) * 60, 0.05);
    }

    private static double DifferenceOfLongitude(double latitude, double inclination, double towardsEast) =>
        -Assert.IsType<Substyle.Stands>(FaceLayout.Of(Face.FromDegrees(inclination, -towardsEast), Latitude.FromDegrees(latitude)).Substyle).DifferenceOfLongitude.Degrees;

    private static double Sin(double degrees) => Math.Sin(degrees * Math.PI / 180);

    private static double Cos(double degrees) => Math.Cos(degrees * Math.PI / 180);

    private static double Tan(double degrees) => Math.Tan(degrees * Math.PI / 180);
}
