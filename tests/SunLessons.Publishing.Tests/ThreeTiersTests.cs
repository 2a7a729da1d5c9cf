using AngleSharp.Dom;
using NodaTime;
using SunLessons.Cells.Checks;
using SunLessons.Cells.Hosting;
using SunLessons.Cells.Predictions;
using SunLessons.Cells.Trials;
using SunLessons.Cells.Worked;
using SunLessons.Kernel.Rehearsing;
using SunLessons.Notebooks;
using SunLessons.Publishing.Tests.Support;

namespace SunLessons.Publishing.Tests;

/// <summary>
/// Each number that a lesson makes known by name, as text, in its three tiers: cells that run live, the published page as it stands without script,
/// and the sheets of paper. Live are the kernel's own compiler and run; the pages come from the publisher's.
/// </summary>
public sealed class ThreeTiersTests(PublishedLessons published)
{
    [Theory]
    [MemberData(nameof(PublishedLessons.Folders), MemberType = typeof(PublishedLessons))]
    public async Task Values_quoted_in_the_text_are_the_same_in_all_tiers(string folder)
    {
        await using var live = await LiveAsync(folder);
        live.Lesson.BecomeCurrent();
        var values = live.Host.Outputs.Where(output => output.ContainsKey(Cells.Lesson.ValueMimeType)).Select(output => output[Cells.Lesson.ValueMimeType])
            .ToDictionary(named => (string)named["name"]!, named => (string)named["text"]!);
        Assert.NotEmpty(values);
        foreach (var document in new[] { Page(folder), Sheet(folder), Teacher(folder) })
        {
            var quoted = document.QuerySelectorAll("[data-value]");
            Assert.True(quoted.Length > 0 || document.QuerySelector(".answers .key") is not null, document.Title);
            Assert.All(quoted, quote => Assert.Equal(values[quote.GetAttribute("data-value")!], quote.TextContent));
        }
    }

    [Theory]
    [MemberData(nameof(PublishedLessons.Folders), MemberType = typeof(PublishedLessons))]
    public async Task Stored_trials_are_the_same_in_all_tiers(string folder)
    {
        await using var live = await LiveAsync(folder);
        live.Lesson.BecomeCurrent();
        var sweeps = live.All<TrialTable>().SelectMany(table => table.Sweeps()).ToArray();
        Assert.True(sweeps.Length >= 3, $"{sweeps.Length} sweeps");
        var (page, sheet) = (Page(folder), Sheet(folder));
        foreach (var sweep in sweeps)
        {
            string[] rows = [string.Join(" | ", [sweep.Moved.Label, .. sweep.Headings]), .. sweep.Rows.Select(row => string.Join(" | ", [.. row.Inputs, .. row.Outcomes]))];
            Assert.Equal(rows, page.Table(sweep.Caption));
            Assert.Equal(rows, sheet.Table(sweep.Caption));
        }
    }

    [Theory]
    [MemberData(nameof(PublishedLessons.Folders), MemberType = typeof(PublishedLessons))]
    public async Task Outcomes_of_predictions_are_the_same_in_all_tiers(string folder)
    {
        await using var live = await LiveAsync(folder);
        live.Lesson.BecomeCurrent();
        var (page, sheet, teacher) = (Page(folder), Sheet(folder), Teacher(folder));
        var outcomes = live.All<PredictionBeside>();
        Assert.True(outcomes.Count >= 2);
        foreach (var beside in outcomes)
        {
            Assert.NotEmpty(beside.Outcomes);
            Assert.Equal(beside.Outcomes, page.Table(beside.Question).Skip(1).Select(row => row.Split(" | ")[^1]));
            foreach (var paper in new[] { sheet, teacher })
            {
                Assert.Equal(string.Join("; ", beside.Outcomes), paper.QuerySelector($"[data-outcome='{beside.Key}'] b")?.TextContent);
            }
        }
    }

