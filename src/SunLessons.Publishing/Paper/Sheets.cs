using System.Net;
using SunLessons.Publishing.Pages;
using SunLessons.Words;

namespace SunLessons.Publishing.Paper;

/// <summary>The paper that belongs to lessons: for each a sheet to work on and one for the teacher, in every size of paper, to be printed from any browser.</summary>
internal sealed class Sheets(PaperStyle style, WordTable words)
{
    /// <summary>Writes the sheets of a lesson.</summary>
    public void AddTo(PageFiles files, LessonPage page)
    {
        var parts = new PaperParts(page, words);
        // Titles and steps may ask for the learner's place.
        var learner = page.Awake.Ask(new LearnerSheet(page, parts).Body);
        var teacher = page.Awake.Ask(new TeacherSheet(page, parts).Body);
        foreach (var size in PaperSize.All)
        {
            files.Add(Address(page.Lesson.Folder, "sheet", size), Page(page, size, words.Say("paper.sheet.title", page.Lesson.Title), learner));
            files.Add(Address(page.Lesson.Folder, "teacher", size), Page(page, size, words.Say("paper.teacher.title", page.Lesson.Title), teacher));
        }
    }

    /// <summary>Links to the sheets of a lesson.</summary>
    /// <param name="folder">The lesson's folder.</param>
    /// <param name="words">The language.</param>
    public static string Links(string folder, WordTable words)
    {
        string Both(string kind) => string.Join(", ", PaperSize.All.Select(size => $"<a href=\"{Address(folder, kind, size)}\">{size.Name}</a>"));
        return $"<p class=\"paper\">{E(words["paper.links.sheet"])} {Both("sheet")}. {E(words["paper.links.teacher"])} {Both("teacher")}.</p>";
    }

    private static string Address(string folder, string kind, PaperSize size) => $"{folder}.{kind}-{size.Suffix}.html";

    private string Page(LessonPage page, PaperSize size, string title, string body) => $"""
        <!DOCTYPE html>
        <html lang="{words.Language}">
        <head>
        <meta charset="utf-8" />
        <meta name="viewport" content="width=device-width, initial-scale=1" />
        <title>{E(title)} – SunLessons</title>
        {style.Head(size, $"{words["page.footing"]} {words.Say("paper.lesson", page.Lesson.Number)}")}
        </head>
        <body>
        <p class="on-screen">{E(words.Say("paper.print", size.Name))} <a href="{page.FileName}">{E(words["paper.back"])}</a></p>
        <main>
        {body}
        </main>
        </body>
        </html>

        """;

    private static string E(string text) => WebUtility.HtmlEncode(text);
}
