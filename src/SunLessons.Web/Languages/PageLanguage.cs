using SunLessons.Notebooks;
using SunLessons.Words;

namespace SunLessons.Web.Languages;

/// <summary>In which language a page stands: a lesson's page in the lesson's own, the list of lessons in the one that its address names.</summary>
internal static class PageLanguage
{
    /// <summary>The address of the list of lessons in a language, seen from the root of the site: empty in English, <c>in/es</c> in Spanish.</summary>
    public static string HomeIn(WordTable words) => words.Language == WordTable.First ? "" : "in/" + words.Language;

    /// <summary>The language of the page at an address.</summary>
    /// <param name="path">The address below the root of the site, such as <c>lesson/your-own-noon-es</c>.</param>
    /// <param name="shelf">The lessons.</param>
    public static LanguageCulture At(string path, LessonShelf shelf) => path.Split('?', '#')[0].Trim('/').Split('/') switch
    {
        ["lesson", var lesson] => LanguageCulture.Of(LanguageOf(Uri.UnescapeDataString(lesson), shelf)),
        ["in", var language] => LanguageCulture.Of(language),
        _ => LanguageCulture.Of(WordTable.First),
    };

    private static string LanguageOf(string lesson, LessonShelf shelf)
    {
        try
        {
            return shelf.Find(lesson).Language;
        }
        catch (NotebookFormatException)
        {
            // The page itself says that there is no such lesson.
            return WordTable.First;
        }
    }
}
