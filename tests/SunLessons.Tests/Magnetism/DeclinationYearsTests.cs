using SunLessons.Magnetism;

namespace SunLessons.Tests.Magnetism;

/// <summary>The years in which a place had a declination, against IGRF-14 by GeographicLib (authorities/geomag).</summary>
public sealed class DeclinationYearsTests
{
    // Each printed declination is met in the year it is printed for; to a day, times the yearly change, and 6e-7 degrees of print.
    [Fact]
    public void Every_printed_declination_is_found_in_its_year()
    {
        var rows = GeomagAuthority.Rows("igrf_declination_cities.csv").Where(r => r.Number("decimal_year") < 2025.0 && r["height_km"] == "0").ToList();
        Assert.True(rows.Count > 100, $"{rows.Count} rows");
        var turned = 0;
        foreach (var row in rows)
        {
            var point = GeoPoint.FromDegrees(row.Number("lat_deg"), row.Number("lon_deg"));
            var year = row.Number("decimal_year");
            var declination = MagneticDeclination.FromDegrees(row.Number("D_geographiclib_IGRF14_deg"));
            var known = (NorthAnswer.Known)MagneticField.At(point, year);
            var allowed = 2.0 / 365.0 + 1e-5 / Math.Max(1e-3, Math.Abs(known.YearlyChange.Degrees));

            // At the models' very beginning and where the needle turns back the printed digit may lie on the side to which the curve does not come.
            double Off(double at) => ((NorthAnswer.Known)MagneticField.At(point, at)).Declination.Degrees - declination.Degrees;
            var turns = year == 1900.0 || Off(year - 0.5) * Off(year + 0.5) > 0.0;
            turned += turns ? 1 : 0;
            Assert.True(turns || DeclinationYears.With(point, declination, Angle.Zero).Any(span => Math.Abs(span.FromYear - year) < allowed && span.FromYear == span.ToYear), $"{row["city"]} {year}");
            Assert.Contains(DeclinationYears.With(point, declination, Angle.FromDegrees(0.5)), span => span.FromYear <= year && year <= span.ToYear);
        }

        Assert.True(turned < 0.3 * rows.Count, $"{turned} of {rows.Count} rows could not be asked for a moment");
    }

    // A needle that went one way and came back has two spans; their ends lie where the curve says, and between them it is further off.
    [Fact]
    public void A_needle_that_turned_back_gives_two_spans()
    {
        var stJohns = GeoPoint.FromDegrees(47.56, -52.71);
        var curve = DriftCurve.For(stJohns, stepYears: 0.1);
        var least = curve.Points.MinBy(p => p.Declination.Degrees);
        var wanted = MagneticDeclination.FromDegrees(curve.Points[0].Declination.Degrees - 0.1);
        Assert.True(least.Declination.Degrees < wanted.Degrees - 0.3, "the needle went west before it came back");
        var spans = DeclinationYears.With(stJohns, wanted, Angle.FromDegrees(0.25));
        Assert.Equal(2, spans.Count);
        Assert.Equal(1900.0, spans[0].FromYear);
        foreach (var point in curve.Points)
        {
            var inside = spans.Any(s => s.FromYear - 0.01 <= point.DecimalYear && point.DecimalYear <= s.ToYear + 0.01);
            var off = Math.Abs(point.Declination.Degrees - wanted.Degrees);

            // A day of its drift, and the step of a model's change.
            Assert.True(inside ? off < 0.26 : off > 0.24, $"{point.DecimalYear}: {off}");
        }
    }

    [Fact]
    public void A_declination_that_the_place_never_had_gives_no_years()
    {
        Assert.Empty(DeclinationYears.With(GeoPoint.FromDegrees(42.24, -8.72), MagneticDeclination.FromDegrees(40.0), Angle.FromDegrees(1.0)));
        var whole = Assert.Single(DeclinationYears.With(GeoPoint.FromDegrees(-1.29, 36.82), MagneticDeclination.FromDegrees(-3.0), Angle.FromDegrees(20.0)));
        Assert.Equal((1900.0, 2030.0), (whole.FromYear, whole.ToYear));
        var error = Assert.Throws<ArgumentOutOfRangeException>(() => DeclinationYears.With(default, default, Angle.FromDegrees(-1.0)));
        Assert.StartsWith("An angle of -1° is outside 0 to 90 degrees; give how far from the declination still counts", error.Message, StringComparison.Ordinal);
    }
}
