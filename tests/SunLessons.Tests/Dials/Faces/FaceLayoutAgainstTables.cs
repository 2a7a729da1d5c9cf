using SunLessons.Dials;
using SunLessons.Dials.Faces;

namespace SunLessons.Tests.Dials.Faces;

public class FaceLayoutAgainstTables
{
    [Fact]
    public void Style_substyle_difference_of_longitude_and_meridian_line_agree_on_60_random_planes()
    {
        var worst = 0.0;
        var rows = 0;
        foreach (var row in AuthorityFile.Rows("gnomonics", "plane_grid.csv"))
        {
            var n = row.Select(AuthorityFile.Number).ToArray();

            // The table reckons from south towards EAST; ours is west positive.
            var layout = FaceLayout.Of(Face.FromDegrees(n[2], -n[1]), Latitude.FromDegrees(n[0]));
            var substyle = Assert.IsType<Substyle.Stands>(layout.Substyle);
            var noon = Assert.IsType<FaceHourLine.FromCentre>(layout.NoonLine).Clockwise;
            Compare(layout.StyleHeight.Degrees, n[3]);

            // The table gives the unsigned angle between lines: half turns and signs fall out.
            var turn = Math.Abs((substyle.Clockwise - noon).AroundZero().Degrees);
            Compare(Math.Min(turn, 180 - turn), n[4]);
            Compare(substyle.DifferenceOfLongitude.Degrees, -n[5]);

            // How the noon line lies: over the horizon, and from the plate's level line.
            Compare(Math.Asin(Math.Abs(noon.Cos) * layout.Face.Inclination.Angle.Sin) * 180 / Math.PI, n[6]);
            Compare(Math.Acos(Math.Abs(noon.Sin)) * 180 / Math.PI, n[7]);
            rows++;
        }

        Assert.Equal(60, rows);

        // 6e-10 degrees: the table prints nine decimals, so it is off by up to 5e-10; acos near zero loses a little more.
        Assert.True(worst <= 6e-10, $"worst {worst} degrees");

        void Compare(double got, double printed) => worst = Math.Max(worst, Math.Abs(got - printed));
    }

    [Fact]
    public void Shadows_of_the_nodus_agree_with_300_ray_traced_ones()
    {
        double worst = 0.0, worstByHourAngle = 0.0;
        var rows = 0;
        foreach (var row in AuthorityFile.Rows("gnomonics", "shadow_points.csv"))
        {
            var n = row.Select(AuthorityFile.Number).ToArray();
            var layout = FaceLayout.Of(Face.FromDegrees(n[2], -n[1]), Latitude.FromDegrees(n[0]));
            var direct = Assert.IsType<NodusShadow.At>(
                layout.ShadowOfNodus(LocalDirection.FromAzimuthAltitude(Azimuth.FromDegrees(n[5]), Altitude.FromDegrees(n[6]))));
            var sky = Assert.IsType<NodusShadow.At>(layout.ShadowOfNodus(HourAngle.FromDegrees(n[3]), SolarDeclination.FromDegrees(n[4])));
            var printed = new FacePoint(n[7], n[8]);

            // As an angle seen from the nodus: a grazing Sun throws the shadow far, and its distance grows with the square.
            var reach = 1 + n[7] * n[7] + n[8] * n[8];
            worst = Math.Max(worst, direct.Point.DistanceTo(printed) / reach);
            worstByHourAngle = Math.Max(worstByHourAngle, sky.Point.DistanceTo(printed) / reach);
            rows++;
        }

        Assert.Equal(300, rows);

        // 2e-9 radians is 1.1e-7 degrees: azimuth and altitude of the Sun are printed to 1e-7 degrees, half of that off in each.
        Assert.True(worst <= 2e-9, $"worst {worst} radians");

        // 1e-9 radians: hour angle and declination are exact in the table; its shadows are printed to 1e-9 heights.
        Assert.True(worstByHourAngle <= 1e-9, $"worst {worstByHourAngle} radians");
    }

    [Fact]
    public void A_level_face_has_the_lines_of_the_level_dial()
    {
        var worst = 0.0;
        foreach (var f in new[] { 89.0, 42.24, 1.29, -1.29, -45.87, -89.0 })
        {
            var layout = FaceLayout.Of(Face.Horizontal, Latitude.FromDegrees(f));
            for (var h = 0.0; h < 24; h += 0.5)
            {
                var flat = HourLines.At(Latitude.FromDegrees(f), DialTime.FromHours(h)).Clockwise;
                var line = Assert.IsType<FaceHourLine.FromCentre>(layout.LineFor(DialTime.FromHours(h)));

                // The level dial counts from its noon line, which runs south on a southern one.
                var fromNoon = f < 0 ? line.Clockwise + Angle.FromDegrees(180) : line.Clockwise;
                worst = Math.Max(worst, Math.Abs((fromNoon - flat).AroundZero().Degrees));
            }
        }

        Assert.True(worst <= 1e-11, $"worst {worst} degrees"); // A few roundings of numbers near 180.
    }
}
