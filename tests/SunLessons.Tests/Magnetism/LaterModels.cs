using System.Globalization;
using SunLessons.Magnetism;
using SunLessons.Tests.CivilTime;

namespace SunLessons.Tests.Magnetism;

/// <summary>A later World Magnetic Model from a file: an invented one of 2030, see authorities/geomag/later.</summary>
public sealed class LaterModels
{
    private static readonly string File2030 = Authorities.Text("geomag/later", "later_2030.cof");
    private static readonly MagneticModels Later = MagneticModels.BuiltIn.WithWorldModel(File2030);

    [Fact]
    public void ItAnswersFromItsEpochAndWhatCameBeforeStays()
    {
        Assert.Equal(["IGRF-14", "WMM2025", "WMM2030"], Later.Rule.Select(span => span.Name));
        Assert.Equal([1900.0, 2025.0, 2030.0], Later.Rule.Select(span => span.ValidFromYear));
        Assert.Equal([2025.0, 2030.0, 2035.0], Later.Rule.Select(span => span.ValidToYear));
        var vigo = GeoPoint.FromDegrees(42.24, -8.72);
        foreach (var year in new[] { 1900.0, 1960.3, 2024.999, 2025.0, 2029.999 })
        {
            Assert.Equal(Known(MagneticModels.BuiltIn, vigo, year).Declination, Known(Later, vigo, year).Declination);
        }

        // 60 nT of h(1,1) against 25,000 nT: a tenth of a degree and more.
        var (before, after) = (Known(MagneticModels.BuiltIn, vigo, 2030.0), Known(Later, vigo, 2030.0));
        Assert.InRange(Math.Abs(after.Declination.Degrees - before.Declination.Degrees), 0.05, 0.3);
        Assert.IsType<NorthAnswer.AfterModels>(MagneticModels.BuiltIn.At(vigo, 2034.9));
        Assert.Equal("WMM2030", Known(Later, vigo, 2035.0).ModelName);
        Assert.IsType<NorthAnswer.AfterModels>(Later.At(vigo, 2035.01));
    }

    // npm's geomagnetism 0.2.0 reads the same file by its own reader (authorities/geomag/later/make.mjs).
    [Fact]
    public void AnotherReaderOfTheFileFindsTheSameField()
    {
        var rows = GeomagAuthority.Rows(Path.Combine("later", "later_2030.csv")).ToList();
        Assert.Equal(16, rows.Count);
        foreach (var row in rows)
        {
            var known = Known(Later, GeoPoint.FromDegrees(row.Number("latitude_degrees"), row.Number("longitude_degrees")), row.Number("decimal_year"));

            // 1e-6 degrees and 0.001 nT: its printed digits, and an ellipsoid whose minor axis it rounds to a tenth of a millimetre.
            Assert.Equal(row.Number("declination_degrees"), known.Declination.Degrees, 1e-6);
            Assert.Equal(row.Number("horizontal_nanotesla"), known.HorizontalIntensityNanotesla, 1e-3);
        }
    }

    [Fact]
    public void ItsUncertaintyIsThatOfWmm2025AndSaysSo()
    {
        var known = Known(Later, GeoPoint.FromDegrees(-45.87, 170.5), 2031.0);

        // Error model of WMM2025, NOAA and BGS.
        Assert.Equal(Math.Sqrt(0.26 * 0.26 + Math.Pow(5417.0 / known.HorizontalIntensityNanotesla, 2.0)), known.StandardDeviation.Degrees, 1e-9);
        Assert.StartsWith("the error model of WMM2025 carried over, because the file of WMM2030 states none: ", known.Span.UncertaintySource, StringComparison.Ordinal);
    }

    [Fact]
    public void AModelOfTheSameEpochReplacesTheOlderAndOneBetweenHandsOverToTheNext()
    {
        var again = Later.WithWorldModel(File2030.Replace("WMM-2030 ", "WMM-2030v2 ", StringComparison.Ordinal));
        Assert.Equal(["IGRF-14", "WMM2025", "WMM2030v2"], again.Rule.Select(span => span.Name));
        var between = Later.WithWorldModel(File2030.Replace("2030.0            WMM-2030", "2027.5 WMM-2027", StringComparison.Ordinal));
        Assert.Equal(["IGRF-14", "WMM2025", "WMM2027", "WMM2030"], between.Rule.Select(span => span.Name));
        for (var k = 1; k < between.Rule.Count; k++)
        {
            Assert.Equal(between.Rule[k - 1].ValidToYear, between.Rule[k].ValidFromYear);
        }

        Assert.Equal(2035.0, between.LastYear);
    }

