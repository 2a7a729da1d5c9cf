using SunLessons.Dials;
using SunLessons.Dials.Faces;

namespace SunLessons.Tests.Dials.Faces;

public class AltitudeDialFacts
{
    [Fact]
    public void The_hour_comes_back_from_the_altitudes_of_the_standards_library()
    {
        double worst = 0.0, worstAltitude = 0.0;
        var rows = 0;
        foreach (var row in AuthorityFile.Rows("gnomonics", "shadow_points.csv"))
        {
            var n = row.Select(AuthorityFile.Number).ToArray();
            var hours = new AltitudeHours(Latitude.FromDegrees(n[0]));
            var declination = SolarDeclination.FromDegrees(n[4]);
            worstAltitude = Math.Max(
                worstAltitude, Math.Abs(hours.AltitudeAt(DialTime.FromHourAngle(HourAngle.FromDegrees(n[3])), declination).Degrees - n[6]));
            var twice = Assert.IsType<AltitudeReading.Twice>(hours.Read(Altitude.FromDegrees(n[6]), declination));
            var time = n[3] < 0 ? twice.Morning : twice.Afternoon;
            var off = Math.Abs(time.HourAngle.Degrees - n[3]);
            Assert.Equal(24.0, twice.Morning.Hours + twice.Afternoon.Hours, 9);

            // How fast the altitude climbs there.
            double At(double h) => hours.AltitudeAt(DialTime.FromHourAngle(HourAngle.FromDegrees(h)), declination).Degrees;
            worst = Math.Max(worst, off * Math.Abs(At(n[3] + 0.01) - At(n[3] - 0.01)) / 0.02);
            rows++;
        }

        Assert.Equal(300, rows);

        // 1e-7 degrees: altitudes are printed to that, so off by half of it; the hour is off by that over the slope, to the first order.
        Assert.True(worstAltitude <= 6e-8 && worst <= 1e-7, $"altitude {worstAltitude}, hour times slope {worst} degrees");
    }

    [Fact]
    public void Cylinder_and_ring_give_back_their_own_hours_and_say_when_they_cannot()
    {
        var place = Latitude.FromDegrees(-33.0);
        var cylinder = new CylinderDial(place);
        var ring = new RingDial(place);
        var shown = 0;
        foreach (var d in new[] { -23.44, -5.0, 0.0, 12.0, 23.44 })
        {
            var declination = SolarDeclination.FromDegrees(d);
            for (var h = 12.0; h < 24; h += 0.25)
            {
                var time = DialTime.FromHours(h);
                if (cylinder.DepthAt(time, declination) is not { } depth)
                {
                    Assert.Null(ring.SpotArcAt(time, declination));
                    continue;
                }

                // 1e-6 hours: at noon the altitude stands still and the inverse loses half the figures.
                Assert.Equal(h, Assert.IsType<AltitudeReading.Twice>(cylinder.Read(depth, declination)).Afternoon.Hours, 1e-6);
                Assert.Equal(h, Assert.IsType<AltitudeReading.Twice>(ring.Read(ring.SpotArcAt(time, declination)!.Value, declination)).Afternoon.Hours, 1e-6);
                shown++;
            }
        }

        Assert.True(shown > 100, $"{shown}");
        var tooHigh = Assert.IsType<AltitudeReading.Nothing>(cylinder.Hours.Read(Altitude.FromDegrees(60), SolarDeclination.FromDegrees(23.44)));
        Assert.Equal(NoReading.OffTheScale, tooHigh.Why);
        Assert.Equal(
            "Altitude 60.0 degrees is outside -80.44 to 33.56 degrees, between which the Sun stands on the date set; check date, latitude and how the dial hangs.",
            tooHigh.Sentence);
        Assert.Equal(
            "At a pole the Sun keeps its altitude all day, which tells no hours; use a dial that goes by direction.",
            Assert.IsType<AltitudeReading.Nothing>(new AltitudeHours(Latitude.FromDegrees(90)).Read(Altitude.FromDegrees(20), SolarDeclination.FromDegrees(20))).Sentence);
    }

    [Theory]
    [InlineData(9.0, 0.6)]
    [InlineData(11.75, 3.0)]
    public void A_tenth_of_a_degree_at_Vigo_in_June_is_worth_little_at_9_and_much_near_noon(double hours, double minutes)
    {
        var vigo = new AltitudeHours(Latitude.FromDegrees(42.24));
        var june = SolarDeclination.FromDegrees(23.44);
        double Read(double by) => Assert.IsType<AltitudeReading.Twice>(
            vigo.Read(Altitude.FromDegrees(vigo.AltitudeAt(DialTime.FromHours(hours), june).Degrees + by), june)).Morning.MinutesOfDay;
        Assert.Equal(minutes, (Read(0.1) - Read(-0.1)) / 2, 0.05); // The mean of either way, quoted to a tenth.
    }

    [Theory]
    [InlineData(20.0)]
    [InlineData(45.0)]
    [InlineData(70.0)]
    public void The_rings_spot_is_where_a_ray_through_the_hole_cuts_the_circle(double holeDegrees)
    {
        // The hole anywhere on the upper half of the Sun's side; circle of radius 1; the Sun to the right.
        double hx = Math.Cos(holeDegrees * Math.PI / 180), hy = Math.Sin(holeDegrees * Math.PI / 180);
        double Strikes(double altitude)
        {
            double dx = -Math.Cos(altitude * Math.PI / 180), dy = -Math.Sin(altitude * Math.PI / 180);
            var t = -2 * (hx * dx + hy * dy);
            return Math.Atan2(hy + t * dy, hx + t * dx) * 180 / Math.PI;
        }

        for (var altitude = 1.0; altitude < 60; altitude += 7)
        {
            var arc = RingDial.SpotArc(Altitude.FromDegrees(altitude))!.Value.Degrees;

            // Down the far side the angle at the centre grows anticlockwise.
            Assert.Equal(0.0, Math.IEEERemainder(Strikes(altitude) - Strikes(0) - arc, 360), 9);
        }
    }

    [Fact]
    public void A_leaning_cylinder_throws_the_shadow_that_its_solid_says()
    {
        foreach (var lean in new[] { -4.0, -1.0, 0.0, 2.0, 5.0 })
        {
            foreach (var altitude in new[] { 12.0, 40.0, 63.0 })
            {
                // Side view, the Sun to the right: the surface is a line through the origin leaning right by the lean; the gnomon stands square to it.
                double a = lean * Math.PI / 180, s = altitude * Math.PI / 180;
                double[] down = [-Math.Sin(a), -Math.Cos(a)], tip = [Math.Cos(a), -Math.Sin(a)];

                // tip - k (cos s, sin s) = depth * down, solved by Cramer's rule.
                var determinant = Math.Cos(s) * down[1] - Math.Sin(s) * down[0];
                var depth = (Math.Cos(s) * tip[1] - Math.Sin(s) * tip[0]) / determinant;
                Assert.Equal(depth, CylinderDial.Depth(Altitude.FromDegrees(altitude), Angle.FromDegrees(lean))!.Value, 9);
            }
        }
    }
}
