using System.Net;
using System.Text.Json.Nodes;
using SunLessons.Cells;
using SunLessons.Cells.Checks;
using SunLessons.Cells.Predictions;
using SunLessons.Words;

namespace SunLessons.Publishing.Pages;

/// <summary>
/// The teacher's page: a folder of saved answers, counted in the browser. It knows the questions of the lessons it is published with; answers to a translated
/// lesson are counted with those to the lesson itself, for they answer the same questions.
/// </summary>
internal static class ClassPage
{
    public static string FileIn(WordTable words) => PageFrame.NameIn("class", words) + ".html";

    /// <summary>The page in a language.</summary>
    /// <param name="frame">What stands around it.</param>
    /// <param name="lessons">Each lesson in its languages, English first.</param>
    /// <param name="words">The language.</param>
    /// <param name="languages">All languages in which there is such a page.</param>
    public static string Html(PageFrame frame, IReadOnlyList<IReadOnlyList<LessonPage>> lessons, WordTable words, IReadOnlyList<WordTable> languages)
    {
        string W(string key) => WebUtility.HtmlEncode(words[key]);
        var others = string.Concat(languages.Where(other => other != words).Select(other => PageFrame.LanguageLink(FileIn(other), other["class.title"], other)));
        var body = $"""
            {others}<h1>{W("class.title")}</h1>
            <p>{W("class.intro")}</p>
            <div class="place-form">
            <div class="field"><label for="class-folder">{W("class.folder")}</label><input type="file" id="class-folder" webkitdirectory multiple /></div>
            <div class="field"><label for="class-files">{W("class.single")}</label><input type="file" id="class-files" accept=".json" multiple /></div>
            </div>
            <div id="class-result"></div>
            """;
        var known = new JsonObject
        {
            ["lessons"] = new JsonObject(lessons.DistinctBy(editions => editions[0].Lesson.Id).Select(editions => KeyValuePair.Create(editions[0].Lesson.Id, (JsonNode?)Questions(editions, words)))),
            ["editions"] = new JsonObject(lessons.SelectMany(editions => editions.Skip(1).Select(edition => KeyValuePair.Create(edition.Lesson.Id, (JsonNode?)editions[0].Lesson.Id)))),
            ["slips"] = new JsonObject(typeof(UsualSlips).GetProperties().Select(property => property.GetValue(null)).OfType<SlipKind>()
                .Select(slip => KeyValuePair.Create(slip.Id, (JsonNode?)words.Translated(slip.Name)))),
        };
        return frame.Page(words["class.title"], body, PageFrame.DataBlock("class", known) + PageFrame.WordBlock(words, "class.", "culture.decimal"), computes: false);
    }

    private static JsonObject Questions(IReadOnlyList<LessonPage> editions, WordTable words)
    {
        var told = editions.FirstOrDefault(edition => edition.Words == words) ?? editions[0];
        var checks = Of<Check>(told);
        var predictions = Of<Prediction>(told);
        var slips = checks.OfType<NumberCheck>().SelectMany(check => check.Slips).Select(slip => slip.Kind).DistinctBy(kind => kind.Id);
        return new JsonObject
        {
            ["title"] = told.Lesson.Title,
            ["predictions"] = new JsonObject(predictions.Select(guess => KeyValuePair.Create(guess.Key, (JsonNode?)guess.Question))),
            ["checks"] = new JsonObject(checks.Select(check => KeyValuePair.Create(check.Key, (JsonNode?)told.Asleep.Ask(() => check.Question)))),
            ["slips"] = new JsonObject(slips.Select(kind => KeyValuePair.Create(kind.Id, (JsonNode?)words.Translated(kind.Name)))),
            ["said"] = new JsonObject(editions.Where(edition => edition != told).SelectMany(edition => Said(edition, told)).DistinctBy(pair => pair.Key)),
        };
    }

    // A learner's file holds the words of the answer that was chosen: the same answer in this page's language, by what was asked.
    private static IEnumerable<KeyValuePair<string, JsonNode?>> Said(LessonPage from, LessonPage to)
    {
        var own = Answers(to).ToDictionary(entry => entry.Key, entry => entry.Answers);
        return Answers(from).Where(entry => own.ContainsKey(entry.Key)).SelectMany(entry =>
            entry.Answers.Zip(own[entry.Key], (theirs, ours) => KeyValuePair.Create($"{entry.Key}:{theirs}", (JsonNode?)ours)));
    }

    private static IEnumerable<(string Key, IReadOnlyList<string> Answers)> Answers(LessonPage page) =>
        Of<Prediction>(page).Select(guess => ("prediction:" + guess.Key, guess.Options))
            .Concat(Of<ChoiceCheck>(page).Select(check => ("check:" + check.Key, (IReadOnlyList<string>)[.. check.Options.Select(option => option.Text)])));

    private static IReadOnlyList<T> Of<T>(LessonPage page)
        where T : Shown => [.. page.Cells.SelectMany(cell => page.Asleep.Things(cell.Cell.Id)).OfType<T>().DistinctBy(thing => thing.Key)];
}
