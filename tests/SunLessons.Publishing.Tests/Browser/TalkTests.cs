using Deque.AxeCore.Playwright;
using Microsoft.Playwright;
using SunLessons.App.Tests.Browser;
using SunLessons.Places;
using SunLessons.Publishing.Tests.Support;
using SunLessons.Readings;

namespace SunLessons.Publishing.Tests.Browser;

/// <summary>A reading explained to an audience: a key a correction.</summary>
[Trait("needs", "browser")]
public sealed class TalkTests(PublishedLessons published)
{
    [Fact]
    public async Task Each_key_brings_the_next_correction_with_cause_amount_and_clock_and_the_figure_grows()
    {
        var vigo = Gazetteer.Towns.First(town => town.Name == "Vigo");
        var dial = new DialProfile { ScaleLatitude = Latitude.FromDegrees(49), Setting = new DialSetting.NoonLine(Azimuth.FromDegrees(0)) };
        var read = Assert.IsType<ClockReading.One>(ClockFromDial.Read(vigo, new NodaTime.LocalDate(2026, 6, 21), DialTime.FromHoursMinutes(9, 15), dial));

        await using var browser = await BrowserPage.OpenAsync(1280, 900);
        var page = new PublishedPage(browser);
        await page.OpenAsync(published.Address("talk"));
        await page.Page.Locator("input[type=date]").FillAsync("2026-06-21");
        await page.Cell("reading").Locator("[data-part=dial-time] input").FillAsync("9:15");
        var clock = page.Page.Locator(".talk-clock");
        await Assertions.Expect(clock).ToHaveTextAsync("09:15.0");
        await page.Page.Locator("h1").ClickAsync();
        foreach (var step in read.Chain.Steps)
        {
            await page.Page.Keyboard.PressAsync("ArrowRight");
            await Assertions.Expect(clock).ToHaveTextAsync(ReadingChain.TimeText(step.RunningTime));
            Assert.Equal(step.Amount.InWords(), await page.Page.Locator(".talk-amount").InnerTextAsync(), ignoreCase: true);

            // The law of the clock is one version's of the zones' rules, and the card says which.
            var cause = step.Name == StepName.Law ? $"{step.Cause} (time-zone rules {read.Chain.TzdbVersion})" : step.Cause;
            Assert.Equal(cause, await page.Page.Locator(".talk-cause").InnerTextAsync(), ignoreCase: true);
        }

        await page.Page.Keyboard.PressAsync("PageDown");
        await Assertions.Expect(page.Page.Locator(".talk-cause")).ToHaveTextAsync(read.Chain.Summary);
        await Assertions.Expect(page.Page.Locator("button[data-role=talk-next]")).ToBeDisabledAsync();
        await page.Page.Keyboard.PressAsync("ArrowLeft");
        await Assertions.Expect(page.Page.Locator(".talk-cause")).Not.ToHaveTextAsync(read.Chain.Summary);
        Assert.Equal(5, await page.Page.Locator("[data-part=talk] .figure-plot svg :is(polygon, path[fill])").CountAsync());
        Assert.Empty(browser.Problems);
    }

    [Fact]
    public async Task A_reading_is_explained_in_Spanish()
    {
        await using var browser = await BrowserPage.OpenAsync(1280, 900);
        var page = new PublishedPage(browser);
        await page.OpenAsync(published.Address("talk.es"));
        await page.Page.Locator("input[type=date]").FillAsync("2026-06-21");
        await Assertions.Expect(page.Cell("reading")).ToContainTextAsync("21 de junio de 2026");
        await page.Cell("reading").Locator("[data-part=dial-time] input").FillAsync("9:15");
        await Assertions.Expect(page.Page.Locator(".talk-clock")).ToHaveTextAsync("09:15,0");
        var cards = new List<string>();
        await page.Page.Locator("h1").ClickAsync();
        var name = page.Page.Locator(".talk-name");
        cards.Add(await page.Page.Locator("[data-part=talk] .markup").First.InnerTextAsync());
        while (cards.Count < 7)
        {
            var before = await name.InnerTextAsync();
            await page.Page.Keyboard.PressAsync("ArrowRight");
            await Assertions.Expect(name).Not.ToHaveTextAsync(before);
            cards.Add(await page.Page.Locator("[data-part=talk] .markup").First.InnerTextAsync());
        }

        await Assertions.Expect(page.Page.Locator("button[data-role=talk-next]")).ToBeDisabledAsync();

        // The dial, its five steps, and the clock; no card says anything in English.
        Assert.Contains("Suma 94,9 min", cards[3], StringComparison.Ordinal);
        Assert.Contains("Según el reloj", cards[6], StringComparison.Ordinal);
        Assert.All(cards, card => Assert.DoesNotMatch(@"\b(the|is|on|add|subtract|time)\b", card));
        Assert.Empty((await page.Page.RunAxe()).Violations.Select(v => v.Id));
        Assert.Empty(browser.Problems);
    }

    [Fact]
    public async Task Letters_typed_in_a_field_turn_no_card()
    {
        await using var browser = await BrowserPage.OpenAsync();
        var page = new PublishedPage(browser);
        await page.OpenAsync(published.Address("talk"));
        var field = page.Cell("reading").Locator("[data-part=dial-time] input");
        await field.FillAsync("8:00 ");
        await field.PressAsync("ArrowLeft");
        await Assertions.Expect(page.Page.Locator(".talk-name")).ToHaveTextAsync("The dial shows");
        await field.FillAsync("noonish");
        await Assertions.Expect(page.Cell("reading").Locator(".sunlessons-problem")).ToContainTextAsync("noonish");
    }
}
