using System.Text.Json;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;
using SunLessons.App.Tests.Browser;
using SunLessons.Publishing.Tests.Support;

namespace SunLessons.Publishing.Tests.Browser;

/// <summary>Published lessons opened from a disk, with the network refused: no server, no kernel, nothing installed.</summary>
[Trait("needs", "browser")]
public sealed class FromDiskTests(PublishedLessons published)
{
    public static TheoryData<string> Folders => PublishedLessons.Folders;

    [Theory]
    [MemberData(nameof(Folders))]
    public async Task Every_control_is_locked_until_the_prediction_and_then_moves_through_all_its_values(string folder)
    {
        await using var browser = await BrowserPage.OpenAsync();
        var lesson = new PublishedPage(browser);
        await lesson.OpenAsync(published.Address(folder));
        Assert.NotEqual(0, await lesson.Sliders.CountAsync());
        foreach (var slider in await lesson.Page.Locator("section[data-role=experiment] input[type=range]").AllAsync())
        {
            Assert.True(await slider.IsDisabledAsync());
        }

        await lesson.PredictAsync();
        foreach (var slider in await lesson.Sliders.AllAsync())
        {
            await Assertions.Expect(slider).ToBeEnabledAsync();
            var told = await slider.EvaluateAsync<JsonElement>("""
                async range => {
                  const low = Number(range.min), step = Number(range.step), count = Math.round((Number(range.max) - low) / step);
                  const problems = [];
                  let moved = 0;
                  for (let i = 0; i <= count; i++) {
                    range.value = low + i * step;
                    range.dispatchEvent(new Event("input"));
                    moved++;
                    if (i % 10 === 0) await new Promise(next => setTimeout(next, 5));
                  }
                  await new Promise(next => setTimeout(next, 400));
                  for (const problem of document.querySelectorAll(".figure [role=alert]:not([hidden]), .failure")) problems.push(problem.textContent);
                  return { moved, value: range.value, max: range.max, problems };
                }
                """);
            Assert.Equal(told.GetProperty("max").GetString(), told.GetProperty("value").GetString());
            Assert.Empty(told.GetProperty("problems").EnumerateArray());
        }

        Assert.Equal("The lesson is live. Your answers are kept as you go.", await lesson.Page.TextContentAsync("#lesson-status"));
        Assert.Empty(browser.Foreign);
        Assert.Empty(browser.Problems);
    }

    [Fact]
    public async Task A_figure_follows_a_control_by_mouse_keyboard_and_number_and_its_sentence_says_so()
    {
        await using var browser = await BrowserPage.OpenAsync();
        var lesson = new PublishedPage(browser);
        await lesson.OpenAsync(published.Address("06-your-own-noon"));
        await lesson.PredictAsync();
        var experiment = lesson.Cell("experiment");
        var sentence = experiment.Locator(".figure [role=status]").First;
        await Assertions.Expect(sentence).ToContainTextAsync("The longitude step is +94.9 min");
        var drawn = await experiment.Locator(".figure-plot").First.InnerHTMLAsync();

        await experiment.GetByRole(AriaRole.Button, new() { NameRegex = new("one step up") }).ClickAsync();
        await Assertions.Expect(sentence).ToContainTextAsync("+93.9 min");
        Assert.NotEqual(drawn, await experiment.Locator(".figure-plot").First.InnerHTMLAsync());
        await experiment.Locator("input[type=range]").PressAsync("ArrowRight");
        await Assertions.Expect(sentence).ToContainTextAsync("+92.9 min");
        var number = experiment.Locator(".control-row input[type=text]");
        await number.FillAsync("-1,5");
        await number.PressAsync("Enter");
        await Assertions.Expect(sentence).ToContainTextAsync("+100.9 min");
        await number.FillAsync("far");
        await number.PressAsync("Enter");
        await Assertions.Expect(experiment.Locator(".control .problem")).ToContainTextAsync("“far” is not a number");
        Assert.Equal("far", await number.InputValueAsync());
    }

    [Fact]
    public async Task A_wrong_path_is_met_by_name_and_the_right_answer_is_right()
    {
        await using var browser = await BrowserPage.OpenAsync();
        var lesson = new PublishedPage(browser);
        await lesson.OpenAsync(published.Address("06-your-own-noon"));
        var check = lesson.Cell("check-ushuaia");
        var field = check.Locator("input[type=text]");
        await field.FillAsync("-93.2");
        await check.Locator("button.chief").ClickAsync();
        await Assertions.Expect(check.Locator(".sunlessons-notyet")).ToBeVisibleAsync();
        await field.FillAsync("93,2");
        await field.PressAsync("Enter");
        await Assertions.Expect(check.Locator(".sunlessons-right")).ToBeVisibleAsync();
    }

