using Deque.AxeCore.Playwright;
using SunLessons.App.Tests.Support;

namespace SunLessons.App.Tests.Browser;

/// <summary>What a machine can tell of WCAG 2.2: axe-core's rules, and no sideways scrolling at 320 px. People must judge the rest.</summary>
[Trait("needs", "browser")]
public sealed class AccessibilityTests
{
    [Fact]
    public async Task Home_and_lesson_break_none_of_axe_cores_rules_before_and_after_starting()
    {
        await using var pages = await RunningPages.StartAsync();
        await using var browser = await BrowserPage.OpenAsync();
        await browser.Page.GotoAsync(pages.AddressWithToken.ToString());
        await browser.Page.ClickAsync("text=Change the place");
        await ExpectCleanAsync(browser, "home");
        var lesson = await LessonPage.OpenAsync(browser.Page, pages, "your-own-noon");
        await ExpectCleanAsync(browser, "lesson, not started");
        await lesson.StartAsync();
        await lesson.PredictAsync("12:00");
        await FoldedPart.ExpectAsync(browser.Page, "For the teacher", "Rubric for the activity");
        await ExpectCleanAsync(browser, "lesson, live");
    }

    [Fact]
    public async Task At_320_pixels_nothing_scrolls_sideways()
    {
        await using var pages = await RunningPages.StartAsync();
        await using var browser = await BrowserPage.OpenAsync(320, 700);
        var lesson = await LessonPage.OpenAsync(browser.Page, pages, "your-own-noon");
        await lesson.StartAsync();
        await lesson.PredictAsync("12:00");
        var (wide, inner) = (await browser.Page.EvaluateAsync<int>("() => document.documentElement.scrollWidth"), await browser.Page.EvaluateAsync<int>("() => window.innerWidth"));
        Assert.True(wide <= inner, $"The page is {wide} px wide in a window of {inner} px.");
    }

    private static async Task ExpectCleanAsync(BrowserPage browser, string where)
    {
        var result = await browser.Page.RunAxe();
        Assert.True(
            result.Violations.Length == 0,
            where + ": " + string.Join("; ", result.Violations.Select(v => $"{v.Id} ({v.Help}) at {string.Join(", ", v.Nodes.Take(3).Select(n => n.Html))}")));
    }
}
