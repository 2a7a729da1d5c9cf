using SunLessons.Dials;

namespace SunLessons.Tests.Dials;

public class ForwardModelAgainstRayTracing
{
    [Fact]
    public void The_shadow_of_a_style_through_the_point_runs_through_its_traced_shadow_on_300_planes()
    {
        var worst = 0.0;
        var rows = 0;
        foreach (var row in AuthorityFile.Rows("gnomonics", "shadow_points.csv"))
        {
            var n = row.Select(AuthorityFile.Number).ToArray();
            double facing = n[1], tilt = n[2];

            // x runs level, y up the slope: the plate's east and north when it is twisted by minus the facing and climbs by the tilt.
            var stance = DialStance.FromDegrees(-facing, 0, tilt);
            var sun = LocalDirection.FromAzimuthAltitude(Azimuth.FromDegrees(n[5]), Altitude.FromDegrees(n[6]));
            foreach (var style in new[] { 50.0, -35.0 })
            {
                // The point stands at unit height over the foot; the style's root lies where its line meets the plate.
                var rootY = -1.0 / Math.Tan(style * Math.PI / 180.0);
                var expected = style > 0
                    ? Math.Atan2(n[7], n[8] - rootY)
                    : Math.Atan2(-n[7], -(n[8] - rootY));
                var reading = ForwardModel.Read(FlatDial.For(Latitude.FromDegrees(style)), stance, sun);
                var shows = Assert.IsType<DialReading.Shows>(reading);
                worst = Math.Max(worst, Math.Abs(Math.IEEERemainder(shows.ShadowClockwise.Degrees - expected * 180.0 / Math.PI, 360.0)));
            }

            rows++;
        }

        Assert.Equal(300, rows);

        // 5e-6 degrees: Sun angles are printed to 1e-7 degrees, and a Sun that grazes the plate (sine of the angle down to 0.05) multiplies that by up to 20 and more.
        Assert.True(worst <= 5e-6, $"worst {worst} degrees");
    }

    [Fact]
    public void Readings_of_a_solid_dial_in_the_world_agree_for_thousands_of_crooked_dials()
    {
        var random = new Random(20260321);
        var worst = 0.0;
        int shown = 0, dark = 0;
        for (var i = 0; i < 4000; i++)
        {
            double Between(double low, double high) => low + (high - low) * random.NextDouble();
            var south = random.Next(2) == 0;
            var scale = (south ? -1 : 1) * Between(3, 80);
            var style = (south ? -1 : 1) * Between(3, 80);
            double twist = Between(-180, 180), east = Between(-50, 50), north = Between(-50, 50);
            double place = Between(-85, 85), declination = Between(-23.4, 23.4), hour = Between(-179, 179);

            var traced = new RayTracedDial(scale, style, twist, east, north).Hours(RayTracedDial.Sun(place, declination, hour));
            var reading = ForwardModel.Read(
                new FlatDial(Latitude.FromDegrees(scale), Latitude.FromDegrees(style)),
                DialStance.FromDegrees(twist, east, north),
                Latitude.FromDegrees(place),
                HourAngle.FromDegrees(hour),
                SolarDeclination.FromDegrees(declination));
            if (traced is null)
            {
                Assert.IsType<DialReading.Nothing>(reading);
                dark++;
                continue;
            }

            var shows = Assert.IsType<DialReading.Shows>(reading);
            worst = Math.Max(worst, Math.Abs(Math.IEEERemainder(shows.Time.Hours - traced.Value, 24.0)) * 60.0);
            shown++;
        }

        Assert.True(shown > 1000 && dark > 1000, $"{shown} shown, {dark} dark");

        // 1e-8 minutes: rounding of doubles, magnified some thousand times where hour lines of a 3 degree scale crowd.
        Assert.True(worst <= 1e-8, $"worst {worst} minutes");
    }
}
