using SunLessons.Dials;
using SunLessons.Dials.Faces;

namespace SunLessons.Tests.Dials.Faces;

public class AnalemmaticFacts
{
    [Fact]
    public void Hour_points_date_line_and_foci_agree_with_the_closed_forms()
    {
        var worst = 0.0;
        var rows = 0;
        foreach (var row in AuthorityFile.Rows("gnomonics", "analemmatic_unit_a.csv"))
        {
            var n = row.Select(AuthorityFile.Number).ToArray();
            var dial = new AnalemmaticDial(Latitude.FromDegrees(n[0]));
            var point = dial.HourPoint(DialTime.FromHourAngle(HourAngle.FromDegrees(n[1])));
            foreach (var (got, printed) in new[]
            {
                (point.East, n[2]), (point.North, n[3]),
                (dial.DateOffsetNorth(SolarDeclination.FromDegrees(23.44)), n[4]), (dial.DateOffsetNorth(SolarDeclination.FromDegrees(-23.44)), n[5]),
                (dial.FocusDistance, n[6]),
            })
            {
                worst = Math.Max(worst, Math.Abs(got - printed));
            }

            rows++;
        }

        Assert.Equal(60, rows);
        Assert.True(worst <= 6e-10, $"worst {worst}"); // The table prints nine decimals.
    }

    [Fact]
    public void The_hour_comes_back_from_the_azimuths_of_the_standards_library()
    {
        double worst = 0.0;
        int once = 0, twice = 0;
        foreach (var row in AuthorityFile.Rows("gnomonics", "shadow_points.csv"))
        {
            var n = row.Select(AuthorityFile.Number).ToArray();
            var dial = new AnalemmaticDial(Latitude.FromDegrees(n[0]));
            var declination = SolarDeclination.FromDegrees(n[4]);
            var reading = dial.Read(declination, DialStance.True, LocalDirection.FromAzimuthAltitude(Azimuth.FromDegrees(n[5]), Altitude.FromDegrees(n[6])));
            var times = Assert.IsType<AnalemmaticReading.Shows>(reading).Times;
            var off = times.Min(time => Math.Abs((time.HourAngle.Angle - Angle.FromDegrees(n[3])).AroundZero().TimeMinutes));

            // How fast the Sun's azimuth turns there, degrees to the degree of hour angle, by a small step of the hour.
            double AzimuthAt(double h) => LocalDirection.FromHourAngle(HourAngle.FromDegrees(h), declination, dial.MadeFor).Azimuth.Degrees;
            var turn = Math.Abs(Math.IEEERemainder(AzimuthAt(n[3] + 0.01) - AzimuthAt(n[3] - 0.01), 360)) / 0.02;
            worst = Math.Max(worst, off * Math.Min(1, turn));
            (once, twice) = times.Count == 1 ? (once + 1, twice) : (once, twice + 1);
        }

        Assert.Equal(300, once + twice);
        Assert.True(once > 200 && twice > 10, $"{once} once, {twice} twice");

        // 1e-5 minutes of azimuth: it is printed to 1e-7 degrees, 4e-7 minutes; where it hardly turns, the shadow grazes the ellipse and that grows.
        Assert.True(worst <= 1e-5, $"worst {worst} minutes");
    }

    [Fact]
    public void It_tells_solar_time_in_both_hemispheres_the_tropics_and_at_a_pole()
    {
        var worst = 0.0;
        var shown = 0;
        foreach (var f in new[] { 90.0, 69.65, 42.24, 12.46, -1.29, -12.46, -54.8, -90.0 })
        {
            var dial = new AnalemmaticDial(Latitude.FromDegrees(f));
            for (var d = -23.4; d <= 23.41; d += 7.8)
            {
                for (var h = -175.0; h < 180; h += 10)
                {
                    if (dial.Read(DialStance.True, dial.MadeFor, HourAngle.FromDegrees(h), SolarDeclination.FromDegrees(d)) is AnalemmaticReading.Shows shows)
                    {
                        worst = Math.Max(worst, shows.Times.Min(time => Math.Abs((time.HourAngle.Angle - Angle.FromDegrees(h)).AroundZero().TimeMinutes)));
                        shown++;
                    }
                    else
                    {
                        Assert.True(LocalDirection.FromHourAngle(HourAngle.FromDegrees(h), SolarDeclination.FromDegrees(d), dial.MadeFor).Up <= 0);
                    }
                }
            }
        }

        // 1e-6 minutes: at Nairobi the ellipse is 45 times as long as wide and the shadow may graze it, where a square root halves the figures.
        Assert.True(worst <= 1e-6 && shown > 900, $"worst {worst} minutes in {shown}");
    }

    [Fact]
    public void On_the_equator_it_says_why_not()
    {
        var nothing = Assert.IsType<AnalemmaticReading.Nothing>(
            new AnalemmaticDial(Latitude.FromDegrees(0)).Read(DialStance.True, Latitude.FromDegrees(0), HourAngle.FromDegrees(30), SolarDeclination.FromDegrees(10)));
        Assert.Equal("The ellipse of an analemmatic dial for latitude 0 degrees is a straight line; choose another kind of dial there.", nothing.Sentence);
    }

    [Fact]
    public void A_gnomon_left_at_the_solstice_errs_by_what_a_drawn_shadow_says()
    {
        // Vigo, 10:00 solar time at an equinox, gnomon left at the June mark: the shadow from that mark, found with a search over drawn hour points.
        var place = Latitude.FromDegrees(42.24);
        var dial = new AnalemmaticDial(place);
        var sun = SolidFace.Sun(42.24, 0, -30);
        double toX = -sun[0], toY = -sun[1], footY = Math.Cos(42.24 * Math.PI / 180) * Math.Tan(23.44 * Math.PI / 180);
        double Across(double h)
        {
            double x = Math.Sin(h * Math.PI / 180), y = Math.Sin(42.24 * Math.PI / 180) * Math.Cos(h * Math.PI / 180) - footY;
            return x * toY - y * toX;
        }

        double low = -89, high = 0;
        Assert.True(Across(low) > 0 != Across(high) > 0);
        for (var i = 0; i < 60; i++)
        {
            var middle = (low + high) / 2;
            (low, high) = Across(middle) > 0 == Across(low) > 0 ? (middle, high) : (low, middle);
        }

        var shows = Assert.IsType<AnalemmaticReading.Shows>(dial.Read(
            SolarDeclination.FromDegrees(23.44), DialStance.True, LocalDirection.FromHourAngle(HourAngle.FromDegrees(-30), SolarDeclination.FromDegrees(0), place)));
        Assert.Equal(low, Assert.Single(shows.Times).HourAngle.Degrees, 9);
        Assert.True(Math.Abs(low + 30) > 5); // Degrees: the fault is worth more than 20 minutes, or the test would show nothing.
    }
}
