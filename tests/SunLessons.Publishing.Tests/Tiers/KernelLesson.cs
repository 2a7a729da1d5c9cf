using System.Globalization;
using System.Text.Json.Nodes;
using NodaTime;
using SunLessons.Cells.Hosting;
using SunLessons.Figures;
using SunLessons.Kernel.Rehearsing;
using SunLessons.Notebooks;
using SunLessons.Notebooks.Markup;

namespace SunLessons.Publishing.Tests.Tiers;

/// <summary>A lesson compiled and run by the kernel's own engine, and what a page that draws itself would show of it, number for number.</summary>
internal sealed class KernelLesson : IAsyncDisposable
{
    private readonly Notebook _notebook;
    private readonly Rehearsal _run;

    private KernelLesson(Notebook notebook, Rehearsal run, SetClock clock) => (_notebook, _run, Clock) = (notebook, run, clock);

    /// <summary>Tells when a prediction is recorded.</summary>
    public SetClock Clock { get; }

    /// <summary>The run, with the objects behind what is shown.</summary>
    public Rehearsal Run => _run;

    /// <summary>The lesson's file.</summary>
    public Notebook Notebook => _notebook;

    /// <summary>The numbers that the text quotes, by name.</summary>
    public IReadOnlyDictionary<string, string> Values => _run.Host.Outputs.Where(output => output.ContainsKey(Cells.Lesson.ValueMimeType)).Select(output => output[Cells.Lesson.ValueMimeType])
        .ToDictionary(named => (string)named["name"]!, named => (string)named["text"]!);

    /// <summary>Runs a lesson at Vigo, where published pages stand.</summary>
    /// <param name="lesson">The lesson in one language.</param>
    /// <param name="pen">What live figures are drawn with; none for figures that stand still.</param>
    public static async Task<KernelLesson> StartAsync(Lesson lesson, IFigurePen? pen)
    {
        var (notebook, clock) = (lesson.ReadNotebook(), new SetClock());
        var cells = notebook.Cells.Where(cell => cell.Type == CellType.Code).Select(cell => (cell.Id, cell.Language, cell.Source));
        var run = await Rehearsal.RunAsync(cells, PagePlace.FromDegrees("Vigo", 42.24, -8.72, "Europe/Madrid"), clock, pen);
        Assert.All(run.Cells, cell => Assert.Null(cell.Problem));
        return new KernelLesson(notebook, run, clock);
    }

    /// <summary>Every widget of some models, in the order in which the page shows them.</summary>
    public IReadOnlyList<InMemoryChannel> Widgets(params string[] models) => [.. _run.Cells.SelectMany(cell => cell.Outputs).SelectMany(Roots).SelectMany(Inside).Where(widget => models.Contains(widget.Model))];

    /// <summary>The widgets inside those boxes that have a role, with the box's key.</summary>
    public IReadOnlyList<(string Key, IReadOnlyList<InMemoryChannel> Widgets)> Parts(string role) =>
        [.. Widgets("VBoxModel", "HBoxModel").Where(box => (string?)box.State["_sunlessons_role"] == role).Select(box => ((string)box.State["_sunlessons_key"]!, (IReadOnlyList<InMemoryChannel>)[.. Inside(box)]))];

    /// <summary>Section by section what holds a digit, as a live page shows it.</summary>
    public IReadOnlyList<SectionNumbers> Lines()
    {
        var values = Values;
        return [.. _notebook.Cells.Where(cell => cell.Type != CellType.Raw).Select(cell => new SectionNumbers(cell.Id, cell.Type == CellType.Markdown
            ? [.. NumberLines.OfHtml(QuotedValues.Fill(LessonMarkup.CellHtml(cell), values))]
            : [.. Outputs(cell.Id).SelectMany(output => Roots(output).SelectMany(Live).Concat(NumberLines.OfHtml(Still(output))))]))];
    }

    /// <summary>The same where nothing moves: what a page shows without script.</summary>
    public IReadOnlyList<string> StillLines(string cell) => [.. Outputs(cell).SelectMany(output => NumberLines.OfHtml(
        string.Concat(Roots(output).Select(root => StillWidget.Html(root.Id, id => Find(id) is var widget ? (widget.Model, widget.State) : default))) + Still(output)))];

    public ValueTask DisposeAsync() => _run.DisposeAsync();

    private IEnumerable<IReadOnlyDictionary<string, JsonNode>> Outputs(string cell) =>
        _run.Cells.Where(ran => ran.Id == cell).SelectMany(ran => ran.Outputs).Where(output => !output.ContainsKey(Cells.Lesson.ValueMimeType));

