using System.Collections.Immutable;
using System.Globalization;

namespace SunLessons.Figures;

/// <summary>An axis of a figure: what is measured, in which unit, from where to where.</summary>
/// <param name="Label">What is measured, such as <c>Shadow length</c>.</param>
/// <param name="Unit">Its unit as written, such as <c>min</c> or <c>°</c>; empty for none.</param>
/// <param name="Min">The end on the left or below; null to take it from the data.</param>
/// <param name="Max">The end on the right or above; null to take it from the data.</param>
/// <param name="Kind">How the numbers are read.</param>
public sealed record Axis(string Label, string Unit = "", double? Min = null, double? Max = null, AxisKind Kind = AxisKind.Number)
{
    // First day of each month in a 365-day year, and of the January after it.
    private static readonly int[] MonthStarts = [1, 32, 60, 91, 121, 152, 182, 213, 244, 274, 305, 335, 366];

    /// <summary>The names along an axis of <see cref="AxisKind.Names"/>.</summary>
    public ImmutableArray<string> Names { get; init; } = [];

    /// <summary>Label and unit as written beside the axis.</summary>
    public string Title => Unit.Length == 0 ? Label : $"{Label} ({Unit})";

    /// <summary>Label and unit as the head of a column, such as <c>Error (min)</c>.</summary>
    public string Heading => Title;

    /// <summary>The days of a 365-day year on which months begin, and their names of three letters.</summary>
    internal static IEnumerable<(int Day, string Name)> Months => Speech.Culture.ShortMonths.Select((name, i) => (MonthStarts[i], name));

    /// <summary>
    /// A value as a reader says it: <c>09:30</c>, <c>21 Jun</c>, <c>Vigo</c>, or a number with at most the given decimals and its unit,
    /// with a real minus sign. Not a number gives <c>none</c>.
    /// </summary>
    public string Say(double value, int decimals = 1) => double.IsNaN(value)
        ? Worded($"none")
        : Kind switch
        {
            AxisKind.Clock => Clock(value),
            AxisKind.DayOfYear => Date(value),
            AxisKind.Names => NameAt(value),
            _ => Numeral(value, decimals) + (Unit is "" or "°" ? Unit : " " + Unit),
        };

    /// <summary>A value without its unit, as written at a tick or in a table.</summary>
    public string Write(double value, int decimals) => Kind switch
    {
        AxisKind.Clock or AxisKind.DayOfYear or AxisKind.Names => Say(value),
        _ => double.IsNaN(value) ? Worded($"none") : Numeral(value, decimals),
    };

    /// <summary>A number with its sign always written, a real minus, and no sign before zero: <c>+94.9</c>, <c>−15.8</c>, <c>0.0</c>.</summary>
    public static string Signed(double value, int decimals)
    {
        var text = Numeral(value, decimals);
        return text.StartsWith('\u2212') || !text.AsSpan().ContainsAnyInRange('1', '9') ? text : "+" + text;
    }

    /// <summary>A number with a real minus and no minus before zero: <c>94.9</c>, <c>−15.8</c>, <c>0.0</c>.</summary>
    public static string Numeral(double value, int decimals)
    {
        var text = Math.Round(value, Math.Clamp(decimals, 0, 15), MidpointRounding.AwayFromZero)
            .ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), Speech.Culture);
        if (text.StartsWith('-'))
        {
            // "-0.0" is zero; otherwise the typographic minus, which is as wide as a plus.
            text = text.AsSpan(1).ContainsAnyInRange('1', '9') ? "\u2212" + text[1..] : text[1..];
        }

        return text;
    }

    private static string Clock(double hours)
    {
        var minutes = (int)Math.Round(hours * 60.0, MidpointRounding.AwayFromZero);
        minutes = ((minutes % 1440) + 1440) % 1440;
        return $"{(minutes / 60).ToString("00", CultureInfo.InvariantCulture)}:{(minutes % 60).ToString("00", CultureInfo.InvariantCulture)}";
    }

    private static string Date(double dayOfYear)
    {
        var day = (int)Math.Round(dayOfYear, MidpointRounding.AwayFromZero);
        day = ((day - 1) % 365 + 365) % 365 + 1;
        var month = Array.FindLastIndex(MonthStarts, start => start <= day);
        return $"{(day - MonthStarts[month] + 1).ToString(CultureInfo.InvariantCulture)} {Speech.Culture.ShortMonths[month]}";
    }

    private string NameAt(double position)
    {
        var index = (int)Math.Round(position, MidpointRounding.AwayFromZero);
        return index >= 0 && index < Names.Length ? Names[index] : "";
    }
}
