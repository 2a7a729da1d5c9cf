using NodaTime;
using SunLessons.Magnetism;

namespace SunLessons.Tests.Magnetism;

/// <summary>The rule between the models, the zones, the ends of validity, and what is said there.</summary>
public class MagneticFieldTests
{
    private static readonly GeoPoint Vigo = GeoPoint.FromDegrees(42.24, -8.72);

    [Theory]
    [InlineData(1900.0, "IGRF-14")]
    [InlineData(1999.9, "IGRF-14")]
    [InlineData(2024.9999, "IGRF-14")]
    [InlineData(2025.0, "WMM2025")]
    [InlineData(2027.5, "WMM2025")]
    [InlineData(2030.0, "WMM2025")]
    public void The_rule_names_the_model_of_each_year(double year, string model) =>
        Assert.Equal(model, Assert.IsType<NorthAnswer.Known>(MagneticField.At(Vigo, year)).ModelName);

    [Fact]
    public void The_rule_has_no_gap_and_no_overlap()
    {
        Assert.Equal(1900.0, MagneticModels.BuiltIn.FirstYear);
        Assert.Equal(2030.0, MagneticModels.BuiltIn.LastYear);
        for (var k = 1; k < MagneticModels.BuiltIn.Rule.Count; k++)
        {
            Assert.Equal(MagneticModels.BuiltIn.Rule[k - 1].ValidToYear, MagneticModels.BuiltIn.Rule[k].ValidFromYear);
        }
    }

    [Fact]
    public void The_day_decides_between_the_models()
    {
        Assert.Equal("IGRF-14", Assert.IsType<NorthAnswer.Known>(MagneticField.At(Vigo, new LocalDate(2024, 12, 31))).ModelName);
        Assert.Equal("WMM2025", Assert.IsType<NorthAnswer.Known>(MagneticField.At(Vigo, new LocalDate(2025, 1, 1))).ModelName);
        Assert.Equal("WMM2025", Assert.IsType<NorthAnswer.Known>(MagneticField.At(Vigo, Instant.FromUtc(2025, 1, 1, 0, 0))).ModelName);
    }

    [Fact]
    public void Decimal_years_count_the_days_of_their_own_year()
    {
        Assert.Equal(2025.0, DecimalYears.Of(new LocalDate(2025, 1, 1)), 12);
        Assert.Equal(2024.0 + 182.0 / 366.0, DecimalYears.Of(new LocalDate(2024, 7, 1)), 12);
        Assert.Equal(2025.0 + 181.0 / 365.0, DecimalYears.Of(new LocalDate(2025, 7, 1)), 12);
        Assert.Equal(2025.0 + 181.5 / 365.0, DecimalYears.Of(Instant.FromUtc(2025, 7, 1, 12, 0)), 12);

        // The Julian calendar's 1 January 1900 was the Gregorian 13 January.
        Assert.Equal(1900.0 + 12.0 / 365.0, DecimalYears.Of(new LocalDate(1900, 1, 1, CalendarSystem.Julian)), 12);
    }

    [Fact]
    public void Before_1900_there_is_a_bound_and_no_answer()
    {
        var answer = Assert.IsType<NorthAnswer.BeforeModels>(MagneticField.At(Vigo, 1750.0));
        Assert.Equal(1750.0, answer.DecimalYear);
        Assert.Equal(1900.0, answer.Bound.DecimalYear);
        Assert.Equal(
            "No model here reaches back to 1750.0: IGRF-14 begins with 1900.0, when the needle pointed 18.0 degrees west of true north; before that it may have differed by many degrees. Look for an observation made near that place and time.",
            answer.Summary);
        Assert.IsType<NorthAnswer.BeforeModels>(MagneticField.At(Vigo, new LocalDate(1899, 12, 31)));
    }

    [Fact]
    public void After_2030_the_model_has_expired_and_says_what_to_do()
    {
        var answer = Assert.IsType<NorthAnswer.AfterModels>(MagneticField.At(Vigo, new LocalDate(2031, 7, 2)));
        Assert.Equal("WMM2025", answer.ModelName);
        Assert.Equal(2030.0, answer.ValidToYear);
        Assert.Equal(2030.0, answer.Last.DecimalYear);
        Assert.Equal(
            "WMM2025 was valid until 2030.0 and cannot answer for 2031.5: add the next model's coefficient file with \"sunlessons data add\" or get a newer version of this program, or set the dial by the Sun instead of the compass.",
            answer.Summary);
        Assert.IsType<NorthAnswer.AfterModels>(MagneticField.At(Vigo, new LocalDate(2030, 1, 2)));
    }

    [Fact]
    public void The_expiry_is_announced_a_year_ahead()
    {
        Assert.False(MagneticField.ExpiresSoon(Instant.FromUtc(2028, 12, 31, 23, 59)));
        Assert.Null(MagneticField.ExpiryNotice(Instant.FromUtc(2028, 12, 31, 23, 59)));

        var inTheLastYear = Instant.FromUtc(2029, 1, 1, 0, 0);
        Assert.True(MagneticField.ExpiresSoon(inTheLastYear));
        Assert.False(MagneticField.HasExpired(inTheLastYear));
        Assert.Equal(
            "The compass model WMM2025 expires at 2030.0, less than a year from now; add the next model's coefficient file with \"sunlessons data add\" or get a newer version of this program before then.",
            MagneticField.ExpiryNotice(Instant.FromUtc(2029, 6, 1, 0, 0)));

        var after = Instant.FromUtc(2030, 1, 2, 0, 0);
        Assert.True(MagneticField.ExpiresSoon(after));
        Assert.True(MagneticField.HasExpired(after));
        Assert.Equal(
            "The compass model WMM2025 expired at 2030.0; add the next model's coefficient file with \"sunlessons data add\" or get a newer version of this program, or set the dial by the Sun.",
            MagneticField.ExpiryNotice(after));
    }

