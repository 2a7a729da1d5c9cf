using System.Text.Json;
using SunLessons.App.Tests.Support;

namespace SunLessons.App.Tests.FrontEnds;

/// <summary>Every lesson from a clean kernel, run by Jupyter's own nbclient and nbconvert, which know nothing of SunLessons.</summary>
public sealed class LessonsInJupyterTests(JupyterHome home) : IClassFixture<JupyterHome>
{
    public static TheoryData<string> Lessons => [.. Directory.EnumerateDirectories(RepositoryFiles.Path("lessons"))
        .Where(folder => File.Exists(Path.Combine(folder, "lesson.ipynb"))).Select(folder => Path.GetFileName(folder)!).Order()];

    [Theory]
    [MemberData(nameof(Lessons))]
    [Trait("needs", "jupyter")]
    public async Task Nbclient_runs_the_lesson_and_saves_all_that_it_shows(string lesson)
    {
        var saved = Path.Combine(home.Folder, lesson + ".ipynb");
        var ran = await Tool.RunAsync(Tool.Python, [Tool.Script("run_lesson.py"), Notebook(lesson), saved], home.Environment);
        Assert.True(ran.ExitCode == 0, ran.Errors);
        var told = JsonSerializer.Deserialize<Told>(ran.Output, new JsonSerializerOptions { PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower })!;
        Assert.True(told.Cells > 0);
        Assert.Empty(told.NotRun);
        Assert.Empty(told.Errors);
        Assert.Empty(told.OnStderr);

        // With no kernel a front end shows a control from the state that was saved: all of it must be there, figures drawn.
        Assert.True(told.Views > 0, "The lesson showed no control.");
        Assert.Empty(told.ModelsNotSaved);
        Assert.True(told.SavedFigures > 0, "No saved figure holds a drawing.");
    }

    [Theory]
    [MemberData(nameof(Lessons))]
    [Trait("needs", "jupyter")]
    public async Task Nbconvert_runs_the_lesson_and_makes_a_page_of_words_and_drawings(string lesson)
    {
        var page = Path.Combine(home.Folder, lesson + ".html");
        var ran = await Tool.RunAsync(
            Tool.Python,
            [
                "-m", "nbconvert", "--to", "html", "--execute", "--ExecutePreprocessor.kernel_name=sunlessons",
                "--ExecutePreprocessor.store_widget_state=False", "--output-dir", home.Folder, "--output", Path.GetFileName(page), Notebook(lesson),
            ],
            home.Environment);

        // Without --allow-errors a cell that fails ends nbconvert with an exit code of its own.
        Assert.True(ran.ExitCode == 0, ran.Errors);
        var html = await File.ReadAllTextAsync(page);
        // Left out as FRONTENDS.md advises: in the place of a control stand its words, in the place of a figure its drawing.
        Assert.DoesNotContain("application/vnd.jupyter.widget-view+json", html);
        Assert.Contains("<p class=\"still\">My place: Vigo</p>", html);
        Assert.Contains("<figure class=\"sunlessons-figure\"><svg", html);
        Assert.DoesNotContain("&lt;svg", html);
        // The page's style sheet names this kind too; an output of it has the attribute and its value as here.
        Assert.DoesNotContain("data-mime-type=\"application/vnd.jupyter.stderr\"", html);
    }

    private static string Notebook(string lesson) => RepositoryFiles.Path("lessons", lesson, "lesson.ipynb");

    private sealed record Told(int Cells, string[] NotRun, string[] Errors, string[] OnStderr, int Views, int Models, string[] ModelsNotSaved, int SavedFigures);
}
