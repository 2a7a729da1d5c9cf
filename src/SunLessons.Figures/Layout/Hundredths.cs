namespace SunLessons.Figures.Layout;

/// <summary>
/// Coordinates as a drawing writes them: two decimals, without zeros at the end. By whole hundredths and digit by digit, because a number pattern takes most
/// of the time of a drawing where C# is interpreted.
/// </summary>
internal static class Hundredths
{
    /// <summary>A sign, nineteen digits and a point.</summary>
    public const int Longest = 21;

    // The largest number below a half: with a half itself, 0.49999999999999994 would become 1.
    private const double AlmostHalf = 0.49999999999999994;

    /// <summary>The nearest whole number of hundredths; halves go away from zero.</summary>
    public static long Of(double value)
    {
        var hundredths = value * 100;
        return (long)(hundredths < 0 ? hundredths - AlmostHalf : hundredths + AlmostHalf);
    }

    public static string Text(double value)
    {
        var written = new char[Longest];
        return new string(written, 0, Write(written, 0, Of(value)));
    }

    /// <summary>Writes a number from a position on, which leaves room for the longest; gives the position after it.</summary>
    public static int Write(char[] into, int at, long hundredths)
    {
        if (hundredths < 0)
        {
            into[at++] = '-';
            hundredths = -hundredths;
        }

        var whole = hundredths / 100;
        var rest = (int)(hundredths - whole * 100);
        var end = at + 1;
        for (var power = 10L; power <= whole; power *= 10)
        {
            end++;
        }

        for (var digit = end - 1; digit >= at; digit--)
        {
            var tens = whole / 10;
            into[digit] = (char)('0' + (int)(whole - tens * 10));
            whole = tens;
        }

        if (rest > 0)
        {
            into[end++] = '.';
            into[end++] = (char)('0' + rest / 10);
            if (rest % 10 > 0)
            {
                into[end++] = (char)('0' + rest % 10);
            }
        }

        return end;
    }
}
