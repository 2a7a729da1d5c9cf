using System.Globalization;
using SunLessons.Magnetism;

namespace SunLessons.Logs;

/// <summary>An instrument's printed list of places with compass corrections. Immutable.</summary>
/// <remarks>
/// As a table of comma-separated values, heading <c>place,latitude_degrees,longitude_degrees,compass_offset_degrees</c>: north and east positive; the offset as
/// printed, such as <c>15 W</c>, <c>15°30' W</c> or <c>-15</c> (<see cref="CompassQuote"/>). Lines that begin with # are remarks.
/// </remarks>
public sealed record PrintedList
{
    /// <summary>Makes a list.</summary>
    /// <param name="places">The entries.</param>
    /// <param name="printedTo">The step to which the engraver rounded, such as 1° or 0.25°; 0 to below 45°. An entry lies within half of it.</param>
    /// <exception cref="ArgumentOutOfRangeException">A step outside that range.</exception>
    public PrintedList(IEnumerable<ListedPlace> places, Angle printedTo)
    {
        if (!(printedTo.Degrees >= 0.0 && printedTo.Degrees < 45.0))
        {
            throw new ArgumentOutOfRangeException(
                nameof(printedTo),
                $"A step of {printedTo.Degrees.ToString("0.###", CultureInfo.InvariantCulture)} degrees is outside 0 to 45 degrees; give the smallest step seen in the list, such as 1 or 0.25.");
        }

        Places = [.. places];
        PrintedTo = printedTo;
    }

    /// <summary>The entries.</summary>
    public IReadOnlyList<ListedPlace> Places { get; }

    /// <summary>The step to which the engraver rounded.</summary>
    public Angle PrintedTo { get; }

    /// <summary>Reads a list.</summary>
    /// <param name="text">The table.</param>
    /// <param name="printedTo">The step to which the engraver rounded.</param>
    /// <param name="sign">What an offset without a letter means.</param>
    /// <exception cref="FormatException">The first line that cannot be read, in one sentence with its number.</exception>
    public static PrintedList Parse(string text, Angle printedTo, CompassQuoteSign sign = CompassQuoteSign.EastPositive)
    {
        ArgumentNullException.ThrowIfNull(text);
        var table = CsvTable.Parse(text, "place", "latitude_degrees", "longitude_degrees", "compass_offset_degrees");
        return new PrintedList(table.Rows.Select(row => Read(row.Line, row.Cells, sign)), printedTo);
    }

    private static ListedPlace Read(int line, string[] cells, CompassQuoteSign sign)
    {
        var latitude = Number(line, "latitude", cells[1], 90.0, "north positive, such as 42.24");
        var longitude = Number(line, "longitude", cells[2], 180.0, "east positive, such as -8.72");
        return CompassQuote.TryParse(cells[3], sign, out var printed, out var error)
            ? new ListedPlace(cells[0], GeoPoint.FromDegrees(latitude, longitude), printed)
            : throw new FormatException($"Line {CsvTable.Text(line)}: {error}");
    }

    private static double Number(int line, string what, string text, double limit, string write) =>
        double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var value) && Math.Abs(value) <= limit
            ? value
            : throw new FormatException(string.Create(
                CultureInfo.InvariantCulture,
                $"Line {line}: {what} \"{CsvTable.Shortened(text)}\" is not a number from -{limit:0} to +{limit:0} degrees; write degrees, {write}."));
}
