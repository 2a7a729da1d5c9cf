using System.Text.RegularExpressions;

namespace SunLessons.Notebooks.Review;

/// <summary>How hard a text is to read.</summary>
public static partial class ReadingLevel
{
    /// <summary>The highest grade that a lesson's prose may have.</summary>
    public const double HighestGrade = 8.0;

    /// <summary>The lowest score that a lesson's Spanish prose may have: "bastante fácil" begins here.</summary>
    public const double LowestScore = 65.0;

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
        (int sentenceCount, int words, int syllables) = Counted(sentences, Syllables);
        return words == 0 ? 0.0 : (0.39 * words / sentenceCount) + (11.8 * syllables / words) - 15.59;
    }

    /// <summary>
    /// The perspicuity of Spanish sentences: 206.835 - 62.3 syllables a word - words a sentence (F. Szigriszt Pazos, Sistemas predictivos de legibilidad del
    /// mensaje escrito: fórmula de perspicuidad, thesis, Universidad Complutense de Madrid 1993). On the INFLESZ scale (I. M. Barrio-Cantalejo and others, Anales del
    /// Sistema Sanitario de Navarra 31 (2008) 135-152) above 80 is very easy, 65 to 80 quite easy, 55 to 65 normal, 40 to 55 rather hard, below 40 very hard.
    /// Formula and scale are taken from later accounts of these two.
    /// </summary>
    /// <param name="sentences">The sentences, one each.</param>
    /// <returns>The score, mostly 0 to 100, higher for easier texts; 206.835 for no words.</returns>
    public static double SzigrisztPazosScore(IEnumerable<string> sentences)
    {
        (int sentenceCount, int words, int syllables) = Counted(sentences, SpanishSyllables);
        return words == 0 ? 206.835 : 206.835 - (62.3 * syllables / words) - ((double)words / sentenceCount);
    }

    private static (int Sentences, int Words, int Syllables) Counted(IEnumerable<string> sentences, Func<string, int> syllablesOf)
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
                syllables += syllablesOf(word.Value);
            }

            words += inThis;
            sentenceCount += inThis > 0 ? 1 : 0;
        }

        return (sentenceCount, words, syllables);
    }

    /// <summary>
    /// Spanish writes its syllables: each of a, e, o and each i or u with an accent is the heart of one, and so is a group of i and u alone. The u of que, qui,
    /// gue and gui is silent; y is a vowel at the end of a word only.
    /// </summary>
    internal static int SpanishSyllables(string word)
    {
        string low = SilentU().Replace(word.ToLowerInvariant(), "");
        if (low.EndsWith('y'))
        {
            low = low[..^1] + "i";
        }

        return Math.Max(1, SpanishVowels().Matches(low).Sum(group => Math.Max(1, group.Value.Count("aeoáéóíú".Contains))));
    }

    [GeneratedRegex("(?<=q)u|(?<=g)u(?=[eiéí])")]
    private static partial Regex SilentU();

    [GeneratedRegex("[aeiouáéíóúü]+")]
    private static partial Regex SpanishVowels();

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
