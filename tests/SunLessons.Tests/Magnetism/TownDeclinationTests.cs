using SunLessons.Magnetism;

namespace SunLessons.Tests.Magnetism;

/// <summary>Declination at the eight towns of the lessons, and how it drifts.</summary>
public class TownDeclinationTests
{
    // Declination in 1900, 1960 and 2025 (degrees, east positive) and yearly change in 2025 as another program made them from IGRF-14
    // for the lessons, printed to 0.1 degree and 0.01 degree a year. A cross-check, not an authority.
    public static TheoryData<string, double, double, double, double, double, double> Towns => new()
    {
        { "Tromso", 69.65, 18.96, -6.1, 2.1, 10.8, 0.26 },
        { "Vigo", 42.24, -8.72, -18.0, -10.5, -1.2, 0.15 },
        { "Kathmandu", 27.72, 85.32, 2.0, -0.5, 0.4, 0.02 },
        { "Nairobi", -1.29, 36.82, -6.6, -2.6, 0.3, -0.06 },
        { "Darwin", -12.46, 130.84, 3.3, 3.6, 2.2, -0.05 },
        { "Dunedin", -45.87, 170.50, 16.8, 21.8, 26.3, 0.08 },
        { "Ushuaia", -54.80, -68.30, 18.2, 15.7, 11.8, -0.08 },
        { "St. John's", 47.56, -52.71, -29.3, -28.2, -16.7, 0.19 },
    };

    [Theory]
    [MemberData(nameof(Towns))]
    public void The_towns_have_the_listed_offsets(string town, double latitude, double longitude, double in1900, double in1960, double in2025, double change)
    {
        var point = GeoPoint.FromDegrees(latitude, longitude);

        // 0.05 degree of printing, and 0.03 more in 2025, where the list has IGRF-14 and the rule WMM2025.
        Near(in1900, Known(point, 1900.0).Declination.Degrees, 0.05, town + " 1900");
        Near(in1960, Known(point, 1960.0).Declination.Degrees, 0.05, town + " 1960");
        Near(in2025, Known(point, 2025.0).Declination.Degrees, 0.08, town + " 2025");

        // IGRF-14's own rate, printed to 0.01 degree a year.
        Near(change, GeomagneticModel.Igrf14.At(point, 2025.0).DeclinationChangePerYear.Degrees, 0.005, town + " change");

        // The two models' forecasts differ by up to 0.01 degree a year here.
        Near(change, Known(point, 2025.0).YearlyChange.Degrees, 0.015, town + " change by WMM2025");
    }

    [Fact]
    public void An_old_compass_correction_can_be_some_3_degrees_out_of_date_after_a_century()
    {
        // Common practice, no source: "some 3 degrees after a century". Nairobi's correction of 1926, used in 2026, is 3.3 degrees out;
        // other towns show how little the saying can be trusted: Darwin 1.4, St. John's 13.2, Vigo 14.0.
        Near(3.3, Century("Nairobi"), 0.05, "Nairobi");
        Near(-1.4, Century("Darwin"), 0.05, "Darwin");
        Near(13.2, Century("St. John's"), 0.05, "St. John's");
        Near(14.0, Century("Vigo"), 0.05, "Vigo");
    }

    [Fact]
    public void Vigo_changed_16_degrees_from_1900_to_2020()
    {
        // The lesson's exercise: 16.0 +-0.5 degrees, cross-check only.
        var vigo = PointOf("Vigo");
        Near(16.0, Known(vigo, 2020.0).Declination.Degrees - Known(vigo, 1900.0).Declination.Degrees, 0.5, "Vigo 1900 to 2020");
    }

    [Fact]
    public void The_needle_is_within_3_degrees_of_north_in_four_of_the_eight_towns()
    {
        var near = Towns.Where(t => Math.Abs(Known(PointOf(t.Data.Item1), 2025.0).Declination.Degrees) < 3.0).Select(t => t.Data.Item1);
        Assert.Equal(["Vigo", "Kathmandu", "Nairobi", "Darwin"], near);
    }

