namespace SunLessons.Figures.Layout;

/// <summary>
/// How wide a text will be, without asking any machine's fonts. The widths are those of a WIDE sans serif letter (some 10 % wider than the
/// usual ones), so that what fits here fits in whichever sans serif the reader's machine takes.
/// </summary>
internal static class TextMeasure
{
    /// <summary>The width in the unit of the letter size.</summary>
    public static double Width(string text, double size)
    {
        var width = 0.0;
        foreach (var letter in text)
        {
            width += Letter(letter);
        }

        return width * size;
    }

    /// <summary>The width of the widest of some lines, in the unit of the letter size.</summary>
    public static double Widest(IReadOnlyList<string> lines, double size)
    {
        var widest = 0.0;
        for (var i = 0; i < lines.Count; i++)
        {
            widest = Math.Max(widest, Width(lines[i], size));
        }

        return widest;
    }

    /// <summary>Breaks a text at spaces into lines no wider than the limit; a single long word stays whole.</summary>
    public static IReadOnlyList<string> Wrap(string text, double size, double limit)
    {
        if (text.Length > 0 && !text.Contains(' '))
        {
            return [text];
        }

        var lines = new List<string>();
        var line = "";
        foreach (var word in text.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            var longer = line.Length == 0 ? word : line + " " + word;
            if (line.Length > 0 && Width(longer, size) > limit)
            {
                lines.Add(line);
                line = word;
            }
            else
            {
                line = longer;
            }
        }

        if (line.Length > 0)
        {
            lines.Add(line);
        }

        return lines;
    }

    // Parts of the letter size; rounded up from what wide sans serif faces have.
    private static double Letter(char letter) => letter switch
    {
        'i' or 'j' or 'l' or 'I' or '\'' or '|' => 0.30,
        ' ' or '.' or ',' or ':' or ';' or '/' => 0.34,
        'f' or 't' or 'r' or '(' or ')' or '-' or '!' => 0.42,
        's' or 'c' or 'z' or 'k' or 'J' or '"' or '°' or '′' or '″' => 0.56,
        'm' or 'M' or 'W' or '%' or '@' => 1.0,
        'w' or '−' or '+' or '=' or '×' or '<' or '>' or '±' or 'O' or 'Q' or 'G' or 'N' => 0.84,
        >= '0' and <= '9' => 0.64,
        >= 'A' and <= 'Z' => 0.74,
        > '\u2E80' => 1.0,
        _ => 0.63,
    };
}
