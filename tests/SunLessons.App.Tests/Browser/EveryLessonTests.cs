using Microsoft.Playwright;
using SunLessons.App.Tests.Support;
using SunLessons.Notebooks;

namespace SunLessons.App.Tests.Browser;

/// <summary>What holds for every lesson, in a real browser: locked, then live; each figure follows control and place; no cell fails.</summary>
[Trait("needs", "browser")]
public sealed class EveryLessonTests
{
    public static TheoryData<string> Lessons => [.. new LessonShelf(RepositoryFiles.Path("lessons")).Lessons().Select(lesson => lesson.Id)];

    [Theory]
    [MemberData(nameof(Lessons))]
    public async Task A_lesson_wakes_after_the_prediction_and_follows_control_and_place(string id)
    {
        await using var pages = await RunningPages.StartAsync();
        await using var browser = await BrowserPage.OpenAsync();
        var page = browser.Page;
        var lesson = await LessonPage.OpenAsync(page, pages, id);
        Assert.Empty(ChildProcesses.Of(pages.Process.Id));
        await lesson.StartAsync();
        Assert.Equal(0, await page.Locator(".cell-output[data-phase=failed]").CountAsync());
        await Assertions.Expect(lesson.Slider).ToBeDisabledAsync();

        await lesson.PredictAsync();
        await Assertions.Expect(lesson.Slider).ToBeEnabledAsync();
        await Assertions.Expect(lesson.FirstFigure.Locator(".figure-plot svg").First).ToBeVisibleAsync();

        var status = lesson.FirstFigure.Locator("[role=status]");
        var before = await status.InnerTextAsync();
        // The drawing, not only its words: in some lessons a control moves curves under axes that stay.
        var drawing = lesson.FirstFigure.Locator(".figure-plot svg").First;
        var drawn = await drawing.InnerHTMLAsync();
        await lesson.NumberField.FillAsync(await HalfWayAsync(lesson));
        await lesson.NumberField.PressAsync("Enter");
        await Assertions.Expect(status).Not.ToHaveTextAsync(before);
        Assert.NotEqual(drawn, await drawing.InnerHTMLAsync());

        await lesson.MoveToAsync("Our school", "45.87 S", "170.5 E", "Pacific/Auckland");
        await Assertions.Expect(page.Locator("main")).ToContainTextAsync("Our school", new LocatorAssertionsToContainTextOptions { Timeout = 20_000 });
        await page.WaitForTimeoutAsync(1000);
        Assert.Equal(0, await page.Locator(".figure [role=alert]").CountAsync());
        Assert.Empty(browser.Foreign);
        Assert.Empty(browser.Problems);
    }

    /// <summary>A value away from where the slider stands: a quarter of its way.</summary>
    private static async Task<string> HalfWayAsync(LessonPage lesson)
    {
        var low = double.Parse((await lesson.Slider.GetAttributeAsync("min"))!, System.Globalization.CultureInfo.InvariantCulture);
        var high = double.Parse((await lesson.Slider.GetAttributeAsync("max"))!, System.Globalization.CultureInfo.InvariantCulture);
        var step = double.Parse((await lesson.Slider.GetAttributeAsync("step"))!, System.Globalization.CultureInfo.InvariantCulture);
        return (low + Math.Round((high - low) / 4.0 / step) * step).ToString("0.######", System.Globalization.CultureInfo.InvariantCulture);
    }
}
