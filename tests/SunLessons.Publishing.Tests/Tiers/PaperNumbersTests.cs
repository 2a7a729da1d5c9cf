using AngleSharp.Dom;
using SunLessons.Cells.Checks;
using SunLessons.Cells.Live;
using SunLessons.Cells.Predictions;
using SunLessons.Cells.Trials;
using SunLessons.Cells.Worked;
using SunLessons.CivilTime;
using SunLessons.Figures;
using SunLessons.Magnetism;
using SunLessons.Notebooks;
using SunLessons.Notebooks.Markup;
using SunLessons.Places;
using SunLessons.Publishing.Tests.Support;
using SunLessons.Words;

namespace SunLessons.Publishing.Tests.Tiers;

/// <summary>
/// Every number of the sheets of paper, and of the published page as it stands without script, beside the same lesson run by the kernel's engine: all that holds
/// a digit, in the order of the sheet, so that none is missing and none is one too many.
/// </summary>
/// <remarks>Not compared: the numbers of pages at the foot, which the browser counts.</remarks>
public sealed class PaperNumbersTests(PublishedLessons published)
{
    public static TheoryData<string> Editions => PlayerNumbersTests.Editions;

    // In this order answers stand on the teacher's sheet.
    private static readonly string[] Answered = ["recall", "prediction", "experiment", "worked", "check"];

    [Theory]
    [MemberData(nameof(Editions))]
    public async Task A_page_without_script_shows_the_kernels_numbers(string folder)
    {
        await using var kernel = await KernelLesson.StartAsync(Edition(folder), pen: null);
        kernel.Run.Lesson.BecomeCurrent();
        var outputs = Html.Read(published, folder + ".html").QuerySelectorAll("section.step[data-cell] > .cell-output").ToDictionary(output => output.ParentElement!.GetAttribute("data-cell")!);
        Assert.Equal(kernel.Run.Cells.Count, outputs.Count);
        var asleep = 0;
        foreach (var (cell, output) in outputs)
        {
            string[] shown = [.. output.ChildNodes.Where(part => part is not IElement { LocalName: "noscript" }).SelectMany(NumberLines.Of)];
            Assert.Equal(kernel.StillLines(cell), shown);
            asleep += shown.Length;
        }

        await AwakeAsync(kernel);
        var awake = 0;
        foreach (var (cell, output) in outputs)
        {
            if (output.QuerySelector("noscript") is { } woken)
            {
                string[] shown = [.. NumberLines.Of(woken)];
                Assert.Equal(kernel.StillLines(cell), shown);
                awake += shown.Length;
            }
        }

        Assert.True(asleep > 100 && awake > 500, $"{asleep} and {awake} lines");
    }

    [Theory]
    [MemberData(nameof(Editions))]
    public async Task The_sheets_of_both_papers_show_the_kernels_numbers(string folder)
    {
        var edition = Edition(folder);
        await using var kernel = await KernelLesson.StartAsync(edition, pen: null);
        await AwakeAsync(kernel);
        kernel.Run.Lesson.BecomeCurrent();
        var words = WordTable.In(edition.Language);
        IEnumerable<NotebookCell> Cells(Func<NotebookCell, bool> which) => kernel.Notebook.Cells.Where(which);
        IEnumerable<string> Framed(IEnumerable<string> lines) => [words.Say("page.minutes", edition.Number, edition.Minutes), .. lines, SmallPrint(words)];
        string[] learner = [.. NumberLines.Of(Framed(Cells(cell => cell.Role is not ("teacher" or "sources" or "own-dial"))
            .SelectMany(cell => cell.Type == CellType.Markdown ? Text(kernel, cell) : Things(kernel, cell).SelectMany(thing => Learner(kernel, thing)))))];
        string[] teacher = [.. NumberLines.Of(Framed(Cells(cell => cell.Role == "teacher").SelectMany(cell => Text(kernel, cell))
            .Concat(Answered.SelectMany(role => Cells(cell => cell.Role == role && cell.Type == CellType.Code)).SelectMany(cell => Things(kernel, cell)).SelectMany(thing => Teacher(words, thing)))
            .Concat(Cells(cell => cell.Role == "sources").SelectMany(cell => Text(kernel, cell)))))];
        // Fewer would mean that something is not read any more.
        Assert.True(learner.Length > 300 && teacher.Length > 60, $"{learner.Length} and {teacher.Length} lines");
        foreach (var paper in (string[])["a4", "letter"])
        {
            Assert.Equal(learner, NumberLines.Of(Html.Read(published, $"{folder}.sheet-{paper}.html").QuerySelector("main")!));
            Assert.Equal(teacher, NumberLines.Of(Html.Read(published, $"{folder}.teacher-{paper}.html").QuerySelector("main")!));
        }
    }

    private static Lesson Edition(string folder) => PublishedLessons.Editions.Single(lesson => lesson.Folder == folder);

