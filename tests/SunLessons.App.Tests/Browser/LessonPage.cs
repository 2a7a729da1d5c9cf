using System.Globalization;
using System.Text.RegularExpressions;
using Microsoft.Playwright;
using SunLessons.App.Tests.Support;

namespace SunLessons.App.Tests.Browser;

/// <summary>A lesson in the browser as a learner handles it.</summary>
internal sealed class LessonPage(IPage page, LessonPage.Phrases? phrases = null)
{
    /// <summary>What stands on the buttons that a learner presses, in the language of the page.</summary>
    public sealed record Phrases(string Live, string Record, string Predicted, string Check);

    private static readonly Phrases English = new("The lesson is live", "Record my prediction", "You predicted", "Check my answer");

    private readonly Phrases _phrases = phrases ?? English;

    public ILocator Slider => page.Locator("input[type=range]").First;

    public ILocator SliderRow => page.Locator(".control-row").First;

    public ILocator NumberField => SliderRow.Locator("input[type=text]");

    /// <summary>The first figure of the experiment; a sketch before it belongs to the prediction.</summary>
    public ILocator FirstFigure => page.Locator("[data-role=experiment] .figure").First;

    public static async Task<LessonPage> OpenAsync(IPage page, RunningPages pages, string lesson, Phrases? phrases = null)
    {
        await page.GotoAsync(pages.AddressWithToken.ToString());
        await page.Locator($"a[href='lesson/{lesson}']").ClickAsync();
        await page.WaitForSelectorAsync("#start-lesson");
        return new LessonPage(page, phrases);
    }

    public async Task StartAsync()
    {
        await page.ClickAsync("#start-lesson");
        // A cold kernel and some twenty cells, on a machine that may be building something else.
        await page.WaitForSelectorAsync("text=" + _phrases.Live, new PageWaitForSelectorOptions { Timeout = 120_000 });
    }

    /// <summary>Records every prediction of the lesson: the first answer, or noon in each field of a sketch; in the first one an answer of one's own.</summary>
    public async Task PredictAsync(string? firstAnswer = null)
    {
        var predictions = page.Locator("[data-part=prediction]");
        for (var i = 0; i < await predictions.CountAsync(); i++)
        {
            var prediction = predictions.Nth(i);
            var answers = prediction.Locator("input[type=radio]");
            if (i == 0 && firstAnswer is not null)
            {
                await prediction.GetByText(firstAnswer, new LocatorGetByTextOptions { Exact = true }).ClickAsync();
            }
            else if (await answers.CountAsync() > 0)
            {
                await answers.First.CheckAsync();
            }
            else
            {
                foreach (var field in await prediction.Locator("input[type=text]").AllAsync())
                {
                    await field.FillAsync("12:00");
                }
            }

            await prediction.GetByText(_phrases.Record).ClickAsync();
            await Assertions.Expect(prediction).ToContainTextAsync(_phrases.Predicted);
        }
    }

    /// <summary>Waits until the sentence below the first figure says a text, and gives the sentence.</summary>
    public async Task<string> WaitForSummaryAsync(string part)
    {
        await Assertions.Expect(FirstFigure.Locator("[role=status]")).ToContainTextAsync(part, new LocatorAssertionsToContainTextOptions { Timeout = 20_000 });
        return await FirstFigure.Locator("[role=status]").InnerTextAsync();
    }

    /// <summary>All text that stands in the drawing itself, as plotly.js put it there.</summary>
    public async Task<string> DrawnTextAsync() =>
        Regex.Replace(string.Join(" ", await FirstFigure.Locator(".figure-plot svg text").AllTextContentsAsync()), @"\s+", " ");

    public async Task<double> SliderValueAsync() =>
        double.Parse(await Slider.InputValueAsync(), CultureInfo.InvariantCulture);

    public async Task MoveToAsync(string name, string latitude, string longitude, string zone)
    {
        await page.ClickAsync("text=Change the place");
        await page.FillAsync("#place-name", name);
        await page.FillAsync("#place-latitude", latitude);
        await page.FillAsync("#place-longitude", longitude);
        await page.FillAsync("#place-zone", zone);
        await page.ClickAsync("text=Use this place");
        await page.WaitForSelectorAsync($".place-line:has-text(\"{name}\")");
    }

    public async Task AnswerAsync(string check, string text, bool press = true)
    {
        await page.FillAsync($"[data-key={check}] input[type=text]", text);
        if (press)
        {
            await page.ClickAsync($"[data-key={check}] button:has-text(\"{_phrases.Check}\")");
        }
    }
}
