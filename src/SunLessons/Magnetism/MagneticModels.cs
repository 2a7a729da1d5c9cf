namespace SunLessons.Magnetism;

/// <summary>Which field model answers when: the one place where that rule is written down.</summary>
public static class MagneticModels
{
    /// <summary>
    /// The rule, in order of time and without gaps. IGRF-14 from 1900.0 up to (not including) 2025.0; WMM2025 from 2025.0 to 2030.0 inclusive.
    /// IGRF-14 carries a forecast to 2030 of its own, which is not used: two answers for one day would have to be explained away.
    /// A later model is one more line here and one more table under Tables/Magnetism.
    /// </summary>
    public static IReadOnlyList<ModelSpan> Rule { get; } =
    [
        new(
            "IGRF-14",
            1900.0,
            2025.0,
            () => GeomagneticModel.Igrf14,
            DeclinationErrors.Igrf,
            "Beggan 2022, Earth, Planets and Space 74:17: 68.3 % of ground stations within 87 nT north and 73 nT east, 1980 to 2021"),
        new(
            "WMM2025",
            2025.0,
            2030.0,
            () => GeomagneticModel.Wmm2025,
            DeclinationErrors.Wmm2025,
            "error model of WMM2025, NOAA and BGS: sqrt(0.26^2 + (5417 / H)^2) degrees, H in nT, one standard deviation"),
    ];

    /// <summary>Decimal year of the earliest moment that any model answers for: 1900.0.</summary>
    public static double FirstYear => Rule[0].ValidFromYear;

    /// <summary>Decimal year of the last moment that any model answers for: 2030.0.</summary>
    public static double LastYear => Rule[^1].ValidToYear;

    /// <summary>The line of the rule for a year, or null outside <see cref="FirstYear"/> to <see cref="LastYear"/>.</summary>
    internal static ModelSpan? For(double decimalYear)
    {
        if (decimalYear < FirstYear || decimalYear > LastYear)
        {
            return null;
        }

        for (var k = Rule.Count - 1; k > 0; k--)
        {
            if (decimalYear >= Rule[k].ValidFromYear)
            {
                return Rule[k];
            }
        }

        return Rule[0];
    }
}