    [Fact]
    public void The_drift_curve_names_the_model_of_every_point()
    {
        var curve = DriftCurve.For(PointOf("Vigo"));
        Assert.Equal(131, curve.Points.Count);
        Assert.Equal(1900.0, curve.Points[0].DecimalYear);
        Assert.Equal(2030.0, curve.Points[^1].DecimalYear);
        Assert.All(curve.Points, p => Assert.Equal(p.DecimalYear < 2025.0 ? "IGRF-14" : "WMM2025", p.ModelName));
        Assert.All(curve.Points, p => Assert.Equal(CompassZone.Fine, p.Zone));
        foreach (var p in curve.Points)
        {
            var known = Known(curve.Point, p.DecimalYear);
            Assert.Equal(known.Declination, p.Declination);
            Assert.Equal(known.StandardUncertainty, p.StandardUncertainty);
        }
    }

    [Fact]
    public void The_drift_curve_ends_where_it_was_told_to()
    {
        var curve = DriftCurve.For(PointOf("Vigo"), 1999.5, 2001.0, 0.4);
        Assert.Equal([1999.5, 1999.9, 2000.3, 2000.7, 2001.0], curve.Points.Select(p => Math.Round(p.DecimalYear, 6)));
        Assert.Single(DriftCurve.For(PointOf("Vigo"), 2000.0, 2000.0).Points);
    }

    [Fact]
    public void The_jump_between_the_models_is_small_where_a_compass_works()
    {
        foreach (var town in Towns)
        {
            var jump = Assert.Single(DriftCurve.For(PointOf(town.Data.Item1)).Jumps);
            Assert.Equal(2025.0, jump.DecimalYear);

            // Measured: at most 0.024 degree at the towns; their quoted uncertainties are ten times that.
            Near(0.0, jump.Jump.Degrees, 0.03, town.Data.Item1);
        }

        // The newer model minus the older: at Vigo -1.167 (WMM2025) and -1.187 (IGRF-14), so the curve jumps eastwards.
        Near(0.020, DriftCurve.For(PointOf("Vigo")).Jumps[0].Jump.Degrees, 0.001, "Vigo");

        // On a grid of 2 degrees over the whole Earth, H of 6000 nT or more: measured 0.1154 degree at most.
        for (var latitude = -88.0; latitude <= 88.0; latitude += 2.0)
        {
            for (var longitude = -180.0; longitude < 180.0; longitude += 2.0)
            {
                var point = GeoPoint.FromDegrees(latitude, longitude);
                var newer = GeomagneticModel.Wmm2025.At(point, 2025.0).Field;
                if (newer.HorizontalNanotesla >= CompassZones.CautionBelowNanotesla)
                {
                    var older = GeomagneticModel.Igrf14.At(point, 2025.0).Field;
                    var jump = (newer.Declination.Angle - older.Declination.Angle).AroundZero();
                    Near(0.0, jump.Degrees, 0.12, point.ToString());
                }
            }
        }
    }

    [Theory]
    [InlineData(1899.0, 2030.0, 1.0, "Years 1899.0 to 2030.0 are outside 1900.0 to 2030.0 or the wrong way round. Give the earlier year first, inside that range.")]
    [InlineData(1900.0, 2031.0, 1.0, "Years 1900.0 to 2031.0 are outside 1900.0 to 2030.0 or the wrong way round. Give the earlier year first, inside that range.")]
    [InlineData(2000.0, 1990.0, 1.0, "Years 2000.0 to 1990.0 are outside 1900.0 to 2030.0 or the wrong way round. Give the earlier year first, inside that range.")]
    [InlineData(1900.0, 2030.0, 0.0, "A step of 0.0 years cannot be used from 1900.0 to 2030.0: it must be more than 0 and give at most 100000 points. Write 1 for a point a year.")]
    public void A_curve_that_cannot_be_drawn_is_refused(double from, double to, double step, string message) =>
        Assert.StartsWith(message, Assert.Throws<ArgumentOutOfRangeException>(() => DriftCurve.For(PointOf("Vigo"), from, to, step)).Message, StringComparison.Ordinal);

    private static double Century(string town) => Known(PointOf(town), 2026.0).Declination.Degrees - Known(PointOf(town), 1926.0).Declination.Degrees;

    private static GeoPoint PointOf(string town)
    {
        var (_, latitude, longitude, _, _, _, _) = Towns.Single(t => t.Data.Item1 == town).Data;
        return GeoPoint.FromDegrees(latitude, longitude);
    }

    private static NorthAnswer.Known Known(GeoPoint point, double year) => Assert.IsType<NorthAnswer.Known>(MagneticField.At(point, year));

    private static void Near(double expected, double actual, double tolerance, string what) =>
        Assert.True(Math.Abs(expected - actual) <= tolerance, $"{what}: expected {expected}, got {actual}");
}