    [Fact]
    public async Task The_learners_own_place_is_taken_kept_and_refused_with_reasons()
    {
        await using var browser = await BrowserPage.OpenAsync();
        var lesson = new PublishedPage(browser);
        await lesson.OpenAsync(published.Address("06-your-own-noon"));
        await lesson.Page.ClickAsync("#place-open");
        await lesson.Page.FillAsync("#place-name", "A lake");
        await lesson.Page.FillAsync("#place-latitude", "97 N");
        await lesson.Page.FillAsync("#place-longitude", "32.9");
        await lesson.Page.FillAsync("#place-zone", "Africa/Kampal");
        await lesson.Page.ClickAsync(".place-form button[type=submit]");
        await Assertions.Expect(lesson.Page.Locator(".place-form .problem")).ToHaveCountAsync(2);
        await lesson.Page.FillAsync("#place-latitude", "1.2 S");
        await lesson.Page.FillAsync("#place-zone", "Africa/Kampala");
        await lesson.Page.ClickAsync(".place-form button[type=submit]");
        await Assertions.Expect(lesson.Page.Locator("#place-line")).ToContainTextAsync("A lake, 1.2° S 32.9° E, clock zone Africa/Kampala (time-zone rules 20");
        await Assertions.Expect(lesson.Cell("own")).ToContainTextAsync("A lake keeps the zone Africa/Kampala");

        await lesson.Page.GotoAsync(published.Address("07-the-sun-is-not-a-good-clock").ToString());
        await lesson.LiveAsync();
        Assert.Contains("A lake", await lesson.Page.TextContentAsync("#place-line"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Answers_stay_in_the_browser_come_back_and_can_be_saved_and_forgotten()
    {
        await using var browser = await BrowserPage.OpenAsync();
        var lesson = new PublishedPage(browser);
        await lesson.OpenAsync(published.Address("06-your-own-noon"));
        await lesson.PredictAsync();
        await lesson.Cell("check-ushuaia").Locator("input[type=text]").FillAsync("-93.2");
        await lesson.Cell("check-ushuaia").Locator("button.chief").ClickAsync();
        await Assertions.Expect(lesson.Cell("check-ushuaia").Locator(".sunlessons-notyet")).ToBeVisibleAsync();
        await lesson.Page.ReloadAsync();
        await lesson.LiveAsync();
        await Assertions.Expect(lesson.Cell("prediction")).ToContainTextAsync("You predicted: 11:30.");
        Assert.Equal("-93.2", await lesson.Cell("check-ushuaia").Locator("input[type=text]").InputValueAsync());

        var saved = await lesson.Page.RunAndWaitForDownloadAsync(() => lesson.Page.ClickAsync("#answers-save"));
        Assert.Equal("your-own-noon-answers.json", saved.SuggestedFilename);
        using var file = JsonDocument.Parse(await File.ReadAllTextAsync(await saved.PathAsync()));
        Assert.Equal("11:30", file.RootElement.GetProperty("record").GetProperty("prediction:shortest-shadow").GetProperty("answer").GetString());

        lesson.Page.Dialog += (_, dialog) => dialog.AcceptAsync();
        await lesson.Page.ClickAsync("#answers-forget");
        await lesson.Page.WaitForFunctionAsync("() => document.documentElement.dataset.lesson !== 'live'");
        await lesson.LiveAsync();
        await Assertions.Expect(lesson.Cell("prediction")).Not.ToContainTextAsync("You predicted");
    }

    [Fact]
    public async Task A_page_without_script_shows_figures_and_tables_that_stand_still()
    {
        using var playwright = await Playwright.CreateAsync();
        await using var chromium = await playwright.Chromium.LaunchAsync(new() { ExecutablePath = BrowserPage.Executable(), Args = ["--no-sandbox"] });
        var page = await (await chromium.NewContextAsync(new() { JavaScriptEnabled = false })).NewPageAsync();
        await page.GotoAsync(published.Address("06-your-own-noon").ToString());
        Assert.NotEqual(0, await page.Locator("section[data-cell=experiment] noscript svg polyline, section[data-cell=experiment] noscript svg path").CountAsync());
        Assert.Contains("+94.9 min", await page.Locator("section[data-cell=table] table").InnerTextAsync(), StringComparison.Ordinal);
        Assert.Contains("+93.2 min", await page.Locator("section[data-cell=table-after]").InnerTextAsync(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Nothing_breaks_axe_cores_rules_and_nothing_scrolls_sideways_at_320_pixels()
    {
        await using var browser = await BrowserPage.OpenAsync(320, 700);
        var lesson = new PublishedPage(browser);
        await browser.Page.GotoAsync(new Uri(Path.Combine(published.Folder, "index.html")).ToString());
        await ExpectCleanAsync(browser, "index");
        await lesson.OpenAsync(published.Address("06-your-own-noon"));
        await lesson.PredictAsync();
        await browser.Page.ClickAsync("#place-open");
        await ExpectCleanAsync(browser, "lesson");
        var wide = await browser.Page.EvaluateAsync<int>("() => document.documentElement.scrollWidth");
        Assert.True(wide <= 320, $"The page is {wide} px wide in a window of 320 px.");
    }

    [Theory]
    [InlineData("06-your-own-noon", "For the teacher", "Rubric for the activity")]
    [InlineData("06-your-own-noon.es", "Para el profesor", "Rúbrica de la actividad")]
    public async Task What_is_for_the_teacher_is_folded_away_unfolds_by_keyboard_and_is_printed(string folder, string head, string inside)
    {
        await using var browser = await BrowserPage.OpenAsync();
        await browser.Page.GotoAsync(published.Address(folder).ToString());
        await FoldedPart.ExpectAsync(browser.Page, head, inside);
    }

    private static async Task ExpectCleanAsync(BrowserPage browser, string where)
    {
        var result = await browser.Page.RunAxe();
        Assert.True(result.Violations.Length == 0, where + ": " + string.Join("; ", result.Violations.Select(v => $"{v.Id} ({v.Help}) at {string.Join(", ", v.Nodes.Take(3).Select(n => n.Html))}")));
    }
}
