using System.Globalization;
using NodaTime;

namespace SunLessons.Magnetism;

/// <summary>
/// Decimal years as the field models count them: the year plus the part of that (Gregorian) year that has passed, so that 2025.0 is the
/// midnight with which 2025 begins and 2026.5 is early July.
/// </summary>
public static class DecimalYears
{
    /// <summary>The decimal year at the start of a day. A date of another calendar is turned into the Gregorian one first.</summary>
    public static double Of(LocalDate date)
    {
        var iso = date.WithCalendar(CalendarSystem.Iso);
        return iso.Year + (iso.DayOfYear - 1) / (double)CalendarSystem.Iso.GetDaysInYear(iso.Year);
    }

    /// <summary>The decimal year of an instant, counted in UTC.</summary>
    public static double Of(Instant instant)
    {
        var utc = instant.InUtc();
        var days = utc.DayOfYear - 1 + utc.TimeOfDay.NanosecondOfDay / (double)NodaConstants.NanosecondsPerDay;
        return utc.Year + days / CalendarSystem.Iso.GetDaysInYear(utc.Year);
    }

    internal static string Text(double year) => year.ToString("0.0##", CultureInfo.InvariantCulture);

    internal static ArgumentOutOfRangeException Outside(double year, string advice) => new(
        "decimalYear",
        $"Year {year.ToString("0.0##", CultureInfo.InvariantCulture)} cannot be used: {advice}");
}