    [Fact]
    public void ReadingAFileChangesNothingThatIsInUse()
    {
        Assert.Same(MagneticModels.BuiltIn, MagneticModels.InUse);
        Assert.Equal(2030.0, MagneticModels.InUse.LastYear);
    }

    public static TheoryData<string, string> Refusals => new()
    {
        { "Dear reader,\nthis is a letter.\n", "The first line \"Dear reader,\" is not that of a World Magnetic Model; give its coefficient file WMM.COF, which begins with epoch, name and date such as 2025.0 WMM-2025 11/13/2024." },
        { "", "The first line \"\" is not that of a World Magnetic Model; give its coefficient file WMM.COF, which begins with epoch, name and date such as 2025.0 WMM-2025 11/13/2024." },
        { new string('1', 100_001), "The file is too large for the coefficients of a compass model (100001 characters, at most 100000); give the file WMM.COF of a World Magnetic Model of degree 13 or less." },
        { Changed("2030.0            WMM-2030", "2020.0 WMM-2020"), "WMM2020 begins with 2020.0, a time for which this program has the later and better IGRF-14; give a model that begins with 2025.0 or later." },
        { Changed("2030.0            WMM-2030", "2035.0 WMM-2035"), "WMM2035 begins with 2035.0 and the models here end with 2030.0, which leaves years without an answer; add the model that begins with 2030.0 first." },
        { File2030[..(File2030.Length / 2)], "Line " },
        { File2030[..File2030.IndexOf("99999", StringComparison.Ordinal)], "The file ends within degree 12, before the line of nines that closes a model; it was cut off, so get it anew." },
        { Changed("  2  0    -2614.6", "  2  0    minus"), "Line 4 \"2  0    minus       0.0     -11.6       ...\" is not the one for degree 2 and order 0: six numbers belong there, n m g h and the yearly change of g and h; get the file anew." },
        { Changed("  2  1     2934.1", "  2  2     2934.1"), "Line 5 \"2  2     2934.1   -3272.1      -5.2     ...\" is not the one for degree 2 and order 1: six numbers belong there, n m g h and the yearly change of g and h; get the file anew." },
        { Changed("  1  0   -29291.8", "  1  0    29291.8"), "WMM2030 differs from WMM2025 by 58408 nT at 0° N 0° E at 2030.0, which the Earth's field does not do (1000 nT is allowed); " },
        { Changed("  1  1    -1362.3    4497.9", "  1  1     4497.9   -1362.3"), "WMM2030 differs from WMM2025 by 11682 nT at " },
        { HighDegree(), "The model goes beyond degree 13, up to which this program computes; give the standard World Magnetic Model (degree 12), not the one of high resolution." },
    };

    [Theory]
    [MemberData(nameof(Refusals))]
    public void AFileThatCannotBeUsedGetsOneSentence(string text, string begins)
    {
        var error = Assert.Throws<FormatException>(() => MagneticModels.BuiltIn.WithWorldModel(text));
        Assert.StartsWith(begins, error.Message, StringComparison.Ordinal);
        Assert.EndsWith(".", error.Message, StringComparison.Ordinal);
    }

    private static string Changed(string from, string to)
    {
        Assert.Contains(from, File2030, StringComparison.Ordinal);
        return File2030.Replace(from, to, StringComparison.Ordinal);
    }

    // The high-resolution variant of the model has degree 133; its lines have the same form.
    private static string HighDegree() => "2025.0 WMMHR-2025 11/13/2024\n" + string.Concat(
        from n in Enumerable.Range(1, 20) from m in Enumerable.Range(0, n + 1) select string.Create(CultureInfo.InvariantCulture, $"{n} {m} 1.0 1.0 0.0 0.0\n"));

    private static NorthAnswer.Known Known(MagneticModels models, GeoPoint point, double year) => Assert.IsType<NorthAnswer.Known>(models.At(point, year));
}
