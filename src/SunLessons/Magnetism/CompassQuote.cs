using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Text.RegularExpressions;

namespace SunLessons.Magnetism;

/// <summary>
/// Reads a variation (magnetic declination) as people and dials quote it: by letter (<c>15 W</c>, <c>15° W</c>, <c>E 3.5</c>,
/// <c>15°30′ west</c>) or by sign (<c>-15</c>, <c>+3.5</c>), degrees, 0 to 180 each way.
/// </summary>
/// <remarks>A letter decides by itself; a number without a letter means what the source's <see cref="CompassQuoteSign"/> says.</remarks>
public static partial class CompassQuote
{
    private const int LongestEcho = 40;

    /// <summary>Reads a quoted variation.</summary>
    /// <param name="text">What was written.</param>
    /// <param name="sign">What a number without a letter means; east positive unless the source is known to count west.</param>
    /// <exception cref="FormatException">The text cannot be read; the message is one sentence that says what to write instead.</exception>
    public static MagneticDeclination Parse(string? text, CompassQuoteSign sign = CompassQuoteSign.EastPositive) =>
        TryParse(text, sign, out var value, out var error) ? value : throw new FormatException(error);

    /// <summary>Reads a quoted variation; false with one sentence in <paramref name="error"/> if it cannot be read.</summary>
    /// <param name="text">What was written.</param>
    /// <param name="sign">What a number without a letter means.</param>
    /// <param name="value">The declination, east positive; zero if the text cannot be read.</param>
    /// <param name="error">What came, what is allowed and what to write instead; null if the text was read.</param>
    public static bool TryParse(string? text, CompassQuoteSign sign, out MagneticDeclination value, [NotNullWhen(false)] out string? error)
    {
        value = default;
        error = Read(text, sign, ref value);
        return error is null;
    }

    private static string? Read(string? text, CompassQuoteSign sign, ref MagneticDeclination value)
    {
        var trimmed = (text ?? string.Empty).Trim();
        if (trimmed.Length == 0)
        {
            return "Variation is empty: allowed are 0 to 180 degrees with E or W, or signed degrees from -180 to +180; write 15 W or -15.";
        }

        var echo = Shortened(trimmed);
        if (trimmed.Contains(',', StringComparison.Ordinal))
        {
            return $"Variation \"{echo}\" has a comma: allowed is a decimal point; write 3.5 E, not 3,5 E.";
        }

        var match = Pattern().Match(trimmed.Replace('\u2212', '-'));
        if (!match.Success)
        {
            return NotUnderstood(echo);
        }

        if (match.Groups["before"].Success && match.Groups["after"].Success)
        {
            return NotUnderstood(echo);
        }

        var rule = RuleOf(match.Groups["before"].Value + match.Groups["after"].Value, out var letterError);
        if (letterError is not null)
        {
            return $"Variation \"{echo}\" {letterError}";
        }

        if (rule is not null && match.Groups["sign"].Success)
        {
            return $"Variation \"{echo}\" has both a sign and a letter: allowed is one of them; write 15 W or -15.";
        }

        var degrees = Number(match, "degrees");
        var minutes = Number(match, "minutes");
        var seconds = Number(match, "seconds");
        if (minutes >= 60.0 || seconds >= 60.0)
        {
            return $"Variation \"{echo}\" has 60 or more minutes or seconds: allowed are 0 up to 60 of each; write 15°30' W or 15.5 W.";
        }

        var size = degrees + minutes / 60.0 + seconds / 3600.0;
        if (size > 180.0)
        {
            return $"Variation \"{echo}\" is outside 0 to 180 degrees east or west: a compass cannot be out by more; write the smaller angle the other way round.";
        }

        value = CompassSigns.FromQuoted(match.Groups["sign"].Value == "-" ? -size : size, rule ?? sign);
        return null;
    }

    // A letter is a sign rule for the number beside it: "15 E" counts east positive, "15 W" west positive. No letter: null.
    private static CompassQuoteSign? RuleOf(string letter, out string? error)
    {
        error = null;
        switch (letter.ToUpperInvariant())
        {
            case "":
                return null;
            case "E" or "EAST":
                return CompassQuoteSign.EastPositive;
            case "W" or "WEST":
                return CompassQuoteSign.WestPositive;
            case "O":
                error = "has the letter O, which means west in some languages and east in others: allowed are E and W; write 15 W or 15 E.";
                return null;
            case "N" or "S" or "NORTH" or "SOUTH":
                error = "has N or S: a variation goes east or west of north, allowed are E and W; write 15 W or 15 E.";
                return null;
            default:
                error = $"has \"{Shortened(letter)}\" where a side belongs: allowed are E and W; write 15 W or 15 E.";
                return null;
        }
    }

    private static string Shortened(string text) => text.Length <= LongestEcho ? text : text[..LongestEcho] + "...";

    private static string NotUnderstood(string echo) =>
        $"Variation \"{echo}\" is not understood: allowed are 0 to 180 degrees with E or W, or signed degrees from -180 to +180; write 15 W, 15°30' W or -15.";

    private static double Number(Match match, string group) =>
        match.Groups[group] is { Success: true } found ? double.Parse(found.Value, CultureInfo.InvariantCulture) : 0.0;

    // Minutes need their mark, so that "15 30" is not guessed at; whole degrees only before minutes, whole minutes only before seconds.
    [GeneratedRegex(
        """
        ^(?<before>[a-z]+)?\s*
        (?<sign>[+-])?\s*
        (?:
          (?<degrees>[0-9]+)\s*(?:°|º|deg|degrees?|d)\s*(?<minutes>[0-9]+)\s*['′’]\s*(?<seconds>[0-9]+(?:\.[0-9]+)?)\s*["″”]
          |
          (?<degrees>[0-9]+)\s*(?:°|º|deg|degrees?|d)\s*(?<minutes>[0-9]+(?:\.[0-9]+)?)\s*['′’]
          |
          (?<degrees>[0-9]+(?:\.[0-9]+)?|\.[0-9]+)\s*(?:°|º|degrees?|deg)?
        )
        \s*(?<after>[a-z]+)?$
        """,
        RegexOptions.IgnoreCase | RegexOptions.CultureInvariant | RegexOptions.IgnorePatternWhitespace)]
    private static partial Regex Pattern();
}
