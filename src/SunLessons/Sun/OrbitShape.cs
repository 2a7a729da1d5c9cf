using System.Globalization;

namespace SunLessons.Sun;

/// <summary>
/// What makes the equation of time: how oval the Earth's orbit is, how far its axis leans, and when the Earth is nearest to the Sun.
/// The default value is a round orbit and an upright axis: no equation of time
/// but the 2.6 s of <see cref="EquationOfTimeParts.BeyondTwoBodies"/>.
/// </summary>
public readonly record struct OrbitShape
{
    private readonly double? _perihelionLongitudeDegrees;

    private OrbitShape(double eccentricity, Angle tilt, int perihelionDay, double? perihelionLongitudeDegrees)
    {
        Eccentricity = eccentricity;
        Tilt = tilt;
        PerihelionDayOfYear = perihelionDay;
        _perihelionLongitudeDegrees = perihelionLongitudeDegrees;
    }

    /// <summary>Eccentricity of the orbit, 0 (round) to 0.05; 0.0167 in our age.</summary>
    public double Eccentricity { get; }

    /// <summary>Tilt of the axis against the upright on the orbit, 0° to 30°; 23.44° in our age.</summary>
    public Angle Tilt { get; }

    /// <summary>The day of the year on which the Earth is nearest to the Sun, 1 to 366; about 3 in our age.</summary>
    public int PerihelionDayOfYear { get; }

    /// <summary>A shape of one's own, for finding out what each cause does.</summary>
    /// <param name="eccentricity">0 (round) to 0.05, without unit.</param>
    /// <param name="tilt">0° to 30°.</param>
    /// <param name="perihelionDayOfYear">1 to 366, counted in the year of the instant that is asked about; noon UT of that day.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value outside its range.</exception>
    public static OrbitShape Of(double eccentricity, Angle tilt, int perihelionDayOfYear)
    {
        static string Text(double value) => value.ToString("0.######", CultureInfo.InvariantCulture);
        if (!(eccentricity >= 0.0 && eccentricity <= 0.05))
        {
            throw new ArgumentOutOfRangeException(nameof(eccentricity), $"Eccentricity {Text(eccentricity)} is outside 0 to 0.05. The Earth's own is 0.0167.");
        }

        if (!(tilt.Degrees >= 0.0 && tilt.Degrees <= 30.0 + 1e-9))
        {
            throw new ArgumentOutOfRangeException(nameof(tilt), $"Tilt {Text(tilt.Degrees)} degrees is outside 0 to 30 degrees. The Earth's own is 23.44.");
        }

        return perihelionDayOfYear is < 1 or > 366
            ? throw new ArgumentOutOfRangeException(
                nameof(perihelionDayOfYear),
                $"Perihelion day {perihelionDayOfYear.ToString(CultureInfo.InvariantCulture)} is outside 1 to 366. Count from 1 January; the Earth's own is about 3.")
            : new OrbitShape(eccentricity, tilt, perihelionDayOfYear, null);
    }

    /// <summary>
    /// The Earth's own shape at an instant: mean elements of Meeus, Astronomical Algorithms (1998), equations 25.2 to 25.4 and the mean
    /// obliquity of IAU 2006. The perihelion day is that of the mean orbit; the Moon moves the real one by up to two days.
    /// </summary>
    public static OrbitShape OfTheEarth(SunInstant instant)
    {
        var t = instant.TtDaysFromJ2000 / AstronomicalConstants.DaysPerCentury;
        var eccentricity = 0.016708634 - t * (0.000042037 + t * 0.0000001267);
        var tilt = Angle.FromArcSeconds(84381.406 - t * 46.836769);
        var anomaly = 357.52911 + t * (35999.05029 - t * 0.0001537);
        var longitude = MeanLongitudeDegrees(instant) - anomaly;

        // The mean Sun goes 0.9856 degrees a day; its longitude at noon of 1 January gives the day on which it stands at perihelion.
        var newYear = NoonOfNewYear(instant);
        var days = Angle.FromDegrees(longitude - MeanLongitudeDegrees(newYear)).InOneTurn().Degrees / DegreesPerDay;
        return new OrbitShape(eccentricity, tilt, 1 + (int)Math.Round(days) % 365, longitude);
    }

    /// <summary>Mean longitude of the Sun from the mean equinox of date, aberration included, degrees (Meeus 25.2; constant of aberration 20.5″).</summary>
    internal static double MeanLongitudeDegrees(SunInstant instant)
    {
        var t = instant.TtDaysFromJ2000 / AstronomicalConstants.DaysPerCentury;
        return 280.46646 - 0.0057183 + t * (36000.76983 + t * 0.0003032);
    }

    /// <summary>Longitude at which the Sun stands when the Earth is nearest, degrees.</summary>
    internal double PerihelionLongitudeDegrees(SunInstant instant) =>
        _perihelionLongitudeDegrees ?? MeanLongitudeDegrees(NoonOfNewYear(instant).PlusDays(PerihelionDayOfYear - 1));

    private const double DegreesPerDay = 36000.76983 / 36525.0;

    // 12h UT1 on 1 January of the instant's year. Julian days of New Year: 365 days a year and the leap days of the Gregorian calendar.
    private static SunInstant NoonOfNewYear(SunInstant instant)
    {
        var year = (int)Math.Floor(2000.0 + (instant.Ut1DaysFromJ2000 + 0.5) / 365.2425);

        // Near New Year the division may be a day off to either side.
        if (DaysToNewYear(year) - 0.5 > instant.Ut1DaysFromJ2000)
        {
            year--;
        }
        else if (DaysToNewYear(year + 1) - 0.5 <= instant.Ut1DaysFromJ2000)
        {
            year++;
        }

        return instant.PlusDays(DaysToNewYear(year) - instant.Ut1DaysFromJ2000);
    }

    private static int DaysToNewYear(int year) => (int)(new DateOnly(year, 1, 1).DayNumber - new DateOnly(2000, 1, 1).DayNumber);
}
