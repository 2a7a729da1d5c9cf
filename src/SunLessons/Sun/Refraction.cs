using System.Globalization;

namespace SunLessons.Sun;

/// <summary>
/// How far the air lifts a thing in the sky. Never part of a position unless a caller adds it. A dial near sunrise feels it: half a degree at the horizon.
/// </summary>
/// <remarks>Both formulas are for 1010 hPa and 10 °C and agree within 0.1′ above the horizon; real air differs by some per cent, near the horizon by much more.</remarks>
public static class Refraction
{
    /// <summary>The refraction that almanacs put at the horizon for rising and setting: 34′.</summary>
    public static Angle AtHorizon => Angle.FromArcSeconds(34.0 * 60.0);

    /// <summary>The same in other air: 34′ scaled by P/1010 and 283/(273 + T), as the two formulas below are.</summary>
    /// <param name="pressureHectopascals">Pressure at the place (not reduced to sea level), 0 to 1100 hPa.</param>
    /// <param name="temperatureCelsius">Temperature of the air, −90 to 60 °C.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value outside its range.</exception>
    public static Angle AtHorizonIn(double pressureHectopascals, double temperatureCelsius) => Minutes(34.0, pressureHectopascals, temperatureCelsius);

    /// <summary>
    /// The lift at a GEOMETRIC altitude: R = 1.02′ / tan(h + 10.3 / (h + 5.11)), h in degrees (Saemundsson, Sky and Telescope 72 (1986) 70;
    /// Meeus 1998, equation 16.4), scaled by P/1010 and 283/(273 + T). Always added.
    /// </summary>
    /// <param name="geometric">Altitude without air, −1.5° to 90°.</param>
    /// <param name="pressureHectopascals">Pressure at the place (not reduced to sea level), 0 to 1100 hPa.</param>
    /// <param name="temperatureCelsius">Temperature of the air, −90 to 60 °C.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value outside its range: below −1.5° the Sun is down whatever the air does.</exception>
    public static Angle FromGeometric(Altitude geometric, double pressureHectopascals = 1010.0, double temperatureCelsius = 10.0)
    {
        var h = Above(geometric);
        return Minutes(1.02 / Tan(h + 10.3 / (h + 5.11)), pressureHectopascals, temperatureCelsius);
    }

    /// <summary>
    /// The lift at an OBSERVED altitude: R = 1′ / tan(h + 7.31 / (h + 4.4)), h in degrees (Bennett, Journal of Navigation 35 (1982) 255; Meeus 1998,
    /// equation 16.3), scaled in the same way. Subtract it from what was observed.
    /// </summary>
    /// <param name="observed">Altitude through the air, −1.5° to 90°.</param>
    /// <param name="pressureHectopascals">Pressure at the place (not reduced to sea level), 0 to 1100 hPa.</param>
    /// <param name="temperatureCelsius">Temperature of the air, −90 to 60 °C.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value outside its range.</exception>
    public static Angle FromObserved(Altitude observed, double pressureHectopascals = 1010.0, double temperatureCelsius = 10.0)
    {
        var h = Above(observed);
        return Minutes(1.0 / Tan(h + 7.31 / (h + 4.4)), pressureHectopascals, temperatureCelsius);
    }

    private static double Tan(double degrees) => Math.Tan(degrees * (Math.PI / 180.0));

    private static double Above(Altitude altitude) => altitude.Degrees >= -1.5
        ? altitude.Degrees
        : throw new ArgumentOutOfRangeException(
            nameof(altitude),
            $"Altitude {altitude.Degrees.ToString("0.###", CultureInfo.InvariantCulture)} degrees is outside -1.5 to +90 degrees, where refraction is known. The Sun is below the horizon.");

    private static Angle Minutes(double minutes, double pressure, double temperature)
    {
        if (!(pressure >= 0.0 && pressure <= 1100.0))
        {
            throw new ArgumentOutOfRangeException(
                nameof(pressure),
                $"Pressure {pressure.ToString("0.###", CultureInfo.InvariantCulture)} hPa is outside 0 to 1100 hPa. Give the pressure at the place in hectopascals, such as 1010.");
        }

        if (!(temperature >= -90.0 && temperature <= 60.0))
        {
            throw new ArgumentOutOfRangeException(
                nameof(temperature),
                $"Temperature {temperature.ToString("0.###", CultureInfo.InvariantCulture)} degrees Celsius is outside -90 to +60. Give degrees Celsius, such as 10.");
        }

        // Beyond 89.9 degrees the formulas pass through zero to a few hundredths of a second of arc below it: nothing is lifted there.
        return Angle.FromArcSeconds(Math.Max(0.0, minutes) * 60.0 * (pressure / 1010.0) * (283.0 / (273.0 + temperature)));
    }
}
