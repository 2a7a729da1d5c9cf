using System.Net;
using System.Text;
using SunLessons.Publishing.Paper;
using SunLessons.Words;

namespace SunLessons.Publishing.Pages;

/// <summary>The list of the published lessons, and of what goes with them.</summary>
internal static class IndexPage
{
    /// <summary>The list in a language: <c>index.html</c> in English, <c>index.es.html</c> in Spanish.</summary>
    public static string FileIn(WordTable words) => PageFrame.NameIn("index", words) + ".html";

    public static string Html(PageFrame frame, IReadOnlyList<LessonPage> lessons, WordTable words, IReadOnlyList<WordTable> languages)
    {
        var others = string.Concat(languages.Where(other => other != words).Select(other => PageFrame.LanguageLink(FileIn(other), other["page.home"], other)));
        string W(string key) => WebUtility.HtmlEncode(words[key]);
        var items = new StringBuilder();
        foreach (var page in lessons)
        {
            var lesson = page.Lesson;

            // A lesson that is not translated says in which language it is.
            var language = page.Words == words ? "" : $" lang=\"{page.Words.Language}\"";
            items.Append($"<li><h2><a href=\"{page.FileName}\" hreflang=\"{page.Words.Language}\"{language}>{WebUtility.HtmlEncode(lesson.Title)}</a></h2><p{language}>{WebUtility.HtmlEncode(lesson.Summary)}</p><p class=\"soft\">{WebUtility.HtmlEncode(words.Say("page.minutes", lesson.Number, lesson.Minutes))}</p>{Sheets.Links(lesson.Folder, words)}</li>\n");
        }

        return frame.Page(words["page.home"], $"""
            {others}<h1>{W("page.home.title")}</h1>
            <p>{W("page.home.intro")}</p>
            <ol class="shelf" role="list">
            {items}</ol>
            <h2>{W("page.home.more")}</h2>
            <ul><li><a href="{TalkPage.Lesson(words).Folder}.html">{W("talk.title")}</a></li><li><a href="{ClassPage.FileIn(words)}">{W("class.title")}</a></li></ul>
            """);
    }
}
