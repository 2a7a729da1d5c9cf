using SunLessons.Magnetism;

namespace SunLessons.Tests.Magnetism;

/// <summary>The two field models against outside values (authorities/geomag/README.md).</summary>
public class FieldModelAccuracyTests
{
    [Fact]
    public void Wmm2025_gives_all_100_official_test_values()
    {
        var rows = GeomagAuthority.Rows("wmm2025_testvalues_fullprecision.csv").ToList();
        Assert.Equal(100, rows.Count);
        foreach (var row in rows)
        {
            var point = GeoPoint.FromDegrees(row.Number("lat_deg"), row.Number("lon_deg"), row.Number("height_km") * 1000.0);
            var year = row.Number("decimal_year");
            var field = GeomagneticModel.Wmm2025.At(point, year).Field;
            var where = $"{row["decimal_year"]} {row["lat_deg"]} {row["lon_deg"]}";

            // 0.0008 nT; 0.001 nT would do. Measured: X, H and F 0.0007 nT, Y 0.0000005 nT, Z 0.000002 nT. The difference in X is the
            // official table's own: GeographicLib differs from it by the same amounts and agrees with us (next check).
            Near(row.Number("official_X"), field.NorthNanotesla, 8e-4, "X " + where);
            Near(row.Number("official_Y"), field.EastNanotesla, 8e-4, "Y " + where);
            Near(row.Number("official_Z"), field.DownNanotesla, 8e-4, "Z " + where);
            Near(row.Number("official_H"), field.HorizontalNanotesla, 8e-4, "H " + where);
            Near(row.Number("official_F"), field.TotalNanotesla, 8e-4, "F " + where);

            // 0.0000006 nT: GeographicLib's independent sum, printed to 0.000001 nT, so half of that, and some for the rounding of the sums.
            Near(row.Number("geographiclib_X"), field.NorthNanotesla, 6e-7, "X by GeographicLib " + where);
            Near(row.Number("geographiclib_Y"), field.EastNanotesla, 6e-7, "Y by GeographicLib " + where);
            Near(row.Number("geographiclib_Z"), field.DownNanotesla, 6e-7, "Z by GeographicLib " + where);

            // 0.0051 degrees: the official D and I are printed to 0.01 degree.
            Near(0.0, Around(field.Declination.Degrees - row.Number("official_D")), 0.0051, "D " + where);
            Near(row.Number("official_I"), field.Inclination.Degrees, 0.0051, "I " + where);

            // 0.00000001 degrees: printed to that.
            Near(0.0, Around(field.Declination.Degrees - row.Number("geographiclib_D")), 1e-8, "D by GeographicLib " + where);
            Near(row.Number("geographiclib_I"), field.Inclination.Degrees, 1e-8, "I by GeographicLib " + where);
        }
    }

    [Fact]
    public void Igrf14_gives_GeographicLib_declinations_at_15_cities_and_12_dates()
    {
        var rows = GeomagAuthority.Rows("igrf_declination_cities.csv").ToList();
        Assert.Equal(180, rows.Count);
        foreach (var row in rows)
        {
            var point = GeoPoint.FromDegrees(row.Number("lat_deg"), row.Number("lon_deg"), row.Number("height_km") * 1000.0);
            var answer = Assert.IsType<NorthAnswer.Known>(MagneticField.At(point, row.Number("decimal_year")));
            var where = $"{row["city"]} {row["decimal_year"]}";
            Assert.Equal("IGRF-14", answer.ModelName);

            // 0.0000006 degrees (0.00001 would do) and 0.0006 nT: printed to 0.000001 degree and 0.001 nT, so half of that and a little.
            Near(row.Number("D_geographiclib_IGRF14_deg"), answer.Declination.Degrees, 6e-7, "D " + where);
            Near(row.Number("I_IGRF14_deg"), answer.Inclination.Degrees, 6e-7, "I " + where);
            Near(row.Number("H_IGRF14_nT"), answer.HorizontalIntensityNanotesla, 6e-4, "H " + where);
            Near(row.Number("F_IGRF14_nT"), answer.TotalIntensityNanotesla, 6e-4, "F " + where);
        }
    }

    [Fact]
    public void Igrf14_gives_GeographicLib_fields_at_the_poles_and_all_over_the_world()
    {
        var rows = GeomagAuthority.Rows("igrf14_world.csv").ToList();
        Assert.Equal(296, rows.Count);
        foreach (var row in rows)
        {
            var point = GeoPoint.FromDegrees(row.Number("lat_deg"), row.Number("lon_deg"), row.Number("height_m"));
            var field = GeomagneticModel.Igrf14.At(point, row.Number("decimal_year")).Field;
            var where = $"{row["decimal_year"]} {row["lat_deg"]} {row["lon_deg"]} {row["height_m"]}";

            // 0.0000006 nT: printed to 0.000001 nT, so half of that, and some for the rounding of the sums.
            Near(row.Number("X_nT"), field.NorthNanotesla, 6e-7, "X " + where);
            Near(row.Number("Y_nT"), field.EastNanotesla, 6e-7, "Y " + where);
            Near(row.Number("Z_nT"), field.DownNanotesla, 6e-7, "Z " + where);
        }
    }

