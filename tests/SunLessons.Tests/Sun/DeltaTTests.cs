using System.Text.Json;
using NodaTime;
using SunLessons.Sun;
using SunLessons.Tests.CivilTime;

namespace SunLessons.Tests.Sun;

/// <summary>Civil time to UT1 and TT.</summary>
public sealed class DeltaTTests
{
    // Espenak and Meeus' polynomials (NASA 2006) as rows of authorities/spa_meeus, "pvlib_delta_T_polynomial_tests", for the years both cover.
    [Fact]
    public void TheTableAgreesWithEspenaksPolynomials()
    {
        var rows = JsonDocument.Parse(Authorities.Text("spa_meeus", "spa_example.json")).RootElement.GetProperty("pvlib_delta_T_polynomial_tests").GetProperty("rows");
        var checks = 0;
        foreach (var row in rows.EnumerateArray())
        {
            var (year, month) = (row[0].GetInt32(), row[1].GetInt32());
            if (year is < 1900 or > 2005)
            {
                continue;
            }

            // 0.25 s: the polynomials smooth the Earth's irregular turning; in December 2005 they are 0.20 s above what was observed.
            Assert.Equal(row[2].GetDouble(), DeltaT.At(Instant.FromUtc(year, month, 15, 0, 0)).TtMinusUt1Seconds, 0.25);
            checks++;
        }

        Assert.Equal(8, checks);
    }

    // authorities/time/delta_t_monthly.csv: the months between the quarters of the library's table.
    [Fact]
    public void ALineBetweenTheQuartersMissesTheMonthsByTwoHundredthsOfASecond()
    {
        var differences = new Differences();
        foreach (var line in Authorities.Lines("time", "delta_t_monthly.csv").Skip(2))
        {
            var cells = line.Split(',').Select(c => double.Parse(c, System.Globalization.CultureInfo.InvariantCulture)).ToArray();

            // The first two months lie between the half-yearly table, printed to 0.001 s, and the quarterly one.
            differences.Add(DeltaT.At(Instant.FromUtc((int)cells[0], (int)cells[1], 1, 0, 0)).TtMinusUt1Seconds - cells[2]);
        }

        Assert.Equal(604, differences.Count);
        Assert.True(differences.Worst < 0.0215, differences.ToString());
    }

    // ITU-R TF.460-6: |UT1 - UTC| stays below 0.9 s. Two independent tables meet here, delta-T and the leap seconds.
    [Fact]
    public void Ut1StaysWithinTheLawsLimitOfUtc()
    {
        var largest = 0.0;
        for (var t = Instant.FromUtc(1972, 1, 1, 0, 0); t < Instant.FromUtc(2030, 1, 1, 0, 0); t += Duration.FromDays(10))
        {
            var difference = Math.Abs(DeltaT.At(t).Ut1MinusUtcSeconds);
            Assert.True(difference < 0.9, $"{t}: {difference} s");
            largest = Math.Max(largest, difference);
        }

        // It did come near the limit (1972), so the test is no empty one.
        Assert.True(largest > 0.6, $"{largest} s");
    }

    // TT - UTC = 32.184 s + TAI - UTC; TAI - UTC was 10 s from 1972, 23 s from July 1985, 37 s since 2017 (IERS Bulletin C).
    [Theory]
    [InlineData(1972, 3, 42.184)]
    [InlineData(1985, 8, 55.184)]
    [InlineData(2016, 12, 68.184)]
    [InlineData(2017, 1, 69.184)]
    [InlineData(2026, 6, 69.184)]
    public void TtMinusUtcIsTheLeapSecondsPlusAConstant(int year, int month, double seconds)
    {
        var scales = DeltaT.At(Instant.FromUtc(year, month, 2, 0, 0));
        Assert.Equal(seconds, scales.TtMinusUt1Seconds + scales.Ut1MinusUtcSeconds, 1e-9);
    }

