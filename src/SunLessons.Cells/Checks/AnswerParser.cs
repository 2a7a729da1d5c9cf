using System.Globalization;
using System.Text.RegularExpressions;

namespace SunLessons.Cells.Checks;

/// <summary>
/// Reads a number as people write it: decimal comma or point; any minus sign; degrees, minutes and seconds in signs, letters or spaces;
/// <c>h:mm</c> and <c>hh:mm:ss</c>; N, S, E, W; units that belong to what is asked, converted. What it cannot read it answers in one sentence.
/// </summary>
public static partial class AnswerParser
{
    private const int Longest = 60;

    // Every word for a unit, what it measures, and its size in the base of that kind. "m" and "s" and the prime signs are told apart by what is asked.
    private static readonly Dictionary<string, (AnswerKind Kind, double Size)> Words = new(StringComparer.Ordinal)
    {
        ["h"] = (AnswerKind.Time, 3600),
        ["hr"] = (AnswerKind.Time, 3600),
        ["hrs"] = (AnswerKind.Time, 3600),
        ["hour"] = (AnswerKind.Time, 3600),
        ["hours"] = (AnswerKind.Time, 3600),
        ["min"] = (AnswerKind.Time, 60),
        ["mins"] = (AnswerKind.Time, 60),
        ["minute"] = (AnswerKind.Time, 60),
        ["minutes"] = (AnswerKind.Time, 60),
        ["s"] = (AnswerKind.Time, 1),
        ["sec"] = (AnswerKind.Time, 1),
        ["secs"] = (AnswerKind.Time, 1),
        ["second"] = (AnswerKind.Time, 1),
        ["seconds"] = (AnswerKind.Time, 1),
        ["°"] = (AnswerKind.Angle, 1),
        ["deg"] = (AnswerKind.Angle, 1),
        ["degree"] = (AnswerKind.Angle, 1),
        ["degrees"] = (AnswerKind.Angle, 1),
        ["'"] = (AnswerKind.Angle, 1 / 60.0),
        ["arcmin"] = (AnswerKind.Angle, 1 / 60.0),
        ["\""] = (AnswerKind.Angle, 1 / 3600.0),
        ["arcsec"] = (AnswerKind.Angle, 1 / 3600.0),
        ["mm"] = (AnswerKind.Length, 1),
        ["cm"] = (AnswerKind.Length, 10),
        ["m"] = (AnswerKind.Length, 1000),
        ["km"] = (AnswerKind.Length, 1_000_000),
        ["metre"] = (AnswerKind.Length, 1000),
        ["metres"] = (AnswerKind.Length, 1000),
        ["d"] = (AnswerKind.Days, 1),
        ["day"] = (AnswerKind.Days, 1),
        ["days"] = (AnswerKind.Days, 1),
    };

    /// <summary>A number as a learner would type it, with digits enough to come back the same from <see cref="Read"/>.</summary>
    /// <param name="value">The number, in <paramref name="unit"/>; hours from midnight for a clock time, west and south negative.</param>
    /// <param name="unit">What is asked for; see <see cref="Read"/>.</param>
    public static string Typed(double value, string unit)
    {
        static string Plain(double number) => number.ToString("0.#########", CultureInfo.InvariantCulture);
        ArgumentNullException.ThrowIfNull(unit);
        switch (unit)
        {
            case "clock":
                var seconds = Math.Round((((value % 24) + 24) % 24) * 3600, 6);
                return string.Create(CultureInfo.InvariantCulture, $"{(int)(seconds / 3600)}:{(int)(seconds / 60) % 60:00}:{seconds % 60:00.######}");
            case "longitude":
                return Plain(Math.Abs(value)) + (value < 0 ? " W" : " E");
            case "latitude":
                return Plain(Math.Abs(value)) + (value < 0 ? " S" : " N");
            case "bearing":
                return Plain(value) + "°";
            default:
                return unit.Length == 0 ? Plain(value) : $"{Plain(value)} {unit}";
        }
    }

