using Microsoft.Playwright;
using SunLessons.App.Tests.Browser;

namespace SunLessons.Publishing.Tests.Browser;

/// <summary>A published lesson in headless Chromium, with every request but those for files refused.</summary>
internal sealed class PublishedPage(BrowserPage browser)
{
    public IPage Page => browser.Page;

    public ILocator Cell(string id) => Page.Locator($"section[data-cell={id}]");

    public ILocator Sliders => Page.Locator("input[type=range]");

    public async Task OpenAsync(Uri address)
    {
        await Page.GotoAsync(address.ToString());
        await LiveAsync();
    }

    public async Task LiveAsync() =>
        await Page.WaitForFunctionAsync("() => document.documentElement.dataset.lesson === 'live'", null, new PageWaitForFunctionOptions { Timeout = 60_000 });

    /// <summary>Answers every prediction with its first choice, with the example that its field shows, or with noon in each field of a sketch.</summary>
    public async Task PredictAsync()
    {
        foreach (var prediction in await Page.Locator("[data-part=prediction]").AllAsync())
        {
            var choices = prediction.Locator("input[type=radio]");
            if (await choices.CountAsync() > 0)
            {
                await choices.First.CheckAsync();
            }

            // A sketch has several fields, and a grid of its own to keep to.
            var fields = await prediction.Locator("input[type=text]").AllAsync();
            foreach (var field in fields)
            {
                await field.FillAsync(fields.Count > 1 ? "12:00" : (await field.GetAttributeAsync("placeholder"))!);
                await field.PressAsync("Tab");
            }

            await prediction.Locator("button.chief").ClickAsync();
            await Assertions.Expect(prediction.Locator("button.chief")).ToBeDisabledAsync();
        }
    }
}
