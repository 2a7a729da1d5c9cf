using System.Globalization;

namespace SunLessons.Words;

/// <summary>
/// What code says, in the language of the current culture. The English sentence stands in the code and is the key of its translation, so English needs no table
/// and a language that lacks a sentence says it in English.
/// </summary>
public static class Speech
{
    /// <summary>The language spoken now: English unless a <see cref="LanguageCulture"/> is current.</summary>
    public static LanguageCulture Culture => CultureInfo.CurrentCulture as LanguageCulture ?? LanguageCulture.Of(WordTable.First);

    /// <summary>The words of the language spoken now.</summary>
    public static WordTable Words => Culture.Words;

    /// <summary>A sentence of the code in the language spoken now. Its key is the sentence with {0}, {1} in the places of its values.</summary>
    public static string Worded(FormattableString english) => Culture.Worded(english);

    /// <summary>
    /// A text that comes finished from elsewhere, such as a cause named by the science, in the language spoken now: as a whole, or by the pattern that it follows.
    /// </summary>
    public static string Translated(string english) => Words.Translated(english);

    /// <summary>A finished text with the decimal sign of the language spoken now: a point between two digits becomes it.</summary>
    public static string Numbered(string text) => Culture.Numbered(text);
}