    /// <summary>Reads an answer.</summary>
    /// <param name="text">What was typed; null and empty are answered kindly.</param>
    /// <param name="unit">What is asked for: <c>""</c>, <c>s</c>, <c>min</c>, <c>h</c>, <c>clock</c>, <c>°</c>, <c>bearing</c>, <c>latitude</c>, <c>longitude</c>, <c>mm</c>, <c>cm</c>, <c>m</c>, <c>km</c>, <c>days</c>.</param>
    /// <exception cref="ArgumentException">The unit is none of those.</exception>
    public static AnswerInput Read(string? text, string unit)
    {
        var asked = AnswerUnit.Of(unit);
        var plain = Plain(text);
        if (plain.Length == 0)
        {
            return AnswerInput.Not(Worded($"Nothing is written yet. Write {asked.AskedNow}, such as {asked.ExampleNow}."));
        }

        if (plain.Length > Longest)
        {
            return AnswerInput.Not(Worded($"That is too long to be one number. Write {asked.AskedNow}, such as {asked.ExampleNow}."));
        }

        if (plain.Contains('.', StringComparison.Ordinal) && plain.Contains(',', StringComparison.Ordinal))
        {
            return AnswerInput.Not(Worded($"'{plain}' holds a point and a comma. Write one decimal sign and nothing between thousands, such as {asked.ExampleNow}."));
        }

        return ReadSigned(Speech.Culture.InEnglish(plain.Replace(',', '.').ToLowerInvariant()), plain, asked);
    }

    // One spelling for the many signs that keyboards and copied texts have for the same thing.
    private static string Plain(string? text)
    {
        var plain = new char[text?.Length ?? 0];
        for (var i = 0; i < plain.Length; i++)
        {
            plain[i] = text![i] switch
            {
                '\u2212' or '\u2010' or '\u2011' or '\u2012' or '\u2013' or '\u2014' or '\uFE63' or '\uFF0D' => '-',
                '\uFF0B' => '+',
                '\u2032' or '\u2019' or '\u2018' or '\u02B9' or '\u00B4' or '`' => '\'',
                '\u2033' or '\u201D' or '\u201C' or '\u02BA' => '"',
                '\u00BA' or '\u02DA' => '°',
                '\uFF1A' or '\u2236' => ':',
                var c when char.IsWhiteSpace(c) => ' ',
                var c => c,
            };
        }

        // "= 94.9 min." and "~ 95" are what people write on paper.
        var tidy = Spaces().Replace(new string(plain), " ").Trim().TrimStart('=', '~', '\u2248').TrimStart().Replace("''", "\"", StringComparison.Ordinal);
        return tidy.Length > 1 && tidy[^1] == '.' && char.IsLetter(tidy[^2]) ? tidy[..^1] : tidy;
    }

