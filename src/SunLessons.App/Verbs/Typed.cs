using System.Globalization;
using NodaTime;
using NodaTime.Text;

namespace SunLessons.App.Verbs;

/// <summary>Dates and times of day as they are typed after an option.</summary>
public static class Typed
{
    /// <summary>A date, year first.</summary>
    /// <exception cref="BadInputException">It cannot be read or is no day of the calendar.</exception>
    public static LocalDate Date(string text) => LocalDatePattern.Iso.Parse(text.Trim()).TryGetValue(LocalDate.MinIsoValue, out var date)
        ? date
        : throw new BadInputException($"Date “{text}” cannot be read; a day of the calendar is allowed: write year, month and day, such as 2026-11-03.");

    /// <summary>What a dial shows.</summary>
    /// <exception cref="BadInputException">It cannot be read or is no time of the day.</exception>
    public static DialTime DialTime(string text)
    {
        var time = TimeOfDay(text) ?? throw new BadInputException($"Dial reading “{text}” cannot be read; 00:00 to 23:59 are allowed: write hours and minutes, such as 14:30.");
        return SunLessons.DialTime.FromHoursMinutes(time.Hour, time.Minute + time.Second / 60.0);
    }

    /// <summary>A clock's time of day.</summary>
    /// <exception cref="BadInputException">It cannot be read or is no time of the day.</exception>
    public static LocalTime ClockTime(string text) =>
        TimeOfDay(text) ?? throw new BadInputException($"Clock time “{text}” cannot be read; 00:00 to 23:59 are allowed: write hours and minutes, such as 14:30.");

    private static LocalTime? TimeOfDay(string text)
    {
        foreach (var pattern in new[] { "H:mm", "H:mm:ss" })
        {
            if (LocalTimePattern.Create(pattern, CultureInfo.InvariantCulture).Parse(text.Trim()).TryGetValue(LocalTime.Midnight, out var time))
            {
                return time;
            }
        }

        return null;
    }
}
