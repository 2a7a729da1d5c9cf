using NodaTime;
using SunLessons.CivilTime;

namespace SunLessons.Readings;

/// <summary>
/// The Sun's own day at a place: from one lower transit to the next, about the solar noon nearest to 12:00 on the clock of a date.
/// </summary>
/// <remarks>
/// Universal time is taken as UT1; UTC keeps within 0.9 s of it, 0.015 minutes. The noon nearest to 12:00 by the clock settles which day is meant
/// where clock and Sun differ by up to a whole day near the date line.
/// </remarks>
internal sealed class ApparentDay
{
    private const int FirstYear = 1900;
    private const int LastYear = 2100;

    private readonly GeoPoint _place;

    private ApparentDay(GeoPoint place, LocalDate date, Instant noon)
    {
        _place = place;
        Date = date;
        Noon = noon;
    }

    public LocalDate Date { get; }

    /// <summary>Why a date cannot be answered: the Sun's place was checked for 1900 to 2100 only; null when it can.</summary>
    public static string? OutsideYears(LocalDate date) => date.Year is >= FirstYear and <= LastYear
        ? null
        : $"Date {ReadingChain.DateText(date)} is outside the years {FirstYear} to {LastYear}, for which the Sun's place is known here; write a date of these years.";

    /// <summary>Solar noon.</summary>
    public Instant Noon { get; }

    /// <summary>The day, or a sentence saying why the date has no noon in that zone.</summary>
    public static (ApparentDay? Day, string? Sentence) Of(GeoPoint place, CivilZone zone, LocalDate date)
    {
        var clockNoon = zone.InstantOf(date.At(new LocalTime(12, 0))) switch
        {
            ClockAnswer.One one => one.Instant,
            ClockAnswer.Doubled doubled => doubled.Earlier,
            _ => (Instant?)null,
        };
        if (clockNoon is not { } near)
        {
            return (null, zone.InstantOf(date.At(new LocalTime(12, 0))).Message);
        }

        var noon = near - Duration.FromHours(HourAngleAt(place, near).Hours);
        var day = new ApparentDay(place, date, noon);
        return (new ApparentDay(place, date, day.AtHourAngle(HourAngle.FromDegrees(0.0))), null);
    }

    /// <summary>The day that holds a moment; its date is the one on which its noon falls by the clock.</summary>
    public static ApparentDay Holding(GeoPoint place, CivilZone zone, Instant instant)
    {
        var noon = instant - Duration.FromHours(HourAngleAt(place, instant).Hours);
        var rough = new ApparentDay(place, zone.ClockAt(noon).Date, noon);
        noon = rough.AtHourAngle(HourAngle.FromDegrees(0.0));
        return new ApparentDay(place, zone.ClockAt(noon).Date, noon);
    }

    /// <summary>The Sun's hour angle at a place and moment: UT + longitude + equation of time, from noon.</summary>
    public static HourAngle HourAngleAt(GeoPoint place, Instant instant)
    {
        var utHours = instant.InUtc().TimeOfDay.NanosecondOfDay / (double)NodaConstants.NanosecondsPerHour;
        var apparentHours = utHours + SunNow.At(instant).EquationOfTime.Minutes / 60.0 + place.Longitude.Degrees / 15.0;
        return HourAngle.FromHours(apparentHours - 12.0);
    }

    /// <summary>The moment of this day at which the Sun has an hour angle.</summary>
    public Instant AtHourAngle(HourAngle hourAngle)
    {
        var t = Noon + Duration.FromHours(hourAngle.Hours);

        // The equation of time moves by at most 30 s a day, so each round shrinks what is left some 3000 times; four leave less than a nanosecond.
        for (var round = 0; round < 4; round++)
        {
            var off = (hourAngle.Angle - HourAngleAt(_place, t).Angle).AroundZero();
            t += Duration.FromHours(off.Degrees / 15.0);
        }

        return t;
    }
}
