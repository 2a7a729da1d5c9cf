using System.Net;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using SunLessons.Cells;
using SunLessons.Cells.Checks;
using SunLessons.Publishing.Lessons;
using SunLessons.Words;

namespace SunLessons.Publishing.Pages;

/// <summary>The teacher's page: a folder of saved answers, counted in the browser. It knows the questions of the lessons it is published with.</summary>
internal static partial class ClassPage
{
    public const string FileName = "class.html";

    public static string Html(PageFrame frame, IReadOnlyList<LessonPage> lessons, WordTable words)
    {
        string W(string key) => WebUtility.HtmlEncode(words[key]);
        var body = $"""
            <h1>{W("class.title")}</h1>
            <p>{W("class.intro")}</p>
            <div class="place-form">
            <div class="field"><label for="class-folder">{W("class.folder")}</label><input type="file" id="class-folder" webkitdirectory multiple /></div>
            <div class="field"><label for="class-files">{W("class.single")}</label><input type="file" id="class-files" accept=".json" multiple /></div>
            </div>
            <div id="class-result"></div>
            """;
        var known = new JsonObject
        {
            ["lessons"] = new JsonObject(lessons.DistinctBy(page => page.Lesson.Id).Select(page => KeyValuePair.Create(page.Lesson.Id, (JsonNode?)Questions(page)))),
            ["slips"] = new JsonObject(typeof(UsualSlips).GetProperties().Select(property => property.GetValue(null)).OfType<SlipKind>()
                .Select(slip => KeyValuePair.Create(slip.Id, (JsonNode?)slip.Name))),
        };
        return frame.Page(words["class.title"], body, PageFrame.DataBlock("class", known) + PageFrame.WordBlock(words, "class.", "culture.decimal"), computes: false);
    }

    private static JsonObject Questions(LessonPage page)
    {
        JsonObject Of(string part) => new(page.Asleep.Host.Channels
            .Where(channel => (string?)channel.State["_sunlessons_role"] == part && channel.State["_sunlessons_key"] is not null)
            .DistinctBy(channel => (string)channel.State["_sunlessons_key"]!)
            .Select(channel => KeyValuePair.Create((string)channel.State["_sunlessons_key"]!, (JsonNode?)Question(page.Asleep, channel.State))));
        return new JsonObject { ["title"] = page.Lesson.Title, ["predictions"] = Of("prediction"), ["checks"] = Of("check") };
    }

    // The first child of such a box asks the question.
    private static string Question(LessonRun run, JsonObject box) =>
        WebUtility.HtmlDecode(Tags().Replace((string?)LessonRun.Find(run.Host, (string)box["children"]![0]!).State["value"] ?? "", ""));

    [GeneratedRegex("<[^>]*>")]
    private static partial Regex Tags();
}
