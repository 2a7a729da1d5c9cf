using System.Globalization;
using System.Text;

namespace SunLessons.Figures.Layout;

/// <summary>
/// Coordinates as a drawing writes them: two decimals, without zeros at the end. By whole hundredths, because a number pattern takes most of the time of a
/// drawing where C# is interpreted.
/// </summary>
internal static class Hundredths
{
    // A sign, nineteen digits and a point.
    private const int Longest = 21;

    /// <summary>The nearest whole number of hundredths; halves go away from zero.</summary>
    public static long Of(double value) => (long)Math.Round(value * 100, MidpointRounding.AwayFromZero);

    public static string Text(double value)
    {
        Span<char> written = stackalloc char[Longest];
        return new string(written[..Write(written, Of(value))]);
    }

    public static void Append(StringBuilder text, long hundredths)
    {
        Span<char> written = stackalloc char[Longest];
        text.Append(written[..Write(written, hundredths)]);
    }

    // Gives how many characters it wrote.
    private static int Write(Span<char> into, long hundredths)
    {
        var at = 0;
        if (hundredths < 0)
        {
            into[at++] = '-';
        }

        var size = Math.Abs(hundredths);
        (size / 100).TryFormat(into[at..], out var digits, default, CultureInfo.InvariantCulture);
        at += digits;
        var rest = (int)(size % 100);
        if (rest > 0)
        {
            into[at++] = '.';
            into[at++] = (char)('0' + rest / 10);
            if (rest % 10 > 0)
            {
                into[at++] = (char)('0' + rest % 10);
            }
        }

        return at;
    }
}
