using System.Net;
using System.Text;
using System.Text.Json.Nodes;
using SunLessons.Notebooks;
using SunLessons.Places;
using SunLessons.Publishing.Lessons;
using SunLessons.Publishing.Pages;
using SunLessons.Publishing.Paper;
using SunLessons.Publishing.Players;
using SunLessons.Scripts;
using SunLessons.Words;

namespace SunLessons.Publishing;

/// <summary>
/// Writes lessons as pages that need no server, no kernel and no installation: the lesson's cells and the library compiled to run in the page.
/// </summary>
/// <param name="program">The folder of the running program.</param>
/// <param name="say">Is told what takes long.</param>
public sealed class Publisher(string program, Action<string> say)
{
    /// <summary>Publishes every lesson of a folder.</summary>
    /// <param name="shelf">The lessons.</param>
    /// <param name="target">The folder that the pages go to; made when it is not there.</param>
    /// <param name="singleFile">Whether each lesson becomes one file that holds everything.</param>
    /// <returns>The files that were written, relative to the target.</returns>
    /// <exception cref="PublishProblemException">A lesson cannot be published; nothing was written then.</exception>
    public async Task<IReadOnlyList<string>> PublishAsync(LessonShelf shelf, string target, bool singleFile)
    {
        ArgumentNullException.ThrowIfNull(shelf);
        var problems = shelf.Problems();
        var lessons = shelf.Lessons();
        if (problems.Count > 0 || lessons.Count == 0)
        {
            throw new PublishProblemException(problems.Count > 0 ? string.Join('\n', problems) : $"There are no lessons in {shelf.Root}; name a folder that holds one folder a lesson.");
        }

        var player = await PlayerFolder.FindAsync(program, say);
        var references = CellReferences.FromFolder(Path.Combine(player, "refs"));
        var words = WordTable.In(WordTable.First);
        var pages = new List<LessonPage>();
        foreach (var lesson in lessons)
        {
            say($"{lesson.Title}");
            var notebook = lesson.ReadNotebook();
            var cells = LessonBuild.Of(lesson.Folder, notebook, references);
            var vigo = Gazetteer.Towns.First(town => town.Name == "Vigo");
            pages.Add(new LessonPage(lesson, notebook, cells, await LessonRun.OfAsync(lesson.Folder, cells, vigo, predicted: false), await LessonRun.OfAsync(lesson.Folder, cells, vigo, predicted: true), words));
        }

        var files = new PageFiles(target);
        PageFrame frame = singleFile ? new SingleFrame(words, player) : new FolderFrame(words);
        var style = new PaperStyle(inside: singleFile);
        style.AddTo(files);
        var sheets = new Sheets(style, words);
        foreach (var page in pages)
        {
            files.Add(page.FileName, page.Html(frame));
            sheets.AddTo(files, page);
        }

        if (!singleFile)
        {
            files.Add(ClassPage.FileName, ClassPage.Html(frame, pages, words));
            files.Add("index.html", Index(frame, lessons, words));
            files.Add("shared/page.js", PageFrame.PageScript);
            foreach (var name in (string[])["sunlessons.css", "page.css", "icon.svg"])
            {
                files.Add("shared/" + name, Asset.Text(name));
            }

            files.Add("shared/fonts/stix-two-math.woff2", Asset.Bytes("stix-two-math.woff2"));
            files.Add("shared/fonts/stix-two-math.OFL.txt", Asset.Text("stix-two-math.OFL.txt"));
            files.Add("shared/player.js", File.ReadAllText(Path.Combine(player, "player.js")));
            files.Add("shared/compiler.js", File.ReadAllText(Path.Combine(player, "compiler.js")));
            files.Add("lessons.webmanifest", new JsonObject
            {
                ["name"] = words["page.home.title"],
                ["short_name"] = "SunLessons",
                ["start_url"] = "index.html",
                ["display"] = "browser",
                ["icons"] = new JsonArray(new JsonObject { ["src"] = "shared/icon.svg", ["type"] = "image/svg+xml", ["sizes"] = "any" }),
            }.ToJsonString());
            files.AddOfflineWorker("offline.js");
        }

        return files.Write();
    }

    private static string Index(PageFrame frame, IReadOnlyList<Notebooks.Lesson> lessons, WordTable words)
    {
        var items = new StringBuilder();
        foreach (var lesson in lessons)
        {
            items.Append($"<li><h2><a href=\"{lesson.Folder}.html\">{WebUtility.HtmlEncode(lesson.Title)}</a></h2><p>{WebUtility.HtmlEncode(lesson.Summary)}</p><p class=\"soft\">{WebUtility.HtmlEncode(words.Say("page.minutes", lesson.Number, lesson.Minutes))}</p>{Sheets.Links(lesson.Folder, words)}</li>\n");
        }

        return frame.Page(words["page.home"], $"<h1>{WebUtility.HtmlEncode(words["page.home.title"])}</h1>\n<p>{WebUtility.HtmlEncode(words["page.home.intro"])}</p>\n<ol class=\"shelf\" role=\"list\">\n{items}</ol>\n<p><a href=\"{ClassPage.FileName}\">{WebUtility.HtmlEncode(words["class.title"])}</a></p>");
    }
}