    private IEnumerable<InMemoryChannel> Roots(IReadOnlyDictionary<string, JsonNode> output) =>
        output.TryGetValue("application/vnd.jupyter.widget-view+json", out var view) ? [Find((string)view["model_id"]!)] : [];

    private static string Still(IReadOnlyDictionary<string, JsonNode> output) =>
        output.ContainsKey("application/vnd.jupyter.widget-view+json") ? "" : (string)(output.GetValueOrDefault("image/svg+xml") ?? output.GetValueOrDefault("text/html") ?? output["text/plain"])!;

    private InMemoryChannel Find(string reference) => _run.Host.Channels.Single(channel => channel.Id == reference.Replace("IPY_MODEL_", "", StringComparison.Ordinal));

    private IEnumerable<InMemoryChannel> Inside(InMemoryChannel widget) =>
        widget.State["children"] is JsonArray children ? children.SelectMany(child => Inside(Find((string)child!))).Prepend(widget) : [widget];

    private IEnumerable<string> Live(InMemoryChannel widget)
    {
        var state = widget.State;
        string? Text(string name) => (string?)state[name];
        string[] Options() => [.. (state["_options_labels"] as JsonArray ?? []).Select(option => (string)option!)];
        return widget.Model switch
        {
            "VBoxModel" or "HBoxModel" => state["children"]!.AsArray().SelectMany(child => Live(Find((string)child!))),
            "HTMLModel" when state["_sunlessons_figure"] is JsonObject => Figure(widget),
            "HTMLModel" => NumberLines.OfHtml(Text("value") ?? ""),
            "FloatSliderModel" => NumberLines.Of([Text("description"), Text("_sunlessons_text"), Written((double)state["value"]!, (double)state["step"]!, CultureInfo.CurrentCulture)]),
            "DropdownModel" => NumberLines.Of([Text("description"), Options()[(int)state["index"]!], .. Options()]),
            "RadioButtonsModel" => NumberLines.Of([Text("description"), .. Options().SelectMany((option, i) => new[] { (int?)state["index"] == i ? "ticked 1" : "", option })]),
            "CheckboxModel" => NumberLines.Of([(bool)state["value"]! ? "ticked 1" : "", Text("description")]),
            "TextModel" => NumberLines.Of([Text("description"), Text("placeholder"), Text("value")]),
            "ButtonModel" => NumberLines.Of([Text("description")]),
            // A new kind of control is compared before it is published.
            _ => throw new NotSupportedException($"This test cannot read the widget {widget.Model} yet; write here what a page shows of it."),
        };
    }

    private static IEnumerable<string> Figure(InMemoryChannel widget)
    {
        // The drawing that a page would show: the last one that was told.
        var told = widget.Customs;
        var drawing = told.Select(content => content["figure"] ?? content["columns"]).LastOrDefault(drawn => drawn?["svg"] is not null) ?? widget.State["_sunlessons_figure"]!;
        var last = told.LastOrDefault(content => content["summary"] is not null);
        widget.CustomFromPage(new JsonObject { ["event"] = "table" });
        var table = widget.Customs.Count > told.Count ? (string?)widget.Customs[^1]["table"] : null;
        return
        [
            .. NumberLines.Of([(string?)(last ?? widget.State["_sunlessons_figure"])!["alt"]]),
            .. NumberLines.OfHtml((string)drawing["svg"]!),
            .. NumberLines.Of([(string?)last?["problem"], (string?)last?["summary"] ?? (string?)widget.State["_sunlessons_summary"]]),
            .. NumberLines.OfHtml(table ?? ""),
        ];
    }

    /// <summary>A number as the field beside a slider writes it: with the decimals of a step, and no zeros at its end.</summary>
    public static string Written(double value, double step, CultureInfo culture)
    {
        var decimals = Enumerable.Range(0, 9).First(count => Math.Abs(Math.Round(step, count) - step) < 1e-9);
        return (Math.Round(value, decimals) + 0.0).ToString(culture);
    }

    /// <summary>A clock that stands where it is set.</summary>
    internal sealed class SetClock : IClock
    {
        /// <summary>Where pages are published.</summary>
        public Instant Now { get; set; } = Instant.FromUtc(2026, 1, 1, 12, 0);

        public Instant GetCurrentInstant() => Now;
    }
}

/// <summary>What holds a digit in one section of a lesson.</summary>
/// <param name="Cell">The cell of the section.</param>
/// <param name="Lines">The lines, in reading order.</param>
internal sealed record SectionNumbers(string Cell, IReadOnlyList<string> Lines);
