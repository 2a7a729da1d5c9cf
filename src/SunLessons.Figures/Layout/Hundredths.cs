using System.Globalization;
using System.Text;

namespace SunLessons.Figures.Layout;

/// <summary>
/// Coordinates as a drawing writes them: two decimals, without zeros at the end. By whole hundredths, because a number pattern takes most of the time of a
/// drawing where C# is interpreted.
/// </summary>
internal static class Hundredths
{
    /// <summary>The nearest whole number of hundredths; halves go away from zero.</summary>
    public static long Of(double value) => (long)Math.Round(value * 100, MidpointRounding.AwayFromZero);

    public static string Text(double value) => Text(Of(value));

    public static string Text(long hundredths)
    {
        var size = Math.Abs(hundredths);
        var whole = (hundredths < 0 ? "-" : "") + (size / 100).ToString(CultureInfo.InvariantCulture);
        var rest = (int)(size % 100);
        return rest == 0 ? whole : rest % 10 == 0 ? whole + "." + Digit(rest / 10) : whole + "." + Digit(rest / 10) + Digit(rest % 10);
    }

    public static void Append(StringBuilder text, long hundredths)
    {
        if (hundredths < 0)
        {
            text.Append('-');
            hundredths = -hundredths;
        }

        var whole = (int)(hundredths / 100);
        var rest = (int)(hundredths - 100L * whole);
        if (whole < 10)
        {
            text.Append((char)('0' + whole));
        }
        else if (whole < 100)
        {
            text.Append((char)('0' + whole / 10)).Append((char)('0' + whole % 10));
        }
        else if (whole < 1000)
        {
            text.Append((char)('0' + whole / 100)).Append((char)('0' + whole / 10 % 10)).Append((char)('0' + whole % 10));
        }
        else
        {
            text.Append(whole.ToString(CultureInfo.InvariantCulture));
        }

        if (rest > 0)
        {
            text.Append('.').Append((char)('0' + rest / 10));
            if (rest % 10 > 0)
            {
                text.Append((char)('0' + rest % 10));
            }
        }
    }

    private static string Digit(int digit) => ((char)('0' + digit)).ToString();
}