    private static AnswerInput ReadSigned(string text, string original, AnswerUnit asked)
    {
        var sign = 1;
        var signed = text[0] is '-' or '+';
        if (signed)
        {
            sign = text[0] == '-' ? -1 : 1;
            text = text[1..].TrimStart();
            if (text.Length == 0)
            {
                return Unreadable(original, asked);
            }
        }

        if (BaseKind(asked) == AnswerKind.Angle && Letter().Match(text) is { Success: true } letter && !SecondsAfterMinutes().IsMatch(text))
        {
            var side = letter.Groups["side"].Value[0];
            if (asked.Turn > 0)
            {
                return Unreadable(original, asked);
            }

            if (asked.Kind == AnswerKind.Latitude && side is ('e' or 'w'))
            {
                return AnswerInput.Not(Worded($"'{original}' lies east or west, but a latitude lies north or south. Write N or S, such as {asked.ExampleNow}."));
            }

            if (asked.Kind == AnswerKind.Longitude && side is ('n' or 's'))
            {
                return AnswerInput.Not(Worded($"'{original}' lies north or south, but a longitude lies east or west. Write E or W, such as {asked.ExampleNow}."));
            }

            if (signed)
            {
                return AnswerInput.Not(Worded($"'{original}' has a sign and a letter. Write either the sign or the letter, such as {asked.ExampleNow}."));
            }

            sign = side is 's' or 'w' ? -1 : 1;
            text = letter.Groups["rest"].Value.Trim();
        }

        var input = text.Contains(':', StringComparison.Ordinal) ? ReadColons(text, original, asked) : ReadParts(text, original, asked);
        if (input.Value is not { } value)
        {
            return input;
        }

        value *= sign;
        if (asked.Kind == AnswerKind.Clock && (value < 0 || value > 24))
        {
            return AnswerInput.Not(Worded($"'{original}' is outside 00:00 to 24:00. Write {asked.AskedNow}, such as {asked.ExampleNow}."));
        }

        return asked.Kind switch
        {
            AnswerKind.Latitude when Math.Abs(value) > 90 => AnswerInput.Not(Worded($"'{original}' is outside -90 to +90 degrees (north positive). Did you write a longitude?")),
            AnswerKind.Longitude when Math.Abs(value) > 180 => AnswerInput.Not(Worded($"'{original}' is outside -180 to +180 degrees (east positive). Write west with a minus or a W.")),
            _ => AnswerInput.Of(value),
        };
    }

    private static AnswerInput ReadColons(string text, string original, AnswerUnit asked)
    {
        var match = Colons().Match(text);
        if (!match.Success || asked.Kind is AnswerKind.Plain or AnswerKind.Length or AnswerKind.Days)
        {
            return Unreadable(original, asked);
        }

        var first = Number(match.Groups[1].Value);
        var minutes = Number(match.Groups[2].Value);
        var seconds = match.Groups[3].Success ? Number(match.Groups[3].Value) : 0;
        if (minutes >= 60 || seconds >= 60)
        {
            return AnswerInput.Not(Worded($"'{original}' has minutes or seconds of 60 or more. Write {asked.AskedNow}, such as {asked.ExampleNow}."));
        }

        var half = match.Groups["half"].Value;
        if (half.Length > 0)
        {
            if (asked.Kind != AnswerKind.Clock || first is < 1 or > 12)
            {
                return Unreadable(original, asked);
            }

            first = first % 12 + (half == "pm" ? 12 : 0);
        }

        var whole = first + minutes / 60 + seconds / 3600;
        return AnswerInput.Of(asked.Kind == AnswerKind.Time ? whole * 3600 / asked.Size : whole);
    }

    private static AnswerInput ReadParts(string text, string original, AnswerUnit asked)
    {
        if (!Row().IsMatch(text))
        {
            return Unreadable(original, asked);
        }

        var parts = Part().Matches(text).Select(m => (Number: m.Groups["number"].Value, Word: m.Groups["word"].Value)).ToArray();
        if (parts.Length > 3 || parts.SkipLast(1).Any(p => p.Number.Contains('.', StringComparison.Ordinal)))
        {
            return Unreadable(original, asked);
        }

        if (asked.Kind == AnswerKind.Clock && parts is [{ Word: "" }] && parts[0].Number.Contains('.', StringComparison.Ordinal))
        {
            return AnswerInput.Not(Worded($"'{original}' may mean a part of an hour or minutes. Write a clock time with a colon, such as {asked.ExampleNow}."));
        }

        var total = 0.0;
        var before = double.PositiveInfinity;
        for (var i = 0; i < parts.Length; i++)
        {
            if (SizeOf(parts[i].Word, i, before, parts.Length, asked) is not { } size)
            {
                return Words.TryGetValue(parts[i].Word, out var other) && other.Kind != BaseKind(asked)
                    ? AnswerInput.Not(Worded($"'{original}' is {Name(other.Kind)}, but the question asks for {asked.AskedNow}. Write a number such as {asked.ExampleNow}."))
                    : Unreadable(original, asked);
            }

            var number = Number(parts[i].Number);
            if (i > 0 && (size >= before || number * size >= before))
            {
                return AnswerInput.Not(Worded($"'{original}' has minutes or seconds of 60 or more. Write {asked.AskedNow}, such as {asked.ExampleNow}."));
            }

            total += number * size;
            before = size;
        }

        return AnswerInput.Of(total / asked.Size);
    }

