namespace SunLessons.Magnetism;

/// <summary>How uncertain a model's declination is, given the field it computed. All sizes were fixed from their sources before any total was formed.</summary>
internal static class DeclinationErrors
{
    // NOAA and BGS, error model of WMM2025: one standard deviation of the declination is sqrt(0.26² + (5417/H)²) degrees, H in nT.
    private const double Wmm2025ConstantDegrees = 0.26;
    private const double Wmm2025FieldDegreesNanotesla = 5417.0;

    // Beggan (2022), Earth, Planets and Space 74:17, abstract: misfit to repeat stations and observatories 1980 to 2021. The 68.3 % interval ...
    private const double IgrfNorthNanotesla68 = 87.0;
    private const double IgrfEastNanotesla68 = 73.0;

    // ... and, because the residuals have long tails (Laplacian), the larger standard deviations.
    private const double IgrfNorthNanoteslaDeviation = 144.0;
    private const double IgrfEastNanoteslaDeviation = 136.0;

    // A direction of which nothing at all is known is spread evenly over ±180°: standard deviation 180°/√3 = 103.9°.
    // Both laws above are first-order and grow beyond it as H goes to zero, where they mean just that.
    private static readonly double NothingKnownDegrees = 180.0 / Math.Sqrt(3.0);

    /// <summary>WMM2025: the published law gives one standard deviation, so both sizes are the same.</summary>
    public static (Angle Within68Percent, Angle StandardDeviation) Wmm2025(FieldVector field)
    {
        var byField = Wmm2025FieldDegreesNanotesla / field.HorizontalNanotesla;
        var degrees = Limited(Math.Sqrt(Wmm2025ConstantDegrees * Wmm2025ConstantDegrees + byField * byField));
        return (degrees, degrees);
    }

    /// <summary>IGRF: errors of X and Y carried to D = atan2(Y, X) in first order, taken as independent.</summary>
    public static (Angle Within68Percent, Angle StandardDeviation) Igrf(FieldVector field) =>
        (Carried(field, IgrfNorthNanotesla68, IgrfEastNanotesla68), Carried(field, IgrfNorthNanoteslaDeviation, IgrfEastNanoteslaDeviation));

    private static Angle Carried(FieldVector field, double northNanotesla, double eastNanotesla)
    {
        // dD = (X dY − Y dX) / H²
        var h = field.HorizontalNanotesla;
        var fromEast = field.NorthNanotesla / h * (eastNanotesla / h);
        var fromNorth = field.EastNanotesla / h * (northNanotesla / h);
        return Limited(Math.Sqrt(fromEast * fromEast + fromNorth * fromNorth) * (180.0 / Math.PI));
    }

    // Written so that infinity and "not a number" (H = 0) both end as "nothing known".
    private static Angle Limited(double degrees) =>
        Angle.FromDegrees(degrees < NothingKnownDegrees ? degrees : NothingKnownDegrees);
}