    [Theory]
    [MemberData(nameof(PublishedLessons.Folders), MemberType = typeof(PublishedLessons))]
    public async Task Worked_examples_are_the_same_in_all_tiers(string folder)
    {
        await using var live = await LiveAsync(folder);
        live.Lesson.BecomeCurrent();
        var (page, sheet, teacher) = (Page(folder), Sheet(folder), Teacher(folder));
        var examples = live.All<WorkedExample>();
        Assert.Equal(3, examples.Count);
        foreach (var example in examples)
        {
            string[] lines = [.. example.Lines.Select(line => line.Text)];
            Assert.Equal(lines[..example.FirstBlank], sheet.QuerySelectorAll($"[data-worked='{example.Key}'] li b").Select(made => made.TextContent));
            var steps = page.QuerySelectorAll($"[data-key='{example.Key}'] .sunlessons-step").Select(step => step.TextContent).ToArray();
            for (var i = 0; i < example.FirstBlank; i++)
            {
                Assert.Contains($"{example.Lines[i].Words}: {lines[i]}. {example.Lines[i].Why}", steps[i], StringComparison.Ordinal);
            }

            if (example.FirstBlank < lines.Length)
            {
                Assert.Equal(lines, teacher.QuerySelectorAll($"[data-worked='{example.Key}'] li b").Select(made => made.TextContent));
            }
        }
    }

    [Theory]
    [MemberData(nameof(PublishedLessons.Folders), MemberType = typeof(PublishedLessons))]
    public async Task Questions_are_asked_and_answered_alike_in_all_tiers(string folder)
    {
        await using var live = await LiveAsync(folder);
        live.Lesson.BecomeCurrent();
        var (page, sheet, teacher) = (Page(folder), Sheet(folder), Teacher(folder));
        var checks = live.All<Check>();
        Assert.True(checks.Count >= 8, $"{checks.Count} checks");
        foreach (var check in checks)
        {
            var key = teacher.QuerySelector($".key[data-key='{check.Key}']");
            Assert.NotNull(key);
            Assert.Equal(check.Question, key.QuerySelector(".question")?.TextContent);
            Assert.Equal(check.Question, page.QuerySelector($"[data-key='{check.Key}'] .sunlessons-question")?.TextContent);
            Assert.Contains(check.Question, sheet.QuerySelectorAll(".task .question").Select(question => question.TextContent));
            Assert.EndsWith(" " + check.Solution, key.QuerySelector("[data-solution]")!.TextContent, StringComparison.Ordinal);
            if (check is NumberCheck number)
            {
                var problem = number.Problem();
                Assert.Equal(number.Say(problem.Answer), key.QuerySelector($"[data-answer='{check.Key}']")?.TextContent);
                Assert.Equal(problem.Astray.Select(path => number.Say(path.Value)), key.QuerySelectorAll("table.slips tbody th").Select(slip => slip.TextContent));
            }
        }
    }

    private static async Task<Rehearsal> LiveAsync(string folder)
    {
        var cells = PublishedLessons.Shelf.Lessons().Single(lesson => lesson.Folder == folder).ReadNotebook().Cells.Where(cell => cell.Type == CellType.Code);
        var live = await Rehearsal.RunAsync(cells.Select(cell => (cell.Id, cell.Language ?? "csharp", cell.Source)), PagePlace.FromDegrees("Vigo", 42.24, -8.72, "Europe/Madrid"), SystemClock.Instance);
        Assert.All(live.Cells, cell => Assert.Null(cell.Problem));
        foreach (var guess in live.All<Prediction>())
        {
            guess.RecordExample();
        }

        await live.Lesson.Settled;
        return live;
    }

    private IDocument Page(string folder) => Html.Read(published, folder + ".html");

    private IDocument Sheet(string folder) => Html.Read(published, folder + ".sheet-a4.html");

    private IDocument Teacher(string folder) => Html.Read(published, folder + ".teacher-a4.html");
}
