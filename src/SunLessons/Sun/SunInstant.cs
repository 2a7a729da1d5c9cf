using System.Globalization;
using NodaTime;

namespace SunLessons.Sun;

/// <summary>
/// An instant as the sky needs it: UT1, which follows the Earth's turning, and TT − UT1 (delta-T), which leads to the even time of the
/// Sun's motion. The default value is J2000.0 with UT1 equal to TT.
/// </summary>
public readonly record struct SunInstant
{
    // 31 December 9999, 0h: the calendar's end.
    private const double LastJulianDate = 5373483.5;

    private SunInstant(double ut1Days, double ttMinusUt1, double deltaTUncertainty, double ut1Uncertainty)
    {
        Ut1DaysFromJ2000 = ut1Days;
        TtMinusUt1Seconds = ttMinusUt1;
        DeltaTUncertaintySeconds = deltaTUncertainty;
        Ut1UncertaintySeconds = ut1Uncertainty;
    }

    /// <summary>UT1 in days from 2000 January 1, 12h UT1 (Julian date 2451545).</summary>
    public double Ut1DaysFromJ2000 { get; }

    /// <summary>TT minus UT1, seconds.</summary>
    public double TtMinusUt1Seconds { get; }

    /// <summary>Standard uncertainty of TT − UT1, seconds; zero where both times were given. A second of it moves the Sun by 0.04″.</summary>
    public double DeltaTUncertaintySeconds { get; }

    /// <summary>
    /// Standard uncertainty of UT1 itself, seconds; zero where UT1 was given. A second of it is a second of the dial.
    /// </summary>
    public double Ut1UncertaintySeconds { get; }

    /// <summary>UT1 as a Julian date, days; as a double it resolves 0.00004 s.</summary>
    public double Ut1JulianDate => AstronomicalConstants.J2000 + Ut1DaysFromJ2000;

    /// <summary>TT in days from J2000.0.</summary>
    public double TtDaysFromJ2000 => Ut1DaysFromJ2000 + TtMinusUt1Seconds / AstronomicalConstants.SecondsPerDay;

    /// <summary>An instant whose UT1 and TT − UT1 are known, for checking against an almanac. No model is involved.</summary>
    /// <param name="ut1JulianDate">UT1 as a Julian date, days, 0 to 5373483.5 (4713 before our era to the year 9999).</param>
    /// <param name="ttMinusUt1Seconds">TT − UT1, seconds, −100,000 to +100,000 (about a day; the past of written history needs 50,000).</param>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its range or is none.</exception>
    public static SunInstant FromUt1(double ut1JulianDate, double ttMinusUt1Seconds)
    {
        if (!(ut1JulianDate >= 0.0 && ut1JulianDate <= LastJulianDate))
        {
            throw new ArgumentOutOfRangeException(
                nameof(ut1JulianDate),
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"UT1 {ut1JulianDate} is outside the Julian dates 0 to {LastJulianDate}. Give days, such as 2461273.5 for 0h UT1 on 21 August 2026."));
        }

        return ttMinusUt1Seconds is >= -100_000.0 and <= 100_000.0
            ? new SunInstant(ut1JulianDate - AstronomicalConstants.J2000, ttMinusUt1Seconds, 0.0, 0.0)
            : throw new ArgumentOutOfRangeException(
                nameof(ttMinusUt1Seconds),
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"TT-UT1 {ttMinusUt1Seconds} seconds is outside -100000 to +100000 seconds. Give seconds, such as 69.1 for 2026."));
    }

    /// <summary>An instant of civil time, with UT1 and TT − UT1 by <see cref="DeltaT"/>.</summary>
    public static SunInstant FromInstant(Instant instant)
    {
        var model = DeltaT.At(instant);
        var days = (instant - DeltaT.Noon2000).TotalDays + model.Ut1MinusUtcSeconds / AstronomicalConstants.SecondsPerDay;
        return new SunInstant(days, model.TtMinusUt1Seconds, model.TtMinusUt1UncertaintySeconds, model.Ut1UncertaintySeconds);
    }

    /// <summary>Another instant some UT1 days later (earlier if negative), with the same TT − UT1: for steps of a day or two.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The sum lies outside Julian dates 0 to 5373483.5, or the number is none.</exception>
    public SunInstant PlusDays(double days)
    {
        var sum = Ut1JulianDate + days;
        return sum >= 0.0 && sum <= LastJulianDate
            ? new SunInstant(Ut1DaysFromJ2000 + days, TtMinusUt1Seconds, DeltaTUncertaintySeconds, Ut1UncertaintySeconds)
            : throw new ArgumentOutOfRangeException(
                nameof(days),
                string.Create(CultureInfo.InvariantCulture, $"A step of {days} days leads outside the Julian dates 0 to {LastJulianDate}. Give a step of a few days."));
    }

    /// <summary>The civil instant, by the same model as <see cref="FromInstant"/>; given TT − UT1 is not used. Good to a microsecond.</summary>
    public Instant ToInstant()
    {
        // UT1 - UTC is below a second and changes by less than 0.01 s in a second, except at a leap second itself.
        var ut1 = DeltaT.Noon2000 + Duration.FromDays(Ut1DaysFromJ2000);
        var guess = ut1 - Duration.FromSeconds(DeltaT.At(ut1).Ut1MinusUtcSeconds);
        return ut1 - Duration.FromSeconds(DeltaT.At(guess).Ut1MinusUtcSeconds);
    }
}
