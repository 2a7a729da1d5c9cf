using SunLessons.Magnetism;

namespace SunLessons.Tests.Magnetism;

/// <summary>The sizes of the declination's uncertainty, worked by hand from the published laws.</summary>
public class DeclinationUncertaintyTests
{
    [Fact]
    public void Wmm2025_follows_the_published_law()
    {
        // sqrt(0.26² + (5417/H)²) degrees (NOAA and BGS, error model of WMM2025). Official test point 14 N 143 E, 66 km, 2025.0:
        // H = 35003.635649 nT, 5417/H = 0.1547553, square 0.0239492; 0.26² = 0.0676; the root of the sum 0.302571.
        var answer = Known(GeoPoint.FromDegrees(14.0, 143.0, 66_000.0), 2025.0);
        Assert.Equal(0.302571, answer.StandardUncertainty.Degrees, 6);
        Assert.Equal(answer.StandardUncertainty, answer.StandardDeviation);

        // In the caution zone, 80 N 96 W, 48 km: H = 2164.285547 nT, 5417/H = 2.5029044 -> 2.516373.
        Assert.Equal(2.516373, Known(GeoPoint.FromDegrees(80.0, -96.0, 48_000.0), 2025.0).StandardUncertainty.Degrees, 6);
    }

    [Fact]
    public void Igrf14_carries_the_errors_of_north_and_east_to_the_direction()
    {
        // Beggan 2022: 68.3 % within 87 nT in X and 73 nT in Y; sigma(D)² = (Y·87)² + (X·73)², over H⁴. London 1900 (authorities/geomag):
        // D = -16.514370, H = 18452.807 nT, so X = H cos D = 17691.68, Y = H sin D = -5245.26.
        // In parts across the needle: 73 cos D = 69.98895, 87 sin D = -24.7298; root of squares 74.2293 nT; over H 0.004022658 = 0.230481 degrees.
        var london = Known(GeoPoint.FromDegrees(51.5074, -0.1278), 1900.0);
        Assert.Equal(0.2305, london.StandardUncertainty.Degrees, 4);

        // Standard deviations of the same study, 144 and 136 nT: 136 cos D = 130.390, 144 sin D = -40.932; 136.664 nT -> 0.42434 degrees.
        Assert.Equal(0.4243, london.StandardDeviation.Degrees, 4);
    }

    [Fact]
    public void Igrf14_errors_follow_the_needle_where_it_points_east_or_west()
    {
        // Where the needle points due east or west an error of X turns it, not one of Y. At the pole the meridian can be chosen so that it does.
        var zero = Known(GeoPoint.FromDegrees(-90.0, 0.0), 2010.0);
        var d = zero.Declination.Degrees;

        // Southern pole: D grows against the longitude (tested elsewhere), so longitude = D - 90 (in one turn) makes the needle point due east.
        var longitude = Angle.FromDegrees(d - 90.0).AroundZero().Degrees;
        var east = Known(GeoPoint.FromDegrees(-90.0, longitude), 2010.0);
        Assert.Equal(90.0, east.Declination.Degrees, 9);
        Assert.Equal(Angle.FromRadians(87.0 / east.HorizontalIntensityNanotesla).Degrees, east.StandardUncertainty.Degrees, 9);
    }

    [Fact]
    public void Where_the_level_field_dies_the_uncertainty_says_that_nothing_is_known()
    {
        // Walk to the northern dip pole of 2025 by Newton steps on (X, Y) with numerical derivatives.
        double latitude = 85.8, longitude = 139.3;
        for (var i = 0; i < 30; i++)
        {
            var f = GeomagneticModel.Wmm2025.At(GeoPoint.FromDegrees(latitude, longitude), 2025.0).Field;
            var a = GeomagneticModel.Wmm2025.At(GeoPoint.FromDegrees(latitude + 1e-4, longitude), 2025.0).Field;
            var b = GeomagneticModel.Wmm2025.At(GeoPoint.FromDegrees(latitude, longitude + 1e-4), 2025.0).Field;
            double xa = (a.NorthNanotesla - f.NorthNanotesla) / 1e-4, ya = (a.EastNanotesla - f.EastNanotesla) / 1e-4;
            double xb = (b.NorthNanotesla - f.NorthNanotesla) / 1e-4, yb = (b.EastNanotesla - f.EastNanotesla) / 1e-4;
            var det = xa * yb - xb * ya;
            latitude -= (f.NorthNanotesla * yb - f.EastNanotesla * xb) / det;
            longitude -= (xa * f.EastNanotesla - ya * f.NorthNanotesla) / det;
        }

        var answer = Known(GeoPoint.FromDegrees(latitude, longitude), 2025.0);
        Assert.True(answer.HorizontalIntensityNanotesla < 0.01, $"H {answer.HorizontalIntensityNanotesla} at {latitude} {longitude}");

        // The pole of WMM2025 lies at 85.762 N 139.298 E in 2025.0 (NOAA's list of pole positions; from memory, to 0.01 degree).
        Assert.Equal(85.762, latitude, 0.01);
        Assert.Equal(139.298, longitude, 0.05);

        // A direction spread evenly over a turn: 180/sqrt(3).
        Assert.Equal(180.0 / Math.Sqrt(3.0), answer.StandardUncertainty.Degrees, 9);
        Assert.Equal(CompassZone.Blackout, answer.Zone);
        Assert.True(double.IsFinite(answer.YearlyChange.Degrees));
    }

    [Fact]
    public void No_field_at_all_gives_numbers_and_not_nonsense()
    {
        var nothing = default(FieldSample);
        Assert.Equal(0.0, nothing.DeclinationChangePerYear.Degrees);
        Assert.Equal(0.0, nothing.Field.Declination.Degrees);
        Assert.Equal(0.0, nothing.Field.Inclination.Degrees);
    }

    private static NorthAnswer.Known Known(GeoPoint point, double year) => Assert.IsType<NorthAnswer.Known>(MagneticField.At(point, year));
}