    // The zones' limits: WMM2025 specification, H below 2000 nT blackout, below 6000 nT caution.
    // Two of the official test points stand in such zones (H of the official table): 89 N 121 W has 1504 nT, 80 N 96 W has 2164 nT.
    [Theory]
    [InlineData(89.0, -121.0, 28_000.0, CompassZone.Blackout, false)]
    [InlineData(80.0, -96.0, 48_000.0, CompassZone.Caution, true)]
    [InlineData(43.0, 93.0, 65_000.0, CompassZone.Fine, true)]
    public void The_zone_follows_the_horizontal_intensity(double latitude, double longitude, double height, CompassZone zone, bool usable)
    {
        var answer = Assert.IsType<NorthAnswer.Known>(MagneticField.At(GeoPoint.FromDegrees(latitude, longitude, height), 2025.0));
        Assert.Equal(zone, answer.Zone);
        Assert.Equal(usable, answer.CompassUsable);
    }

    [Fact]
    public void The_zone_limits_themselves_belong_to_the_better_zone()
    {
        Assert.Equal(CompassZone.Fine, CompassZones.For(6000.0));
        Assert.Equal(CompassZone.Caution, CompassZones.For(5999.999));
        Assert.Equal(CompassZone.Caution, CompassZones.For(2000.0));
        Assert.Equal(CompassZone.Blackout, CompassZones.For(1999.999));
        Assert.Equal(CompassZone.Blackout, CompassZones.For(0.0));
    }

    [Fact]
    public void In_the_blackout_the_summary_gives_no_direction()
    {
        var answer = MagneticField.At(GeoPoint.FromDegrees(89.0, -121.0, 28_000.0), 2025.0);
        Assert.Equal(
            "No compass can be used here: the level field is 1504 nT, below 2000 nT (WMM2025, 2025.0). Find north by the Sun.",
            answer.Summary);
    }

    [Fact]
    public void The_summary_of_a_good_place_names_side_size_drift_and_model() =>
        Assert.Equal(
            "The needle points 0.9 degrees west of true north, give or take 0.3 degrees, moving 0.16 degrees east a year (WMM2025, 2026.5).",
            MagneticField.At(Vigo, 2026.5).Summary);

    [Theory]
    [InlineData(double.NaN, "Year NaN cannot be used: write a decimal year such as 2026.5.")]
    [InlineData(double.PositiveInfinity, "Year Infinity cannot be used: write a decimal year such as 2026.5.")]
    public void A_year_that_is_no_number_is_refused(double year, string message) =>
        Assert.StartsWith(message, Assert.Throws<ArgumentOutOfRangeException>(() => MagneticField.At(Vigo, year)).Message, StringComparison.Ordinal);

    [Theory]
    [InlineData(-1_000.1)]
    [InlineData(850_000.1)]
    [InlineData(double.NaN)]
    public void A_height_outside_the_models_is_refused(double height)
    {
        var error = Assert.Throws<ArgumentOutOfRangeException>(() => MagneticField.At(GeoPoint.FromDegrees(0.0, 0.0, height), 2026.0));
        Assert.Contains("is outside -1000 to 850000 m above the ellipsoid. Give metres, not feet or kilometres; 0 will do for every dial.", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_model_refuses_years_before_its_first_epoch()
    {
        var error = Assert.Throws<ArgumentOutOfRangeException>(() => GeomagneticModel.Wmm2025.At(Vigo, 2024.5));
        Assert.StartsWith("Year 2024.5 cannot be used: WMM2025 begins with 2025.0; ask about that year or a later one.", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void The_farthest_times_that_can_be_written_down_get_an_answer()
    {
        Assert.IsType<NorthAnswer.BeforeModels>(MagneticField.At(Vigo, Instant.MinValue));
        Assert.IsType<NorthAnswer.AfterModels>(MagneticField.At(Vigo, Instant.MaxValue));
        Assert.IsType<NorthAnswer.BeforeModels>(MagneticField.At(Vigo, LocalDate.MinIsoValue));
        Assert.IsType<NorthAnswer.AfterModels>(MagneticField.At(Vigo, LocalDate.MaxIsoValue));
    }

    [Fact]
    public void Computing_the_field_allocates_nothing()
    {
        var years = new[] { 1900.0, 1962.5, 2013.0, 2027.0 };
        var sum = 0.0;
        long before = 0;
        for (var round = 0; round < 200; round++)
        {
            // The first rounds load the tables and compile.
            if (round == 100)
            {
                before = GC.GetAllocatedBytesForCurrentThread();
            }

            foreach (var year in years)
            {
                var model = year < 2025.0 ? GeomagneticModel.Igrf14 : GeomagneticModel.Wmm2025;
                sum += model.At(Vigo, year).Field.Declination.Degrees;
            }
        }

        var allocated = GC.GetAllocatedBytesForCurrentThread() - before;

        // One object a call would be 400 x 24 = 9600 bytes at least; the run-time itself may take a little when it recompiles a hot method.
        Assert.True(allocated < 1000, $"{allocated} bytes in 400 evaluations, sum {sum}");
    }
}
