using System.Net;
using System.Text.Json.Nodes;
using SunLessons.Cells.Hosting;
using SunLessons.CivilTime;
using SunLessons.Notebooks;
using SunLessons.Notebooks.Markup;
using SunLessons.Places;
using SunLessons.Publishing.Lessons;
using SunLessons.Publishing.Paper;
using SunLessons.Publishing.Players;
using SunLessons.Words;

namespace SunLessons.Publishing.Pages;

/// <summary>One lesson as one page: its text, its outputs standing still, its compiled cells, and where to find what all pages share.</summary>
/// <param name="Lesson">The lesson.</param>
/// <param name="Notebook">Its notebook.</param>
/// <param name="Cells">Its compiled cells.</param>
/// <param name="Asleep">A run as a learner finds the lesson.</param>
/// <param name="Awake">A run with every prediction recorded.</param>
/// <param name="Words">The language.</param>
internal sealed partial record LessonPage(Notebooks.Lesson Lesson, Notebook Notebook, IReadOnlyList<BuiltCell> Cells, LessonRun Asleep, LessonRun Awake, WordTable Words)
{
    /// <summary>Where the learner stands at first; the still outputs are for it.</summary>
    public required Place Place { get; init; }

    /// <summary>Whether the page belongs to a place, so that nobody is asked for one.</summary>
    public bool IsOfPlace { get; init; }

    /// <summary>The page's file name.</summary>
    public string FileName => Lesson.Folder + ".html";

    /// <summary>The page.</summary>
    /// <param name="frame">What stands around it.</param>
    /// <param name="others">The same lesson in other languages.</param>
    public string Html(PageFrame frame, IEnumerable<LessonPage>? others = null)
    {
        var languages = string.Concat((others ?? []).Select(page => PageFrame.LanguageLink(page.FileName, page.Lesson.Title, page.Words)));
        var steps = string.Concat(Notebook.Cells.Where(cell => cell.Type != CellType.Raw).Select(Step));
        return frame.Page(Lesson.Title, $"""
            {languages}{(IsOfPlace ? "" : PlaceForm())}
            <div class="lesson-bar"><p id="lesson-status" role="status">{E(Words["page.script"])}</p><button type="button" class="quiet" id="lesson-again" hidden>{E(Words["page.again"])}</button></div>
            {steps}
            {(AsksAnything && !frame.StandsAlone ? Sheets.Links(Lesson.Folder, Words) : "")}
            {(AsksAnything ? Answers() : "")}
            """, Data(frame), computes: true);
    }

    private string Step(NotebookCell cell)
    {
        var open = $"<section class=\"step\" data-cell=\"{cell.Id}\"{(cell.Role is { } role ? $" data-role=\"{E(role)}\"" : "")}>";
        if (cell.Type == CellType.Markdown)
        {
            return open + Filled(LessonMarkup.CellHtml(cell)) + "</section>\n";
        }

        var awake = StillHtml.Of(Awake, cell.Id);
        var asleep = StillHtml.Of(Asleep, cell.Id);
        // A made-up prediction woke the figures; it is nobody's.
        var still = awake == asleep || cell.Role == "prediction" ? asleep : $"{asleep}<noscript>{awake}</noscript>";
        var changeable = cell.Language == "csharp" && !IsOfPlace;
        var tools = changeable ? $"""<div class="cell-tools"><button type="button" class="quiet" aria-expanded="false">{E(Words["cell.show"])}</button></div><div class="cell-text" hidden><pre tabindex="0" aria-label="{E(Words["cell.label"])}"><code>{E(cell.Source)}</code></pre></div>""" : "";
        return $"{open}<div class=\"cell-output\">{still}</div>{tools}</section>\n";
    }

    /// <summary>A text of the lesson with the named values in their places.</summary>
    public string Filled(string html) => QuotedValues.Fill(html, Asleep.Values);

    private bool AsksAnything => Asleep.Host.Channels.Any(channel => (string?)channel.State["_sunlessons_role"] is "check" or "prediction");

    private string Answers() => $"""
        <section class="answers" aria-label="{E(Words["page.answers.save"])}"><p>{E(Words["page.answers"])}</p><button type="button" id="answers-save">{E(Words["page.answers.save"])}</button><button type="button" class="quiet" id="answers-forget">{E(Words["page.answers.forget"])}</button></section>
        """;

    private string PlaceForm()
    {
        string Field(string name, string label) => $"""<div class="field"><label for="place-{name}">{E(Words[label])}</label><input type="text" id="place-{name}" autocomplete="off" spellcheck="false" /></div>""";
        var towns = string.Concat(Gazetteer.Towns.Select(town => $"<option value=\"{E(town.Name)}\">{E(town.Name)}</option>"));
        return $"""
            <section class="place" aria-label="{E(Words["place.panel"])}">
            <p class="place-line"><span id="place-line">{E(Words.Say("place.line", Place.Name, LanguageCulture.Of(Words.Language).Retold(Place.Point.ToString()), Place.ZoneId, CivilZones.TzdbVersion))}</span><button type="button" class="quiet" id="place-open" aria-expanded="false" hidden>{E(Words["place.change"])}</button></p>
            <form class="place-form" hidden>
            <div class="field"><label for="place-town">{E(Words["place.town"])}</label><select id="place-town"><option value="">{E(Words["place.pick"])}</option>{towns}</select></div>
            {Field("name", "place.name")}{Field("latitude", "place.latitude")}{Field("longitude", "place.longitude")}{Field("zone", "place.zone")}
            <button type="submit" class="chief">{E(Words["place.use"])}</button>
            <p class="soft">{E(Words["place.help"])}</p>
            </form>
            </section>
            """;
    }

    private string Data(PageFrame frame)
    {
        var all = new MemoryStream();
        var cells = new JsonArray();
        foreach (var cell in Cells)
        {
            var entry = new JsonObject { ["cell"] = cell.Cell.Id, ["number"] = cell.Number, ["from"] = all.Length, ["length"] = cell.Assembly.Length };
            if (cell.Markup is not null)
            {
                (entry["markup"], entry["script"]) = (cell.Cell.Source, cell.Script);
            }

            cells.Add(entry);
            all.Write(cell.Assembly);
        }

        var data = new JsonObject
        {
            ["id"] = Lesson.Id,
            ["title"] = Lesson.Title,
            ["shared"] = frame.Shared,
            ["cells"] = cells,
            ["assemblies"] = PackedText.Of(all.ToArray()),
            ["place"] = Told(Place),
            ["zoneRules"] = CivilZones.TzdbVersion,
            ["ofPlace"] = IsOfPlace,
            ["towns"] = new JsonArray([.. Gazetteer.Towns.Select(Told)]),
        };
        return PageFrame.DataBlock("lesson", data) + PageFrame.WordBlock(Words, "cell.", "page.", "place.", "number.", "table.", "talk.", "choose", "culture.decimal");
    }

    private static JsonObject Told(Place place) => new PagePlace(place.Name, place.Point, place.ZoneId).ToJson();

    private static string E(string text) => WebUtility.HtmlEncode(text);
}
