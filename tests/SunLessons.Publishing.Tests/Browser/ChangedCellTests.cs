using Microsoft.Playwright;
using SunLessons.App.Tests.Browser;
using SunLessons.Publishing.Tests.Support;

namespace SunLessons.Publishing.Tests.Browser;

/// <summary>A learner changes the C# in a published page: compiled there, by the compiler that comes with the first change.</summary>
[Trait("needs", "browser")]
public sealed class ChangedCellTests(PublishedLessons published)
{
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task A_changed_cell_is_compiled_and_run_in_the_page_and_sees_the_cells_before_it(bool singleFile)
    {
        await using var browser = await BrowserPage.OpenAsync();
        var lesson = new PublishedPage(browser);
        await lesson.OpenAsync(new Uri(Path.Combine(singleFile ? published.Single : published.Folder, "06-your-own-noon.html")));
        var own = lesson.Cell("own-dial");
        var editor = await ChangeAsync(own);
        await editor.FillAsync("Console.WriteLine($\"{vigo.Name}: {StepOf(\"Vigo\"):0.0}\");");
        await own.GetByRole(AriaRole.Button, new() { Name = "Run" }).ClickAsync();
        await Assertions.Expect(own.Locator(".cell-output")).ToContainTextAsync("Vigo: 94.9", new() { Timeout = 60_000 });

        // The next one sees what this one declares.
        await editor.FillAsync("var twice = 2 * StepOf(\"Vigo\");");
        await editor.PressAsync("Control+Enter");
        await editor.FillAsync("Console.WriteLine($\"twice {twice:0.0}\");");
        await editor.PressAsync("Control+Enter");
        await Assertions.Expect(own.Locator(".cell-output")).ToContainTextAsync("twice 189.8", new() { Timeout = 30_000 });
        Assert.Empty(browser.Problems);
    }

    [Fact]
    public async Task What_the_compiler_and_a_cell_have_to_say_stands_at_the_cell_with_its_line()
    {
        await using var browser = await BrowserPage.OpenAsync();
        var lesson = new PublishedPage(browser);
        await lesson.OpenAsync(published.Address("06-your-own-noon"));
        var own = lesson.Cell("own-dial");
        var editor = await ChangeAsync(own);
        await editor.FillAsync("var a = 1;\nvar b = a +;");
        await editor.PressAsync("Control+Enter");
        await Assertions.Expect(own.Locator(".failure")).ToContainTextAsync("Line 2, column 12", new() { Timeout = 60_000 });
        await editor.FillAsync("throw new InvalidOperationException(\"no Sun today\");");
        await editor.PressAsync("Control+Enter");
        await Assertions.Expect(own.Locator(".failure")).ToContainTextAsync("no Sun today", new() { Timeout = 30_000 });
    }

    [Fact]
    public async Task A_cell_that_never_ends_hangs_nothing_and_can_be_stopped_with_all_answers_kept()
    {
        await using var browser = await BrowserPage.OpenAsync();
        var lesson = new PublishedPage(browser);
        await lesson.OpenAsync(published.Address("06-your-own-noon"));
        await lesson.PredictAsync();
        var own = lesson.Cell("own-dial");
        var editor = await ChangeAsync(own);
        await editor.FillAsync("while (true) { }");
        await editor.PressAsync("Control+Enter");
        var stop = lesson.Page.GetByText("Stop, and start again from the top");
        await Assertions.Expect(stop).ToBeVisibleAsync(new() { Timeout = 60_000 });
        await stop.ClickAsync();
        await Assertions.Expect(lesson.Page.Locator("#lesson-status")).ToHaveTextAsync("The lesson is live. Your answers are kept as you go.", new() { Timeout = 60_000 });
        await Assertions.Expect(lesson.Cell("prediction")).ToContainTextAsync("You predicted: 11:30.");
        Assert.Equal("while (true) { }", await editor.InputValueAsync());
    }

    private static async Task<ILocator> ChangeAsync(ILocator cell)
    {
        await cell.GetByRole(AriaRole.Button, new() { Name = "Change it" }).ClickAsync();
        return cell.Locator("textarea");
    }
}
