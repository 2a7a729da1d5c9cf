using System.Text.Json;
using SunLessons.Dials;
using SunLessons.Dials.Faces;

namespace SunLessons.Tests.Dials.Faces;

/// <summary>
/// The 77 angles of authorities/gnomonics/gnomonic_examples.json, printed between 1652 and 1877. Tolerances are the file's: 1 arcminute where the book
/// rounded to whole ones, more where <see cref="Misprints"/> shows what went wrong in the book.
/// </summary>
public class PrintedExamples
{
    private static readonly JsonElement Books = JsonDocument.Parse(File.ReadAllText(Checkout.Authority("gnomonics", "gnomonic_examples.json"))).RootElement;

    [Fact]
    public void All_77_printed_angles_agree()
    {
        var checkedAngles = 0;
        var off = new List<string>();

        foreach (var row in Books.GetProperty("horizontal_tables")[0].GetProperty("hour_line_angles").EnumerateObject())
        {
            Compare("level " + row.Name, row.Value, FromNoonLine(FaceLayout.Of(Face.Horizontal, At(52.5)), 12 + int.Parse(row.Name)), 1.0);
        }

        foreach (var row in Books.GetProperty("horizontal_tables")[1].GetProperty("rows").EnumerateArray())
        {
            Compare("level " + row.GetProperty("place"), row.GetProperty("angle"), FromNoonLine(FaceLayout.Of(Face.Horizontal, At(Printed(row.GetProperty("lat")))), 13), 1.0);
        }

        foreach (var wall in Books.GetProperty("vertical_declining").EnumerateArray())
        {
            // All walls look from the south towards the east.
            var layout = FaceLayout.Of(Face.FromDegrees(90, -Printed(wall.GetProperty("declination"))), At(Printed(wall.GetProperty("lat"))));
            var substyle = Assert.IsType<Substyle.Stands>(layout.Substyle);
            var tolerance = wall.GetProperty("tol_arcmin").GetDouble();

            // In the north the south pole stands over a southern wall, and the substyle hangs down from the centre.
            Assert.True(layout.StyleHeight.Degrees < 0);
            Maybe(wall, "style_height", -layout.StyleHeight.Degrees, tolerance);
            Maybe(wall, "substyle_distance", 180 - Math.Abs(substyle.Clockwise.Degrees), tolerance);
            Maybe(wall, "difference_of_longitude", -substyle.DifferenceOfLongitude.Degrees, tolerance);
            if (!wall.TryGetProperty("hour_table", out var table))
            {
                continue;
            }

            foreach (var row in table.EnumerateArray())
            {
                var hour = row[0].GetString()!;
                var time = DialTime.FromHours(hour == "12" ? 12 : int.Parse(hour[..^2]) + (hour.EndsWith("pm") ? 12 : 0));
                var fromSubstyle = (time.HourAngle.Angle - substyle.DifferenceOfLongitude.Angle).AroundZero();
                var line = Assert.IsType<FaceHourLine.FromCentre>(layout.LineFor(time));
                Compare(hour + " equinoctial", row[1], Math.Abs(fromSubstyle.Degrees), tolerance);
                Compare(hour + " plate", row[2], Math.Abs((line.Clockwise - substyle.Clockwise).AroundZero().Degrees), tolerance);
            }
        }

        foreach (var plane in Books.GetProperty("general_planes").EnumerateArray())
        {
            var face = Face.FromDegrees(Printed(plane.GetProperty("tilt_from_horizontal")), -Printed(plane.GetProperty("facing_S_towards_E")));
            var layout = FaceLayout.Of(face, At(Printed(plane.GetProperty("lat"))));
            var substyle = Assert.IsType<Substyle.Stands>(layout.Substyle);
            var noon = Assert.IsType<FaceHourLine.FromCentre>(layout.NoonLine).Clockwise;
            var turn = Math.Abs((substyle.Clockwise - noon).AroundZero().Degrees);
            var tolerance = plane.GetProperty("tol_arcmin").GetDouble();
            Maybe(plane, "style_height", Math.Abs(layout.StyleHeight.Degrees), tolerance);
            Maybe(plane, "substyle_from_meridian", Math.Min(turn, 180 - turn), tolerance);
            Maybe(plane, "difference_of_longitude", Math.Abs(substyle.DifferenceOfLongitude.Degrees), tolerance);
            Maybe(plane, "meridian_elevation", Deg(Math.Asin(Math.Abs(noon.Cos) * face.Inclination.Angle.Sin)), tolerance);
            Maybe(plane, "meridian_ascension", Deg(Math.Acos(Math.Abs(noon.Sin))), tolerance);
        }

        foreach (var row in Books.GetProperty("declination_when_day_is_N_hours_lat_52d30").GetProperty("rows").EnumerateObject())
        {
            Compare("day of " + row.Name, row.Value, Math.Abs(DeclinationOfDay(double.Parse(row.Name))), 1.0);
        }

        foreach (var row in Books.GetProperty("sun_declination_at_signs_obliquity_23d31m30s").GetProperty("rows").EnumerateObject())
        {
            // The ecliptic leans on the equator by 23 degrees 31.5 minutes as an equator leans on the horizon of latitude 90 degrees less that: the
            // Sun's declination at a longitude is the altitude of a Sun on that equator so far from the horizon point.
            var point = LocalDirection.FromHourAngle(
                HourAngle.FromDegrees(90 - double.Parse(row.Name)), SolarDeclination.FromDegrees(0), At(90 - (23 + 31.5 / 60)));
            Compare("sign at " + row.Name, row.Value, point.Altitude.Degrees, 2.0);
        }

        Assert.True(off.Count == 0, string.Join('\n', off));
        Assert.Equal(77, checkedAngles);

        void Maybe(JsonElement from, string name, double got, double tolerance)
        {
            if (from.TryGetProperty(name, out var printed))
            {
                Compare(from.GetProperty("source").GetString()![..20] + " " + name, printed, got, tolerance);
            }
        }

        void Compare(string what, JsonElement printed, double got, double tolerance)
        {
            checkedAngles++;
            if (Math.Abs(Printed(printed) - got) * 60 > tolerance)
            {
                off.Add($"{what}: printed {printed}, got {got}");
            }
        }
    }

