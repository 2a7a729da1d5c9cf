using System.Globalization;
using NodaTime;
using SunLessons.App.Printing;
using SunLessons.App.Tests.Support;
using SunLessons.Magnetism;
using SunLessons.Places;

namespace SunLessons.App.Tests.Verbs;

public sealed class NorthVerbTests
{
    [Fact]
    public async Task Text_tells_the_needle_its_model_and_its_caution()
    {
        var text = await Answers.TextAsync("north", "--place", "Dunedin", "--date", "2026-06-21");
        Assert.StartsWith("Dunedin, 45.87° S 170.5° E, height 0 m; 21 June 2026\n", text, StringComparison.Ordinal);
        Assert.Contains("  the needle points      26.37° east  of true north (magnetic declination)\n", text, StringComparison.Ordinal);
        Assert.Contains("  give or take                 0.38°  in 68 of 100 cases (k = 1)\n", text, StringComparison.Ordinal);
        Assert.Contains("  compass to true            +26.37°  to be added to a bearing by compass\n", text, StringComparison.Ordinal);
        Assert.Contains("  model                      WMM2025  answers here for 2025.0 to 2030.0\n", text, StringComparison.Ordinal);
        Assert.Contains("For learning, not for navigation.", text, StringComparison.Ordinal);
    }

    // The official test values of WMM2025 (NOAA and BGS), rows of 2025.0, which is 1 January 2025: X and Y give the declination at full precision.
    // 0.001 nT of the library against fields of 1500 nT and more, and the nine decimals of the answer.
    [Fact]
    public async Task First_day_of_2025_gives_the_official_values_of_WMM2025()
    {
        foreach (var row in Rows("wmm2025_testvalues_fullprecision.csv").Where(row => row[0] == "2025.000000").Where((_, i) => i % 4 == 0))
        {
            var height = (Number(row[1]) * 1000.0).ToString("0", CultureInfo.InvariantCulture);
            var north = await Answers.JsonAsync("north", "--latitude", row[2], "--longitude", row[3], "--height", height, "--date", "2025-01-01");
            Assert.Equal("WMM2025", north.At("model")!.GetValue<string>());
            Assert.Equal(Math.Atan2(Number(row[8]), Number(row[7])) * 180.0 / Math.PI, north.Number("magnetic_declination_degrees"), 1e-5);
            Assert.Equal(Number(row[6]), north.Number("horizontal_intensity_nanotesla"), 0.001);
            Assert.Equal(Number(row[10]), north.Number("total_intensity_nanotesla"), 0.001);

            // The error model that NOAA and BGS publish with WMM2025.
            Assert.Equal(Math.Min(103.923, Math.Sqrt(0.26 * 0.26 + Math.Pow(5417.0 / Number(row[6]), 2.0))), north.Number("standard_uncertainty_degrees"), 1e-4);
        }
    }

    // IGRF-14 through GeographicLib, authorities/geomag/make_reference.py: first days of years, to 1e-5 degrees.
    [Fact]
    public async Task First_days_of_years_before_2025_give_the_cities_declinations_of_IGRF()
    {
        var rows = Rows("igrf_declination_cities.csv").Where(row => Number(row[4]) % 1.0 == 0.0 && Number(row[4]) < 2025.0 && row[3] == "0");
        foreach (var row in rows.Where((_, i) => i % 25 == 0))
        {
            var north = await Answers.JsonAsync("north", "--latitude", row[1], "--longitude", row[2], "--date", $"{Number(row[4]):0}-01-01");
            Assert.Equal("IGRF-14", north.At("model")!.GetValue<string>());
            Assert.Equal(Number(row[6]), north.Number("magnetic_declination_degrees"), 1e-5);
        }
    }

    // Cross-checks of the lessons, recomputed with IGRF-14 outside this program and printed to 0.1 degrees: drift since 1900.
    [Theory]
    [InlineData("1900-01-01", -18.0)]
    [InlineData("1960-01-01", -10.5)]
    public async Task Needle_of_Vigo_drifts_as_the_lesson_says(string date, double degrees)
    {
        var north = await Answers.JsonAsync("north", "--place", "Vigo", "--date", date);
        Assert.Equal(degrees, north.Number("magnetic_declination_degrees"), 0.06);
    }

    [Theory]
    [InlineData("85", "-140", "blackout", "No compass can be used here: the level field is 1129 nT, below 2000 nT")]
    [InlineData("76", "-100", "caution", "weak: below 6000 nT use a compass with\n")]
    public async Task Weak_field_is_said_first(string latitude, string longitude, string zone, string words)
    {
        string[] call = ["north", "--latitude", latitude, "--longitude", longitude, "--date", "2026-01-01"];
        Assert.Equal(zone, (await Answers.JsonAsync(call)).At("compass_zone")!.GetValue<string>());
        Assert.Contains(words, await Answers.TextAsync(call), StringComparison.Ordinal);
    }

    [Fact]
    public void Coming_end_of_the_model_is_printed_below_the_answer()
    {
        var date = new LocalDate(2029, 6, 1);
        var place = Gazetteer.Towns[0];
        var known = Assert.IsType<NorthAnswer.Known>(MagneticField.At(place.Point, date));
        var notice = MagneticField.ExpiryNotice(date.AtMidnight().InUtc().ToInstant());
        Assert.EndsWith(
            "The compass model WMM2025 expires at 2030.0, less than a year from now; add the\nnext model's coefficient file with \"sunlessons data add\" or get a newer version\nof this program before then.",
            NorthText.Of(place, date, known, notice).ReplaceLineEndings("\n"),
            StringComparison.Ordinal);
        Assert.Equal(notice, NorthJson.Of(place, date, known, notice)["expiry_notice"]!.GetValue<string>());
    }

    private static IEnumerable<string[]> Rows(string file) =>
        File.ReadLines(RepositoryFiles.Path("tests", "SunLessons.Tests", "authorities", "geomag", file))
            .Where(line => !line.StartsWith('#'))
            .Skip(1)
            .Select(line => line.Split(','));

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);
}
