using System.Globalization;
using System.Text;
using NodaTime;
using NodaTime.Text;
using SunLessons.CivilTime;

namespace SunLessons.Logs;

/// <summary>The readings of one dial, each beside a clock, as a table of comma-separated values. Immutable.</summary>
/// <remarks>
/// Heading: <c>date_year_month_day,clock_hours_minutes,dial_hours_minutes,who,note</c>. Times are hours and minutes, with tenths or seconds if known
/// (<c>14:36</c>, <c>14:36.5</c>, <c>14:36:30</c>). The clock may be followed by what it was ahead of UTC (<c>02:30 UTC+2</c>), for a night on which it was put back or for
/// a clock of another zone. Lines that begin with # are remarks.
/// </remarks>
public sealed record ObservationLog
{
    private static readonly string[] Heading = ["date_year_month_day", "clock_hours_minutes", "dial_hours_minutes", "who", "note"];

    /// <summary>Makes a log of observations.</summary>
    public ObservationLog(IEnumerable<Observation> observations) => Observations = [.. observations];

    /// <summary>The readings, in the order of the log.</summary>
    public IReadOnlyList<Observation> Observations { get; }

    /// <summary>Reads a log.</summary>
    /// <exception cref="FormatException">The first line that cannot be read, in one sentence with its number.</exception>
    public static ObservationLog Parse(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return new ObservationLog(CsvTable.Parse(text, Heading).Rows.Select(row => Read(row.Line, row.Cells)));
    }

    /// <summary>The log as a table that <see cref="Parse"/> reads: times to a tenth of a minute or, for the clock, to the second.</summary>
    public override string ToString()
    {
        var text = new StringBuilder(string.Join(',', Heading)).Append('\n');
        foreach (var o in Observations)
        {
            text.Append(LocalDatePattern.Iso.Format(o.Clock.Date)).Append(',')
                .Append(o.Clock.ToString(o.Clock.Second == 0 ? "HH':'mm" : "HH':'mm':'ss", CultureInfo.InvariantCulture))
                .Append(o.ClockOffset is { } offset ? " " + OffsetText.Utc(offset) : "").Append(',')
                .Append(o.Shown).Append(',').Append(CsvTable.Cell(o.Observer)).Append(',').Append(CsvTable.Cell(o.Note)).Append('\n');
        }

        return text.ToString();
    }

    private static Observation Read(int line, string[] cells)
    {
        var date = LocalDatePattern.Iso.Parse(cells[0]);
        if (!date.Success)
        {
            throw new FormatException($"Line {CsvTable.Text(line)}: date \"{CsvTable.Shortened(cells[0])}\" is not a day as year-month-day; write 2026-06-21.");
        }

        var words = cells[1].Split(' ', 2, StringSplitOptions.TrimEntries);
        var ahead = Offset.Zero;
        if (words.Length == 2 && !OffsetText.TryRead(words[1], out ahead))
        {
            throw new FormatException(
                $"Line {CsvTable.Text(line)}: \"{CsvTable.Shortened(words[1])}\" after the clock's time is not an offset from UTC-18 to UTC+18; write such as 02:30 UTC+2, or the time alone.");
        }

        var clock = LocalTime.Midnight.PlusMilliseconds((long)Math.Round(Hours(line, "clock", words[0]) * 3.6e6));
        return new Observation(line, date.Value + clock, DialTime.FromHours(Hours(line, "dial", cells[2])), cells[3], cells[4])
        {
            ClockOffset = words.Length == 2 ? ahead : null,
        };
    }

    private static double Hours(int line, string which, string text)
    {
        var parts = text.Split(':');
        var fine = parts.Length is 2 or 3
            && parts.All(part => part.Length > 0 && char.IsAsciiDigit(part[0]))
            && int.TryParse(parts[0], NumberStyles.None, CultureInfo.InvariantCulture, out _)
            && (parts.Length == 2 || int.TryParse(parts[1], NumberStyles.None, CultureInfo.InvariantCulture, out _));
        var numbers = fine ? parts.Select(part => double.TryParse(part, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var n) ? n : -1.0).ToArray() : [];
        return fine && numbers[0] < 24.0 && numbers.Skip(1).All(n => n is >= 0.0 and < 60.0)
            ? numbers[0] + numbers[1] / 60.0 + (numbers.Length == 3 ? numbers[2] / 3600.0 : 0.0)
            : throw new FormatException(
                $"Line {CsvTable.Text(line)}: {which} \"{CsvTable.Shortened(text)}\" is not a time from 00:00 to 23:59; write hours and minutes such as 14:36, 14:36.5 or 14:36:30.");
    }
}