    [Fact]
    public void UncertaintyGrowsIntoTheFuture()
    {
        TimeScales In(int year) => DeltaT.At(Instant.FromUtc(year, 6, 1, 0, 0));
        Assert.Equal(0.02, In(2020).TtMinusUt1UncertaintySeconds);
        Assert.InRange(In(2026).TtMinusUt1UncertaintySeconds, 0.3, 0.5);
        Assert.InRange(In(2050).TtMinusUt1UncertaintySeconds, 5.0, 10.0);
        Assert.InRange(In(2100).TtMinusUt1UncertaintySeconds, 25.0, 45.0);

        // The law holds UT1 near the clock until 2035, whatever the Earth does.
        Assert.True(In(2034).Ut1UncertaintySeconds <= 0.52);
        Assert.True(In(2036).Ut1UncertaintySeconds > 1.5);
    }

    [Fact]
    public void NothingJumpsWhereTheTableEnds()
    {
        var before = DeltaT.At(Instant.FromUtc(2023, 4, 30, 23, 59));
        var after = DeltaT.At(Instant.FromUtc(2023, 5, 1, 0, 1));
        Assert.Equal(before.TtMinusUt1Seconds, after.TtMinusUt1Seconds, 1e-4);
        Assert.Equal(before.Ut1MinusUtcSeconds, after.Ut1MinusUtcSeconds, 1e-4);
    }

    // Meeus (1998), example 7.a, and SPA table A4.1: 4.81 October 1957 is JD 2436116.31; 1 January 2000 12h is 2451545.
    [Fact]
    public void JulianDatesOfKnownInstants()
    {
        // 1e-5 day: UT1 - UTC of up to 0.9 s.
        Assert.Equal(2436116.31, SunInstant.FromInstant(Instant.FromUtc(1957, 10, 4, 0, 0) + Duration.FromDays(0.81)).Ut1JulianDate, 1.1e-5);
        Assert.Equal(2451545.0, SunInstant.FromInstant(Instant.FromUtc(2000, 1, 1, 12, 0)).Ut1JulianDate, 1.1e-5);
        Assert.Equal(2447187.5, SunInstant.FromInstant(Instant.FromUtc(1988, 1, 27, 0, 0)).Ut1JulianDate, 1.1e-5);
    }

    [Theory]
    [InlineData(1901)]
    [InlineData(1971)]
    [InlineData(1999)]
    [InlineData(2026)]
    [InlineData(2099)]
    public void AnInstantComesBackFromTheSky(int year)
    {
        var instant = Instant.FromUtc(year, 8, 21, 13, 14, 15);
        Assert.Equal(0.0, (SunInstant.FromInstant(instant).ToInstant() - instant).TotalSeconds, 1e-5);
    }

    [Fact]
    public void TimesThatAreNoneGetOneSentence()
    {
        var jd = Assert.Throws<ArgumentOutOfRangeException>(() => SunInstant.FromUt1(double.NaN, 69.0));
        Assert.StartsWith(
            "UT1 NaN is outside the Julian dates 0 to 5373483.5. Give days, such as 2461273.5 for 0h UT1 on 21 August 2026.", jd.Message, StringComparison.Ordinal);
        var tt = Assert.Throws<ArgumentOutOfRangeException>(() => SunInstant.FromUt1(2461273.5, 1e6));
        Assert.StartsWith("TT-UT1 1000000 seconds is outside -100000 to +100000 seconds. Give seconds, such as 69.1 for 2026.", tt.Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentOutOfRangeException>(() => SunInstant.FromUt1(2461273.5, 69.1).PlusDays(double.PositiveInfinity));

        // The date in the sentence: 2461273.5 is 21 August 2026, 0h.
        Assert.Equal(new LocalDate(2026, 8, 21), SunInstant.FromUt1(2461273.6, 69.1).ToInstant().InUtc().Date);
    }
}
