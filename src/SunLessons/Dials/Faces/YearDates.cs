using NodaTime;

namespace SunLessons.Dials.Faces;

/// <summary>The dates of a year at even steps.</summary>
internal static class YearDates
{
    public static IEnumerable<LocalDate> Of(int year, int everyDays)
    {
        if (year is < 1900 or > 2100)
        {
            throw new ArgumentOutOfRangeException(nameof(year), $"Year {year} is outside 1900 to 2100, for which the Sun's place was checked. Write a year of these.");
        }

        if (everyDays < 1)
        {
            throw new ArgumentOutOfRangeException(nameof(everyDays), $"Step {everyDays} days is not above 0; give 1 to 31 days, such as 5.");
        }

        var first = new LocalDate(year, 1, 1);
        for (var date = first; date.Year == year; date = date.PlusDays(everyDays))
        {
            yield return date;
        }
    }
}
