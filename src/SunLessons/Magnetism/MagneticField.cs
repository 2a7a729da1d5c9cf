using System.Globalization;
using NodaTime;

namespace SunLessons.Magnetism;

/// <summary>
/// Where a compass needle points, by the field models and the rule of <see cref="MagneticModels.Rule"/>. The models hold the field of the
/// Earth's core; rock and iron nearby, and magnetic storms, come on top of it.
/// </summary>
public static class MagneticField
{
    /// <summary>Lowest height above the ellipsoid that is answered, metres (WMM2025 specification).</summary>
    public const double LowestHeightMeters = -1_000.0;

    /// <summary>Greatest height above the ellipsoid that is answered, metres (WMM2025 specification).</summary>
    public const double GreatestHeightMeters = 850_000.0;

    /// <summary>Magnetic north at a place in a decimal year (see <see cref="DecimalYears"/>).</summary>
    /// <remarks>At the poles themselves "true north" is taken along the meridian of the longitude given.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">A year that is not a finite number, or a height outside −1 km to 850 km.</exception>
    public static NorthAnswer At(GeoPoint point, double decimalYear)
    {
        if (!double.IsFinite(decimalYear))
        {
            throw DecimalYears.Outside(decimalYear, "write a decimal year such as 2026.5.");
        }

        if (!(point.HeightMeters >= LowestHeightMeters && point.HeightMeters <= GreatestHeightMeters))
        {
            throw new ArgumentOutOfRangeException(
                nameof(point),
                $"Height {point.HeightMeters.ToString("0.###", CultureInfo.InvariantCulture)} m is outside -1000 to 850000 m above the ellipsoid. Give metres, not feet or kilometres; 0 will do for every dial.");
        }

        return MagneticModels.For(decimalYear) is { } span
            ? Known(span, point, decimalYear)
            : decimalYear < MagneticModels.FirstYear
                ? new NorthAnswer.BeforeModels(point, decimalYear, Known(MagneticModels.Rule[0], point, MagneticModels.FirstYear))
                : new NorthAnswer.AfterModels(point, decimalYear, Known(MagneticModels.Rule[^1], point, MagneticModels.LastYear));
    }

    /// <summary>Magnetic north at a place on a day, taken at its start.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A height outside −1 km to 850 km.</exception>
    public static NorthAnswer At(GeoPoint point, LocalDate date) => At(point, DecimalYears.Of(date));

    /// <summary>Magnetic north at a place at an instant.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A height outside −1 km to 850 km.</exception>
    public static NorthAnswer At(GeoPoint point, Instant instant) => At(point, DecimalYears.Of(instant));

    /// <summary>
    /// Whether the last model expires within a year of <paramref name="now"/>, or has expired already: time to look for the next one.
    /// </summary>
    public static bool ExpiresSoon(Instant now) => DecimalYears.Of(now) >= MagneticModels.LastYear - 1.0;

    /// <summary>Whether the last model has expired at <paramref name="now"/>.</summary>
    public static bool HasExpired(Instant now) => DecimalYears.Of(now) > MagneticModels.LastYear;

    /// <summary>One sentence to show a person while <see cref="ExpiresSoon"/>, else null.</summary>
    public static string? ExpiryNotice(Instant now)
    {
        var last = MagneticModels.Rule[^1];
        var until = last.ValidToYear.ToString("0.0", CultureInfo.InvariantCulture);
        return HasExpired(now)
            ? $"The compass model {last.Name} expired at {until}; get a newer version of this program, or set the dial by the Sun."
            : ExpiresSoon(now)
                ? $"The compass model {last.Name} expires at {until}, less than a year from now; get a newer version of this program before then."
                : null;
    }

    private static NorthAnswer.Known Known(ModelSpan span, GeoPoint point, double decimalYear) =>
        new(point, decimalYear, span, span.Model.At(point, decimalYear));
}
