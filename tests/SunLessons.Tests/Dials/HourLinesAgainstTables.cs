using SunLessons.Dials;

namespace SunLessons.Tests.Dials;

public class HourLinesAgainstTables
{
    [Fact]
    public void Lines_agree_with_tables_printed_in_1652_and_1877()
    {
        var rows = 0;
        foreach (var row in AuthorityFile.Rows("gnomonics", "printed_horizontal.csv"))
        {
            var latitude = Latitude.FromDegrees(AuthorityFile.Number(row[1]) + AuthorityFile.Number(row[2]) / 60.0);
            var printed = AuthorityFile.Number(row[4]) + AuthorityFile.Number(row[5]) / 60.0;
            var line = HourLines.At(latitude, DialTime.FromHours(12.0 + AuthorityFile.Number(row[3])));

            // One arcminute: the books print whole arcminutes, reckoned with logarithms of five to six figures.
            Assert.True(Math.Abs(line.Clockwise.Degrees - printed) * 60.0 <= 1.0, $"{string.Join(' ', row)}: {line.Clockwise}");
            rows++;
        }

        Assert.Equal(10, rows);
    }

    [Fact]
    public void Lines_agree_with_the_closed_form_in_both_hemispheres_before_and_after_noon()
    {
        var worst = 0.0;
        var compared = 0;
        foreach (var row in AuthorityFile.Rows("gnomonics", "horizontal_hour_angles.csv"))
        {
            var latitude = AuthorityFile.Number(row[0]);
            for (var k = 1; k <= 12; k++)
            {
                var printed = AuthorityFile.Number(row[k]);
                foreach (var (sign, towards) in new[] { (1.0, 1.0), (1.0, -1.0), (-1.0, 1.0), (-1.0, -1.0) })
                {
                    // Northern numbers run clockwise, southern ones anticlockwise.
                    var line = HourLines.At(Latitude.FromDegrees(sign * latitude), DialTime.FromHours(12.0 + towards * k * 0.5));
                    worst = Math.Max(worst, Math.Abs(line.Clockwise.Degrees - sign * towards * printed));
                    compared++;
                }
            }
        }

        Assert.Equal(16 * 12 * 4, compared);
        Assert.True(worst <= 6e-10, $"worst {worst} degrees"); // The table prints nine decimals, so it is off by up to 5e-10.
    }

    [Theory]
    [InlineData(42.24)]
    [InlineData(-45.87)]
    [InlineData(-1.29)]
    [InlineData(69.65)]
    public void Lines_run_through_all_24_hours_and_six_and_eighteen_are_one_straight_line(double latitude)
    {
        var place = Latitude.FromDegrees(latitude);
        for (var h = 0; h < 24; h++)
        {
            var hourAngle = (h - 12) * Math.PI / 12.0;
            var expected = Math.Atan2(Math.Sin(place.Radians) * Math.Sin(hourAngle), Math.Cos(hourAngle)) * 180.0 / Math.PI;
            var got = HourLines.At(place, DialTime.FromHours(h)).Clockwise.Degrees;

            // 1e-11 degrees: a few roundings of numbers near 180.
            Assert.True(Math.Abs(Math.IEEERemainder(got - expected, 360.0)) <= 1e-11, $"{h} h: {got} against {expected}");
        }

        var six = HourLines.At(place, DialTime.FromHours(6)).Clockwise.Degrees;
        var eighteen = HourLines.At(place, DialTime.FromHours(18)).Clockwise.Degrees;
        Assert.Equal(180.0, Math.Abs(six - eighteen), 9);
    }

    [Fact]
    public void Southern_numbers_run_anticlockwise()
    {
        Assert.True(HourLines.At(Latitude.FromDegrees(-45.87), DialTime.FromHours(15)).Clockwise.Degrees < 0.0);
        Assert.True(HourLines.At(Latitude.FromDegrees(42.24), DialTime.FromHours(15)).Clockwise.Degrees > 0.0);
    }

    [Fact]
    public void The_equator_and_a_step_of_nothing_are_refused_in_one_sentence()
    {
        var equator = Assert.Throws<ArgumentOutOfRangeException>(() => HourLines.At(Latitude.FromDegrees(0), DialTime.FromHours(15)));
        Assert.StartsWith(
            "A level dial for latitude 0 degrees has no hour lines; give a latitude from -90 to +90 degrees other than 0.", equator.Message);
        var step = Assert.Throws<ArgumentOutOfRangeException>(
            () => HourLines.Between(Latitude.FromDegrees(50), DialTime.FromHours(6), DialTime.FromHours(18), 0));
        Assert.StartsWith("Step 0 minutes is not above 0; give 1 to 60 minutes, such as 15.", step.Message);
    }

    [Fact]
    public void Lines_between_two_readings_take_in_both_ends()
    {
        var lines = HourLines.Between(Latitude.FromDegrees(42.24), DialTime.FromHours(6), DialTime.FromHours(18), 30);
        Assert.Equal(25, lines.Count);
        Assert.Equal(-90.0, lines[0].Clockwise.Degrees, 9);
        Assert.Equal(90.0, lines[^1].Clockwise.Degrees, 9);
        Assert.Equal(33.9, lines[18].Clockwise.Degrees, 1); // 15:00 at Vigo, tan = sin 42.24 tan 45, by pocket calculator.
    }
}
