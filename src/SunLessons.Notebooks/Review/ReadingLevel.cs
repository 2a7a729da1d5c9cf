using System.Text.RegularExpressions;

namespace SunLessons.Notebooks.Review;

/// <summary>How hard a text is to read.</summary>
public static partial class ReadingLevel
{
    /// <summary>The highest grade that a lesson's prose may have.</summary>
    public const double HighestGrade = 8.0;

    [GeneratedRegex(@"\p{L}[\p{L}'’]*")]
    private static partial Regex Word();

    [GeneratedRegex("[aeiouy]+")]
    private static partial Regex VowelGroup();

    /// <summary>
    /// The Flesch-Kincaid grade level of English sentences: 0.39 words a sentence + 11.8 syllables a word - 15.59
    /// (Kincaid, Fishburne, Rogers and Chissom 1975, Naval Technical Training Command report 8-75). Syllables are counted
    /// as groups of vowels without a silent final "e", which is within about a tenth of a dictionary count over a page.
    /// </summary>
    /// <param name="sentences">The sentences, one each.</param>
    /// <returns>The school grade (8 is age 13 to 14); 0 for no words.</returns>
    public static double FleschKincaidGrade(IEnumerable<string> sentences)
    {
        int sentenceCount = 0;
        int words = 0;
        int syllables = 0;
        foreach (string sentence in sentences)
        {
            int inThis = 0;
            foreach (Match word in Word().Matches(sentence))
            {
                inThis++;
                syllables += Syllables(word.Value);
            }

            words += inThis;
            sentenceCount += inThis > 0 ? 1 : 0;
        }

        return words == 0 ? 0.0 : (0.39 * words / sentenceCount) + (11.8 * syllables / words) - 15.59;
    }

    internal static int Syllables(string word)
    {
        string low = word.ToLowerInvariant();
        int groups = VowelGroup().Count(low);
        bool silent = low.Length > 2 && low.EndsWith('e') && !low.EndsWith("le", StringComparison.Ordinal) && !"aeiouy".Contains(low[^2])
            || low.EndsWith("ed", StringComparison.Ordinal) && low.Length > 3 && !"td".Contains(low[^3])
            || low.EndsWith("es", StringComparison.Ordinal) && low.Length > 3 && !"sxzhcg".Contains(low[^3]);
        return Math.Max(1, silent ? groups - 1 : groups);
    }
}