    /// <summary>How large one part is, in the base of what is asked; null when it does not belong.</summary>
    private static double? SizeOf(string word, int place, double before, int count, AnswerUnit asked)
    {
        var kind = BaseKind(asked);
        if (word.Length == 0)
        {
            // Bare numbers: one takes the unit asked for; a row of them is degrees, minutes, seconds or hours, minutes, seconds.
            return count == 1 ? asked.Size
                : kind == AnswerKind.Angle ? Math.Pow(60, -place)
                : asked.Kind == AnswerKind.Clock ? 3600 * Math.Pow(60, -place)
                : place > 0 && kind == AnswerKind.Time && before > 1 ? before / 60
                : null;
        }

        // After degrees (or hours) "m", "min" and the prime are its sixtieths, "s" and the double prime the sixtieths of those.
        if (kind is AnswerKind.Angle && (place > 0 || word == "d"))
        {
            switch (word)
            {
                case "d":
                    return 1;
                case "m" or "min" or "mins" or "minutes":
                    return 1 / 60.0;
                case "s" or "sec" or "secs" or "seconds":
                    return 1 / 3600.0;
            }
        }

        if (kind is AnswerKind.Time && word == "m")
        {
            return 60;
        }

        return Words.TryGetValue(word, out var known) && known.Kind == kind ? known.Size : null;
    }

    private static AnswerKind BaseKind(AnswerUnit asked) => asked.Kind switch
    {
        AnswerKind.Clock => AnswerKind.Time,
        AnswerKind.Latitude or AnswerKind.Longitude => AnswerKind.Angle,
        _ => asked.Kind,
    };

    private static string Name(AnswerKind kind) => kind switch
    {
        AnswerKind.Time => Worded($"an amount of time"),
        AnswerKind.Angle => Worded($"an angle"),
        AnswerKind.Length => Worded($"a length"),
        _ => Worded($"a number of days"),
    };

    private static AnswerInput Unreadable(string original, AnswerUnit asked) =>
        AnswerInput.Not(Worded($"'{original}' cannot be read as {asked.AskedNow}. Write it in digits, such as {asked.ExampleNow}."));

    private static double Number(string digits) => double.Parse(digits, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture);

    [GeneratedRegex(" +")]
    private static partial Regex Spaces();

    // A side of the world before or after everything else; after a digit, a sign or a space, so that the end of a unit's word is none.
    [GeneratedRegex("^(?:(?<side>[nsew])(?:orth|outh|ast|est)? ?(?<rest>[0-9.].*)|(?<rest>.*[0-9.°'\" ])(?<side>[nsew])(?:orth|outh|ast|est)?)$")]
    private static partial Regex Letter();

    // "14m24s" ends in seconds, not in the south.
    [GeneratedRegex("[0-9] ?(?:m|min|mins|minutes|') ?[0-9.]+ ?s$")]
    private static partial Regex SecondsAfterMinutes();

    [GeneratedRegex("^([0-9]{1,3}):([0-9]{2})(?::([0-9]{2}(?:\\.[0-9]*)?))? ?(?:h|(?<half>am|pm))?$")]
    private static partial Regex Colons();

    [GeneratedRegex("^(?:(?>[0-9]{1,12}(?:\\.[0-9]*)?|\\.[0-9]+)(?: ?(?>[a-z°]+|['\"]) ?| (?=[0-9.])|$))+$")]
    private static partial Regex Row();

    [GeneratedRegex("(?<number>[0-9]{1,12}(?:\\.[0-9]*)?|\\.[0-9]+) ?(?<word>[a-z°]+|['\"])?")]
    private static partial Regex Part();
}
