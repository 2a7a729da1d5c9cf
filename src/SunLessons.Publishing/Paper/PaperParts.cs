using System.Net;
using System.Text.RegularExpressions;
using SunLessons.Cells.Checks;
using SunLessons.Cells.Live;
using SunLessons.Cells.Trials;
using SunLessons.CivilTime;
using SunLessons.Figures;
using SunLessons.Magnetism;
using SunLessons.Notebooks;
using SunLessons.Notebooks.Markup;
using SunLessons.Publishing.Pages;
using SunLessons.Words;

namespace SunLessons.Publishing.Paper;

/// <summary>Pieces that the learner's and the teacher's sheets share.</summary>
internal sealed partial class PaperParts(LessonPage page, WordTable words)
{
    // 170 mm at 96 px to the inch: the width of the type area on both papers. Letters of 15 px print as 11.25 points, whatever the printer.
    private const double FigureWidth = 640;
    private const double FigureHeight = 290;
    private const double LetterSize = 15;

    private const int ShortCell = 12;
    private const int RowsTogether = 16;
    private int _figures;

    /// <summary>Text as HTML.</summary>
    public static string E(string text) => WebUtility.HtmlEncode(text);

    /// <summary>A text of the program, as HTML.</summary>
    public string Say(string key, params object[] values) => E(Word(key, values));

    /// <summary>A text of the program, as it is.</summary>
    public string Word(string key, params object[] values) => values.Length == 0 ? words[key] : words.Say(key, values);

    /// <summary>A text cell with its values in their places.</summary>
    public string Text(NotebookCell cell) => page.Filled(LessonMarkup.ToHtml(cell.Source, cell.Id + "-"));

    /// <summary>What a code cell showed.</summary>
    public IReadOnlyList<object> Things(NotebookCell cell) => page.Awake.Things(cell.Id);

    /// <summary>Lines to write on.</summary>
    public static string Lines(int count) => $"<div class=\"lines\" aria-hidden=\"true\">{string.Concat(Enumerable.Repeat("<div></div>", count))}</div>";

    /// <summary>Answers with boxes to tick, and a letter each to talk about them.</summary>
    public static string Boxes(IEnumerable<string> options) =>
        $"<ul class=\"boxes\">{string.Concat(options.Select((option, i) => $"<li><span class=\"box\" aria-hidden=\"true\"></span> <b>{Letter(i)}</b> {E(option)}</li>"))}</ul>";

    /// <summary>The letter of an answer: A for the first.</summary>
    public static string Letter(int index) => ((char)('A' + index)).ToString();

    /// <summary>A figure in black, told apart by line and marker, with its sentence.</summary>
    public string Drawing(Figure figure) =>
        $"<figure>{SvgWriter.Write(figure, new SvgOptions { Width = FigureWidth, Height = FigureHeight, LetterSize = LetterSize, BlackOnly = true, IdPrefix = $"paper-{++_figures}" })}<figcaption>{E(figure.Summary)}</figcaption></figure>";

    /// <summary>A live figure, with the controls of its experiment where stored trials hold them.</summary>
    public string Drawing(LiveFigure live)
    {
        var trials = page.Notebook.Cells.SelectMany(Things).OfType<TrialTable>();
        var figure = page.Awake.Ask(() => trials.Select(table => table.Drawn(live)).FirstOrDefault(drawn => drawn is not null)) ?? live.Figure;
        return figure is null ? $"<p>{E(live.PlainText)}</p>" : $"<div data-figure=\"{E(live.Key)}\">{Drawing(figure)}</div>";
    }

    /// <summary>The stored trials of an experiment, a table for each thing that can be moved.</summary>
    public string Trials(TrialTable table) => $"<p>{Say("paper.trials")}</p><div class=\"sweeps\">" + string.Concat(page.Awake.Ask(table.Sweeps).Select(sweep =>
        Table("trials", sweep.Caption, [sweep.Moved.Label, .. sweep.Headings], [.. sweep.Rows.Select(row => (IReadOnlyList<string>)[.. row.Inputs, .. row.Outcomes])]))) + "</div>";

    /// <summary>A table with heads over columns and before rows. Only one that fills half a page may go on overleaf.</summary>
    public static string Table(string kind, string caption, IReadOnlyList<string> heads, IReadOnlyList<IReadOnlyList<string>> rows) =>
        Tight($"<table class=\"{kind}{(rows.Count > RowsTogether ? " long" : "")}\"><caption>{E(caption)}</caption><thead><tr>{string.Concat(heads.Select(head => $"<th scope=\"col\">{E(head)}</th>"))}</tr></thead><tbody>"
            + string.Concat(rows.Select(row => $"<tr><th scope=\"row\">{E(row[0])}</th>{string.Concat(row.Skip(1).Select(cell => $"<td>{E(cell)}</td>"))}</tr>"))
            + "</tbody></table>");

    /// <summary>Tables with short cells that are never broken: a number and its unit stay on one line.</summary>
    public static string Tight(string html) => Cell().Replace(html, match => WebUtility.HtmlDecode(match.Groups[1].Value).Length <= ShortCell ? $"<td class=\"short\">{match.Groups[1].Value}</td>" : match.Value);

    /// <summary>A table of the lesson.</summary>
    public static string Table(DataTable table) => Table("data", table.Caption, table.Headings, [.. table.Rows.Select(row => (IReadOnlyList<string>)row)]);

    /// <summary>The question as it is asked at the place of the sheet.</summary>
    public string Question(Check check) => $"<p class=\"question\">{E(page.Awake.Ask(() => check.Question))}</p>";

    /// <summary>Room for notes at the end; with it no last page is nearly empty.</summary>
    public string Notes(string heading) => $"<section class=\"notes\"><h2>{Say(heading)}</h2>{Lines(4)}</section>\n";

    /// <summary>Which data the numbers come from: a printed sheet outlives them.</summary>
    public string SmallPrint() => $"<p class=\"small-print\">{Say("paper.small", LanguageCulture.Of(page.Words.Language).Retold(page.Place.ToString()), CivilZones.TzdbVersion, string.Join(", ", MagneticModels.InUse.Rule.Select(span => span.Name).Distinct()))}</p>";

    [GeneratedRegex("<td>([^<]*)</td>")]
    private static partial Regex Cell();
}