    private static async Task AwakeAsync(KernelLesson kernel)
    {
        kernel.Run.Lesson.BecomeCurrent();
        foreach (var guess in kernel.Run.All<Prediction>())
        {
            guess.RecordExample();
        }

        await kernel.Run.Lesson.Settled;
    }

    private static IEnumerable<string> Text(KernelLesson kernel, NotebookCell cell) => NumberLines.OfHtml(QuotedValues.Fill(LessonMarkup.CellHtml(cell), kernel.Values));

    private static IReadOnlyList<object> Things(KernelLesson kernel, NotebookCell cell)
    {
        var ran = kernel.Run.Cells.Single(ran => ran.Id == cell.Id);
        // A cell of HTML or SVG shows one thing, which is no object of the library.
        return ran.Outputs.Select(output => output.GetValueOrDefault("image/svg+xml")).FirstOrDefault(svg => svg is not null && cell.Language == "svg") is { } drawing ? [new Drawn((string)drawing!)] : ran.Shown;
    }

    private static IEnumerable<string> Learner(KernelLesson kernel, object thing) => thing switch
    {
        Prediction guess => [guess.Question, .. guess.Grid is { } grid ? Drawing(Lined(grid)) : guess.Options],
        PredictionBeside beside => [beside.Question, string.Join("; ", beside.Outcomes)],
        Explanation own => [own.Question],
        NumberCheck check => [check.Question],
        ChoiceCheck check => [check.Question, .. check.Options.Select(option => option.Text)],
        WorkedExample example => [example.Title, .. example.Lines.SelectMany((line, i) => i < example.FirstBlank ? Step(line) : [line.Words + ":"])],
        TrialTable table => table.Sweeps().SelectMany(sweep => (IEnumerable<string>)[sweep.Caption, sweep.Moved.Label, .. sweep.Headings, .. sweep.Rows.SelectMany(row => row.Inputs.Concat(row.Outcomes))]),
        LiveFigure figure => Drawing(kernel.Run.All<TrialTable>().Select(table => table.Drawn(figure)).FirstOrDefault(drawn => drawn is not null) ?? figure.Figure!),
        Figure figure => Drawing(figure),
        StepsTable steps => NumberLines.OfHtml(steps.ToHtml()),
        LiveText text => [text.PlainText],
        DataTable table => [table.Caption, .. table.Headings, .. table.Rows.SelectMany(row => row)],
        Drawn markup => NumberLines.OfHtml(markup.Svg),
        Cells.Shown => [],
        _ => [thing.ToString() ?? ""],
    };

    private static IEnumerable<string> Teacher(WordTable words, object thing) => thing switch
    {
        ChoiceCheck check => [check.Question, .. check.Options.SelectMany((option, i) => new[] { $"{(char)('A' + i)} {option.Text}", $"{words[$"paper.{(option.State == CheckState.Right ? "right" : option.State == CheckState.Nearly ? "nearly" : "wrong")}"]} {option.Reply}" }), .. Solved(words, check)],
        NumberCheck check =>
        [
            check.Question, check.Say(check.Problem().Answer), ", " + words.Say("paper.within", check.ToleranceText),
            .. check.Problem().Astray.SelectMany(path => new[] { check.Say(path.Value), path.Name, path.Reply }), .. Solved(words, check),
        ],
        PredictionBeside beside => [beside.Question, string.Join("; ", beside.Outcomes)],
        WorkedExample example when example.FirstBlank < example.Lines.Count => [example.Title, .. example.Lines.SelectMany(Step)],
        _ => [],
    };

    private static IEnumerable<string> Solved(WordTable words, Check check) => [$"{words["paper.hints"]} {string.Join(" / ", check.Hints)}", $"{words["paper.solution"]} {check.Solution}"];

    private static IEnumerable<string> Step(WorkedLine line) => [line.Words + ":", line.Text, ". " + line.Why];

    // On paper a sketch has a line at each point, to set the pencil on.
    private static Figure Lined(Figure grid) => Enumerable.Range(0, grid.X.Names.Length).Aggregate(grid.Says(""), (lined, point) => lined.MarkAcross(point));

    /// <summary>A drawing of the kernel's figure, as large as on a sheet: coordinates and words.</summary>
    private static IEnumerable<string> Drawing(Figure figure) =>
        NumberLines.OfHtml(SvgWriter.Write(figure, new SvgOptions { Width = 640, Height = 290, LetterSize = 15, BlackOnly = true, IdPrefix = "kernel" })).Append(figure.Summary);

    private static string SmallPrint(WordTable words) =>
        words.Say("paper.small", LanguageCulture.Of(words.Language).Retold(Gazetteer.Towns.First(town => town.Name == "Vigo").ToString()), CivilZones.TzdbVersion, string.Join(", ", MagneticModels.InUse.Rule.Select(span => span.Name).Distinct()));

    private sealed record Drawn(string Svg);
}
