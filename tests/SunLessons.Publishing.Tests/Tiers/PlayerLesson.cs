using System.Text.Json.Nodes;
using Microsoft.Playwright;
using NodaTime;
using NodaTime.Text;
using SunLessons.App.Tests.Browser;
using SunLessons.Publishing.Tests.Browser;

namespace SunLessons.Publishing.Tests.Tiers;

/// <summary>A published lesson as the player computes it in a browser, read from the page.</summary>
internal sealed class PlayerLesson(BrowserPage browser)
{
    // Parts of the page that a learner handles, in the order of the page, by the standard's name of their model.
    private static readonly Dictionary<string, string> Selectors = new()
    {
        ["FloatSliderModel"] = ".cell-output input[type=range]",
        ["DropdownModel"] = ".cell-output select",
        ["CheckboxModel"] = ".cell-output input[type=checkbox]",
        ["RadioButtonsModel"] = ".cell-output fieldset",
        ["TextModel"] = ".cell-output .control > input[type=text]",
        ["ButtonModel"] = ".cell-output button[data-role]",
    };

    private readonly PublishedPage _lesson = new(browser);

    private IPage Page => browser.Page;

    /// <summary>Opens it and unfolds the table of every figure.</summary>
    public async Task OpenAsync(Uri address)
    {
        await _lesson.OpenAsync(address);
        await Page.EvaluateAsync("() => { for (const button of document.querySelectorAll('.figure > button.quiet')) button.click(); }");
    }

    public Task PredictAsync() => _lesson.PredictAsync();

    /// <summary>When a prediction was recorded.</summary>
    public async Task<Instant> RecordedAtAsync(string prediction)
    {
        var at = await Page.EvaluateAsync<string>("key => JSON.parse(localStorage['sunlessons:' + JSON.parse(document.getElementById('lesson').textContent).id]).record[key].at", "prediction:" + prediction);
        return InstantPattern.ExtendedIso.Parse(at).Value;
    }

    /// <summary>Types another place and uses it.</summary>
    public async Task MoveToAsync(string name, string latitude, string longitude, string zone)
    {
        await Page.ClickAsync("#place-open");
        foreach (var (field, text) in new[] { ("name", name), ("latitude", latitude), ("longitude", longitude), ("zone", zone) })
        {
            await Page.FillAsync("#place-" + field, text);
        }

        await Page.ClickAsync(".place-form button[type=submit]");
        await Assertions.Expect(Page.Locator("#place-line")).ToContainTextAsync(name);
    }

    public async Task<string?> PlaceLineAsync() => await Page.TextContentAsync("#place-line");

    public Task<int> CountAsync(string model) => Page.Locator(Selectors[model]).CountAsync();

    /// <summary>Types a number beside a slider.</summary>
    public async Task SlideAsync(int index, string text)
    {
        var field = Page.Locator(Selectors["FloatSliderModel"]).Nth(index).Locator("xpath=..").Locator("input[type=text]");
        await field.FillAsync(text);
        await field.PressAsync("Enter");
    }

    public Task ChooseAsync(int index, int option) => Page.Locator(Selectors["DropdownModel"]).Nth(index).SelectOptionAsync(new SelectOptionValue { Value = $"{option}" });

    public Task TickAsync(int index, bool ticked) => Page.Locator(Selectors["CheckboxModel"]).Nth(index).SetCheckedAsync(ticked);

    public Task TypeAsync(int index, string text) => Page.Locator(Selectors["TextModel"]).Nth(index).FillAsync(text);

    /// <summary>Presses buttons one after another, as fast as a script can.</summary>
    public Task PressAsync(IEnumerable<int> buttons) =>
        Page.EvaluateAsync("([selector, buttons]) => { const all = document.querySelectorAll(selector); for (const i of buttons) all[i].click(); }", new object[] { Selectors["ButtonModel"], buttons.ToArray() });

    /// <summary>Section by section what holds a digit. A cell's own text is left out: it is what is run, not what comes out.</summary>
    public async Task<IReadOnlyList<SectionNumbers>> LinesAsync()
    {
        var read = JsonNode.Parse(await Page.EvaluateAsync<string>($$"""
            () => {
              const lines = {{NumberLines.Script}};
              return JSON.stringify([...document.querySelectorAll("section.step")].map(section => ({ cell: section.dataset.cell, lines: lines(section, ".cell-text, .cell-tools") })));
            }
            """))!.AsArray();
        return [.. read.Select(section => new SectionNumbers((string)section!["cell"]!, [.. section["lines"]!.AsArray().Select(line => (string)line!)]))];
    }

    /// <summary>What holds a digit outside the sections.</summary>
    public async Task<IReadOnlyList<string>> AroundAsync() => await Page.EvaluateAsync<string[]>($"() => ({NumberLines.Script})(document.body, 'section.step, section.place, noscript')");
}
