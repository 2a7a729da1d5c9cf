using System.Collections.Concurrent;
using System.Globalization;
using System.Runtime.CompilerServices;
using System.Text.RegularExpressions;

namespace SunLessons.Words;

/// <summary>
/// How numbers and dates are written in one language, taken from its own table, so that it is the same on every system and where no culture data are installed
/// (published pages have none). As the current culture it also says in which language the program speaks: it flows with calls and tasks as every culture does.
/// </summary>
public sealed partial class LanguageCulture : CultureInfo
{
    private static readonly ConcurrentDictionary<string, LanguageCulture> Known = new(StringComparer.Ordinal);

    private LanguageCulture(WordTable words)
        : base("")
    {
        Words = words;
        var (months, shortMonths) = (words["culture.months"].Split(' '), words["culture.months.short"].Split(' '));

        // .NET keeps a thirteenth month for other calendars, and the form of a month in a date apart.
        DateTimeFormat.MonthNames = DateTimeFormat.MonthGenitiveNames = [.. months, ""];
        DateTimeFormat.AbbreviatedMonthNames = DateTimeFormat.AbbreviatedMonthGenitiveNames = [.. shortMonths, ""];
        NumberFormat.NumberDecimalSeparator = words["culture.decimal"];
        NumberFormat.NumberGroupSeparator = words["culture.group"];
    }

    /// <summary>The words of the language.</summary>
    public WordTable Words { get; }

    /// <summary>The names of the months as they stand in a short date, January first.</summary>
    public IReadOnlyList<string> ShortMonths => DateTimeFormat.AbbreviatedMonthNames[..12];

    /// <summary>The culture of a language by its two letters; English for a language without a table.</summary>
    public static LanguageCulture Of(string language)
    {
        var words = WordTable.In(language);

        // Formats are kept beside a culture only when it can no longer change.
        return Known.GetOrAdd(words.Language, _ => (LanguageCulture)ReadOnly(new LanguageCulture(words)));
    }

    /// <summary>A sentence of the code in this language. Its key is the sentence with {0}, {1} in the places of its values.</summary>
    public string Worded(FormattableString english)
    {
        ArgumentNullException.ThrowIfNull(english);
        return Words.Translation(english.Format) is { } own ? string.Format(this, own, english.GetArguments()) : english.ToString(this);
    }

    /// <summary>A finished text with this language's decimal sign: a point between two digits becomes it.</summary>
    public string Numbered(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return SentencePattern.WithDecimals(text, Words["culture.decimal"]);
    }

    /// <summary>A finished English text in this language, as <see cref="WordTable.Translated"/>; with this language's decimal sign where it is not known.</summary>
    public string Retold(string text) => Words.Translated(text) is var told && told != text ? told : Numbered(text);

    /// <summary>
    /// A finished English sentence about what was typed, in this language. It quotes what <see cref="InEnglish"/> made of it between “ and ”; a person is told what they typed.
    /// </summary>
    public string? Complaint(string? sentence, string typed) => sentence is null ? null
        : Words.Translated(sentence.Replace($"“{InEnglish(typed).Trim()}”", $"“{typed.Trim()}”", StringComparison.Ordinal));

    /// <summary>What was typed, with units and sides of the world as this language names them put in English: <c>12 minutos</c>, <c>8,72 O</c>.</summary>
    public string InEnglish(string typed)
    {
        ArgumentNullException.ThrowIfNull(typed);
        var names = Words["culture.units"];
        return names.Length == 0 ? typed : LetterRun().Replace(typed, run =>
        {
            var known = Array.Find(names.Split(' '), name => name.StartsWith(run.Value.ToLowerInvariant() + "=", StringComparison.Ordinal));
            return known is null ? run.Value : known[(run.Length + 1)..];
        });
    }

    /// <summary>Two are alike only when they are the same: their data are their own, although .NET takes them all for the culture without a name.</summary>
    public override bool Equals(object? value) => ReferenceEquals(this, value);

    /// <inheritdoc/>
    public override int GetHashCode() => RuntimeHelpers.GetHashCode(Words);

    [GeneratedRegex(@"\p{L}+")]
    private static partial Regex LetterRun();
}