    [Theory]
    [InlineData(8, 8.0, 7, 15.0)]
    [InlineData(12, 6.0, 7, 13.0)]
    [InlineData(16, 4.0, 7, 11.0)]
    public void Hours_from_sunrise_as_Stirrup_prints_them(double dayHours, double sunrise, double hour, double clock)
    {
        // Horometria, appendix, chapter IV: a day of 8 hours begins at 8, its hour 7 is 3 in the afternoon, and so on.
        var declination = SolarDeclination.FromDegrees(DeclinationOfDay(dayHours));
        Check(0, sunrise);
        Check(1, sunrise + 1);
        Check(hour, clock);

        void Check(double count, double expected)
        {
            var at = Assert.IsType<HorizonHour.At>(HorizonHour.Of(HorizonHours.SinceSunrise, count, At(52.5), declination));
            Assert.Equal(expected, DialTime.FromHourAngle(at.HourAngle).Hours, 9);
            var counted = HorizonHour.HoursCounted(HorizonHours.SinceSunrise, at.HourAngle, At(52.5), declination)!.Value;
            Assert.Equal(0.0, Math.IEEERemainder(counted - count, 24), 9);
        }
    }

    [Theory]
    [InlineData("clock_when_day_is_15h", 15.0)]
    [InlineData("clock_when_day_is_9h", 9.0)]
    [InlineData("equinox", 12.0)]
    public void Unequal_hours_as_Stirrup_prints_them(string column, double dayHours)
    {
        // Horometria, appendix, chapter V. Exact: both books and ours divide the day by 12; 1e-9 hours for the declination sought.
        var declination = SolarDeclination.FromDegrees(DeclinationOfDay(dayHours));
        var rows = Books.GetProperty("temporary_hours").GetProperty(column).EnumerateArray().Select(row => row.GetString()!.Trim('(', ')')).ToList();
        for (var hour = 1; hour <= 12; hour++)
        {
            var parts = rows[hour - 1].Split(':');
            var clock = int.Parse(parts[0]) + (parts.Length > 1 ? int.Parse(parts[1]) / 60.0 : 0);
            clock += hour > 6 && clock < 12 ? 12 : 0;
            var at = Assert.IsType<HorizonHour.At>(HorizonHour.Of(HorizonHours.Unequal, hour, At(52.5), declination));
            Assert.Equal(clock, DialTime.FromHourAngle(at.HourAngle).Hours, 9);
        }

        Assert.Equal(12, rows.Count);
    }

    internal static double DeclinationOfDay(double hours)
    {
        // The day grows with the declination in the north; 60 halvings reach rounding.
        double low = -37, high = 37;
        for (var i = 0; i < 60; i++)
        {
            var middle = (low + high) / 2;
            (low, high) = 2 * HorizonHour.HalfDayHours(At(52.5), SolarDeclination.FromDegrees(middle)) < hours ? (middle, high) : (low, middle);
        }

        return low;
    }

    private static double FromNoonLine(FaceLayout layout, double hours) => Math.Abs(
        (Assert.IsType<FaceHourLine.FromCentre>(layout.LineFor(DialTime.FromHours(hours))).Clockwise
        - Assert.IsType<FaceHourLine.FromCentre>(layout.NoonLine).Clockwise).AroundZero().Degrees);

    private static Latitude At(double degrees) => Latitude.FromDegrees(degrees);

    private static double Printed(JsonElement angle) => angle[0].GetDouble() + angle[1].GetDouble() / 60;

    private static double Deg(double radians) => radians * 180 / Math.PI;
}