    [Fact]
    public void Igrf14_and_its_predecessor_agree_where_both_are_definitive()
    {
        // A second program and an older generation: GMT 6.4.0 with its built-in IGRF-13, the same coefficients up to 2015.
        // 0.00001 degrees: printed to 0.000001, and GMT's own sum differs from GeographicLib's by up to 0.000005.
        foreach (var row in GeomagAuthority.Rows("igrf_declination_cities.csv").Where(r => r.Number("decimal_year") <= 2015.0))
        {
            var point = GeoPoint.FromDegrees(row.Number("lat_deg"), row.Number("lon_deg"));
            var ours = GeomagneticModel.Igrf14.At(point, row.Number("decimal_year")).Field.Declination.Degrees;
            Near(row.Number("D_gmt640_builtin_IGRF13_deg"), ours, 1e-5, $"{row["city"]} {row["decimal_year"]}");
        }
    }

    [Theory]
    [InlineData(1900.0)]
    [InlineData(1962.3)]
    [InlineData(2024.9)]
    [InlineData(2027.5)]
    public void The_yearly_change_is_the_slope_of_the_declination(double year)
    {
        // Central difference over 0.02 year, inside one 5-year stretch: its own error is D'''h²/6, here below 1e-8 degrees a year;
        // rounding adds about 1e-11/0.01. Hence 1e-7 degrees a year.
        var model = year < 2025.0 ? GeomagneticModel.Igrf14 : GeomagneticModel.Wmm2025;
        var low = Math.Floor(year / 5.0) * 5.0 + 0.01 > year ? year : year - 0.01;
        var high = low + 0.02;
        foreach (var (latitude, longitude) in new[] { (69.65, 18.96), (42.24, -8.72), (-1.29, 36.82), (-54.80, -68.30) })
        {
            var point = GeoPoint.FromDegrees(latitude, longitude);
            var slope = (model.At(point, high).Field.Declination.Degrees - model.At(point, low).Field.Declination.Degrees) / (high - low);
            var middle = model.At(point, (low + high) / 2.0).DeclinationChangePerYear.Degrees;
            Near(slope, middle, 1e-7, $"{latitude} {longitude} {year}");
        }
    }

    [Fact]
    public void The_poles_are_places_like_any_other()
    {
        foreach (var model in new[] { GeomagneticModel.Igrf14, GeomagneticModel.Wmm2025 })
        {
            foreach (var pole in new[] { 90.0, -90.0 })
            {
                for (var longitude = -180.0; longitude <= 180.0; longitude += 45.0)
                {
                    // A millionth of a degree is 0.11 m: there the field differs by less than 0.001 nT (it changes by some 5 nT a kilometre).
                    var at = model.At(GeoPoint.FromDegrees(pole, longitude), 2025.0).Field;
                    var beside = model.At(GeoPoint.FromDegrees(pole - Math.Sign(pole) * 1e-6, longitude), 2025.0).Field;
                    Near(beside.NorthNanotesla, at.NorthNanotesla, 1e-3, $"X {pole} {longitude}");
                    Near(beside.EastNanotesla, at.EastNanotesla, 1e-3, $"Y {pole} {longitude}");
                    Near(beside.DownNanotesla, at.DownNanotesla, 1e-3, $"Z {pole} {longitude}");

                    // At the pole the same horizontal arrow is seen from every meridian: turning the meridian turns D by as much.
                    var zero = model.At(GeoPoint.FromDegrees(pole, 0.0), 2025.0).Field;
                    Near(zero.HorizontalNanotesla, at.HorizontalNanotesla, 1e-6, $"H {pole} {longitude}");
                    var turned = Around(at.Declination.Degrees - zero.Declination.Degrees - Math.Sign(pole) * longitude);
                    Near(0.0, turned, 1e-9, $"D {pole} {longitude}");
                }
            }
        }
    }

    private static void Near(double expected, double actual, double tolerance, string what) =>
        Assert.True(Math.Abs(expected - actual) <= tolerance, $"{what}: expected {expected:R}, got {actual:R}");

    private static double Around(double degrees) => Angle.FromDegrees(degrees).AroundZero().Degrees;
}
