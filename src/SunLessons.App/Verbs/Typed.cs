using System.Globalization;
using System.Text.RegularExpressions;
using NodaTime;
using NodaTime.Text;
using SunLessons.Places;

namespace SunLessons.App.Verbs;

/// <summary>Dates, times, angles and numbers as they are typed after an option.</summary>
public static partial class Typed
{
    // The Sun's place is known for these years.
    private const int FirstYear = 1900;
    private const int LastYear = 2100;

    private static readonly LocalDateTimePattern[] UtcPatterns =
    [
        LocalDateTimePattern.CreateWithInvariantCulture("uuuu-MM-dd'T'HH:mm:ss;FFFFFFFFF"),
        LocalDateTimePattern.CreateWithInvariantCulture("uuuu-MM-dd'T'HH:mm"),
    ];

    /// <summary>A date, year first.</summary>
    /// <exception cref="BadInputException">It cannot be read or is no day of the calendar.</exception>
    public static LocalDate Date(string text) => LocalDatePattern.Iso.Parse(text.Trim()).TryGetValue(LocalDate.MinIsoValue, out var date)
        ? date
        : throw new BadInputException($"Date “{text}” cannot be read; a day of the calendar is allowed: write year, month and day, such as 2026-11-03.");

    /// <summary>A date for which the Sun's place is known.</summary>
    /// <exception cref="BadInputException">It cannot be read, is no day of the calendar, or lies outside the years 1900 to 2100.</exception>
    public static LocalDate SunDate(string text) => InSunYears(Date(text));

    /// <summary>The same date, if the Sun's place is known for it.</summary>
    /// <exception cref="BadInputException">It lies outside the years 1900 to 2100.</exception>
    public static LocalDate InSunYears(LocalDate date) => date.Year is >= FirstYear and <= LastYear
        ? date
        : throw new BadInputException(
            $"Date {Printing.PlainWords.Date(date)} is outside the years {FirstYear} to {LastYear}, for which the Sun's place is known here; write a date of these years.");

    /// <summary>What a dial shows.</summary>
    /// <exception cref="BadInputException">It cannot be read or is no time of the day.</exception>
    public static DialTime DialTime(string text)
    {
        var time = TimeOfDay(text) ?? throw new BadInputException($"Dial reading “{text}” cannot be read; 00:00 to 23:59 are allowed: write hours and minutes, such as 14:30.");
        return SunLessons.DialTime.FromHours(time.NanosecondOfDay / 3.6e12);
    }

    /// <summary>A clock's time of day.</summary>
    /// <exception cref="BadInputException">It cannot be read or is no time of the day.</exception>
    public static LocalTime ClockTime(string text) =>
        TimeOfDay(text) ?? throw new BadInputException($"Clock time “{text}” cannot be read; 00:00 to 23:59 are allowed: write hours and minutes, such as 14:30.");

    /// <summary>A date and time in universal time, with or without the Z.</summary>
    /// <exception cref="BadInputException">It cannot be read, or lies outside the years 1900 to 2100.</exception>
    public static Instant Utc(string text)
    {
        var plain = text.Trim();
        if (plain.EndsWith('Z') || plain.EndsWith('z'))
        {
            plain = plain[..^1];
        }

        foreach (var pattern in UtcPatterns)
        {
            if (pattern.Parse(plain).TryGetValue(default, out var utc))
            {
                InSunYears(utc.Date);
                return utc.InUtc().ToInstant();
            }
        }

        throw new BadInputException(
            $"Universal time “{text}” cannot be read; date, the letter T and time are allowed, without an offset: write it like 2026-06-21T12:00:00Z.");
    }

    /// <summary>A latitude.</summary>
    /// <exception cref="BadInputException">It cannot be read or lies outside -90 to +90 degrees.</exception>
    public static Latitude Latitude(string text) =>
        CoordinateText.TryReadLatitude(text, out var latitude, out var problem) ? latitude : throw new BadInputException(problem!);

    /// <summary>A number between two limits, both allowed; a decimal comma is read as a point.</summary>
    /// <param name="text">What was typed.</param>
    /// <param name="name">What it is, to begin the sentence with, such as <c>Height</c>.</param>
    /// <param name="unit">Its unit, such as <c>metres</c>.</param>
    /// <param name="lowest">The least allowed.</param>
    /// <param name="highest">The greatest allowed.</param>
    /// <param name="instead">What to write instead, such as <c>write metres above the sea, such as 120</c>.</param>
    /// <exception cref="BadInputException">It is no number, or outside the limits.</exception>
    public static double Number(string text, string name, string unit, double lowest, double highest, string instead)
    {
        var allowed = $"{Limit(lowest)} to {(lowest < 0.0 ? "+" : "")}{Limit(highest)} {unit}";
        if (!NumberPattern().IsMatch(text.Trim()))
        {
            throw new BadInputException($"{name} “{text}” is not a number; {allowed} are allowed: {instead}.");
        }

        var number = double.Parse(text.Trim().Replace(',', '.').Replace('\u2212', '-'), CultureInfo.InvariantCulture);
        return number >= lowest && number <= highest
            ? number
            : throw new BadInputException($"{name} {text.Trim()} is outside {allowed}; {instead}.");
    }

    private static string Limit(double limit) => limit.ToString("0.#####", CultureInfo.InvariantCulture);

    // Seconds, or tenths of a minute as the answers print them.
    private static LocalTime? TimeOfDay(string text)
    {
        var match = TimePattern().Match(text.Trim());
        if (!match.Success)
        {
            return null;
        }

        double Part(string group) => match.Groups[group] is { Success: true } part ? double.Parse(part.Value.Replace(',', '.'), CultureInfo.InvariantCulture) : 0.0;
        var (hours, minutes, seconds) = (Part("hours"), Part("minutes"), Part("seconds"));
        return hours < 24.0 && minutes < 60.0 && seconds < 60.0
            ? LocalTime.FromNanosecondsSinceMidnight((long)Math.Round(((hours * 60.0 + minutes) * 60.0 + seconds) * 1e9))
            : null;
    }

    [GeneratedRegex(@"^(?<hours>[0-9]{1,2}):((?<minutes>[0-9]{2}([.,][0-9]{1,6})?)|(?<minutes>[0-9]{2}):(?<seconds>[0-9]{2}))$", RegexOptions.CultureInvariant)]
    private static partial Regex TimePattern();

    [GeneratedRegex(@"^[+\-\u2212]?[0-9]{1,12}([.,][0-9]{0,12})?$", RegexOptions.CultureInvariant)]
    private static partial Regex NumberPattern();
}
