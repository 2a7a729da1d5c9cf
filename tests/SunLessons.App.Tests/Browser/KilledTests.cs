using Microsoft.Playwright;
using SunLessons.App.Tests.Support;

namespace SunLessons.App.Tests.Browser;

/// <summary>Any process may be killed while a learner answers: what is older than a second is still there afterwards.</summary>
[Trait("needs", "browser")]
public sealed class KilledTests
{
    private const string Lesson = "your-own-noon";

    [Fact]
    public async Task After_the_program_was_killed_the_next_start_brings_prediction_answers_drafts_and_cells_back()
    {
        string folder;
        await using (var pages = await RunningPages.StartAsync())
        await using (var browser = await BrowserPage.OpenAsync())
        {
            folder = pages.LearnerFolder;
            var lesson = await LessonPage.OpenAsync(browser.Page, pages, Lesson);
            await lesson.StartAsync();
            await lesson.PredictAsync("12:30");
            await lesson.AnswerAsync("kathmandu", "3.7");
            await browser.Page.WaitForSelectorAsync("[data-key=kathmandu] >> text=Right");
            await lesson.NumberField.FillAsync("7.5");
            await lesson.NumberField.PressAsync("Enter");
            await lesson.WaitForSummaryAsync("1.22° W");
            await lesson.AnswerAsync("ushuaia", "93", press: false);
            var cell = browser.Page.Locator("[data-cell=own-dial]");
            await cell.GetByText("Change it").ClickAsync();
            await cell.Locator(".monaco-editor .view-lines").ClickAsync();
            await browser.Page.Keyboard.PressAsync("Control+End");
            await browser.Page.Keyboard.InsertTextAsync("\n// my own line");
            await browser.Page.WaitForTimeoutAsync(1000);
            await pages.KillAsync();
        }

        await using var again = await RunningPages.StartAsync(folder);
        await using var second = await BrowserPage.OpenAsync();
        var reopened = await LessonPage.OpenAsync(second.Page, again, Lesson);
        await Assertions.Expect(second.Page.Locator("#start-lesson")).ToHaveTextAsync("Go on with the lesson");
        await Assertions.Expect(second.Page.Locator("[data-cell=own-dial] pre").First).ToContainTextAsync("// my own line");
        await reopened.StartAsync();
        await Assertions.Expect(second.Page.Locator("text=You predicted: 12:30").First).ToBeVisibleAsync();
        await Assertions.Expect(second.Page.Locator("[data-key=kathmandu] input[type=text]")).ToHaveValueAsync("3.7");
        await Assertions.Expect(second.Page.Locator("[data-key=ushuaia] input[type=text]")).ToHaveValueAsync("93");
        await Assertions.Expect(second.Page.Locator("[data-key=kathmandu]")).ToContainTextAsync("Right");
        Assert.Equal(7.5, await reopened.SliderValueAsync());
        await reopened.WaitForSummaryAsync("1.22° W");
        await Assertions.Expect(reopened.Slider).ToBeEnabledAsync();
    }

    [Fact]
    public async Task After_the_kernel_was_killed_the_page_says_so_and_goes_on_when_started_again()
    {
        await using var pages = await RunningPages.StartAsync();
        await using var browser = await BrowserPage.OpenAsync();
        var lesson = await LessonPage.OpenAsync(browser.Page, pages, Lesson);
        await lesson.StartAsync();
        await lesson.PredictAsync("12:00");
        var kernel = Assert.Single(ChildProcesses.Of(pages.Process.Id));
        kernel.Kill(entireProcessTree: true);
        await browser.Page.WaitForSelectorAsync("text=Your answers and your cells are kept");
        await lesson.StartAsync();
        await Assertions.Expect(browser.Page.Locator("text=You predicted: 12:00").First).ToBeVisibleAsync();
        Assert.Single(ChildProcesses.Of(pages.Process.Id));
    }

    [Fact]
    public async Task No_kernel_outlives_the_program()
    {
        var pages = await RunningPages.StartAsync();
        await using var browser = await BrowserPage.OpenAsync();
        var lesson = await LessonPage.OpenAsync(browser.Page, pages, Lesson);
        await lesson.StartAsync();
        var kernel = Assert.Single(ChildProcesses.Of(pages.Process.Id));
        // Only the program is killed, as by a power cut for it alone: the kernel must notice by itself.
        pages.Process.Kill(entireProcessTree: false);
        using var patience = new CancellationTokenSource(TimeSpan.FromSeconds(5));
        await kernel.WaitForExitAsync(patience.Token);
        Assert.True(kernel.HasExited);
        await pages.DisposeAsync();
    }
}
