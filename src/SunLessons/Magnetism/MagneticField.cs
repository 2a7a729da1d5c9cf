using System.Globalization;
using NodaTime;

namespace SunLessons.Magnetism;

/// <summary>
/// Where a compass needle points, by the field models in use and their rule (<see cref="MagneticModels.InUse"/>). The models hold the field of the
/// Earth's core; rock and iron nearby, and magnetic storms, come on top of it.
/// </summary>
public static class MagneticField
{
    /// <summary>What to do about an expired model, as the middle of a sentence.</summary>
    internal const string NextModel = "add the next model's coefficient file with \"sunlessons data add\" or get a newer version of this program";

    /// <summary>Lowest height above the ellipsoid that is answered, metres (WMM2025 specification).</summary>
    public const double LowestHeightMeters = -1_000.0;

    /// <summary>Greatest height above the ellipsoid that is answered, metres (WMM2025 specification).</summary>
    public const double GreatestHeightMeters = 850_000.0;

    /// <summary>Magnetic north at a place in a decimal year (see <see cref="DecimalYears"/>).</summary>
    /// <remarks>At the poles themselves "true north" is taken along the meridian of the longitude given.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">A year that is not a finite number, or a height outside −1 km to 850 km.</exception>
    public static NorthAnswer At(GeoPoint point, double decimalYear) => MagneticModels.InUse.At(point, decimalYear);

    /// <summary>Magnetic north at a place on a day, taken at its start.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A height outside −1 km to 850 km.</exception>
    public static NorthAnswer At(GeoPoint point, LocalDate date) => At(point, DecimalYears.Of(date));

    /// <summary>Magnetic north at a place at an instant.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A height outside −1 km to 850 km.</exception>
    public static NorthAnswer At(GeoPoint point, Instant instant) => At(point, DecimalYears.Of(instant));

    /// <summary>
    /// Whether the last model expires within a year of <paramref name="now"/>, or has expired already: time to look for the next one.
    /// </summary>
    public static bool ExpiresSoon(Instant now) => DecimalYears.Of(now) >= MagneticModels.InUse.LastYear - 1.0;

    /// <summary>Whether the last model has expired at <paramref name="now"/>.</summary>
    public static bool HasExpired(Instant now) => DecimalYears.Of(now) > MagneticModels.InUse.LastYear;

    /// <summary>One sentence to show a person while <see cref="ExpiresSoon"/>, else null.</summary>
    public static string? ExpiryNotice(Instant now)
    {
        var last = MagneticModels.InUse.Rule[^1];
        var until = last.ValidToYear.ToString("0.0", CultureInfo.InvariantCulture);
        return HasExpired(now)
            ? $"The compass model {last.Name} expired at {until}; {NextModel}, or set the dial by the Sun."
            : ExpiresSoon(now)
                ? $"The compass model {last.Name} expires at {until}, less than a year from now; {NextModel} before then."
                : null;
    }
}
