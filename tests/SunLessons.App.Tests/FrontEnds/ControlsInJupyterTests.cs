using System.Globalization;
using System.Text.Json;
using System.Text.RegularExpressions;
using Microsoft.Playwright;
using SunLessons.App.Tests.Browser;
using SunLessons.App.Tests.Support;
using SunLessons.Jupyter.Widgets;
using static Microsoft.Playwright.Assertions;

namespace SunLessons.App.Tests.FrontEnds;

/// <summary>
/// Live controls in a page that knows nothing of SunLessons: Jupyter's own widget manager from npm, in Chromium, against Debian's
/// jupyter-server with our kernel.
/// </summary>
public sealed partial class ControlsInJupyterTests(JupyterHome home) : IClassFixture<JupyterHome>
{
    private const string Lesson = "06-your-own-noon";

    // The lesson's first cell of predictions has two of them, with four and three answers; another cell has one.
    private const int FirstAnswers = 4;

    // What the widget manager shows in the place of a control that it cannot make.
    private const string ErrorWidget = ".jupyter-widgets-error-widget";

    private const string Figure = ".widget-html svg";

    // Starting a kernel, and every message by way of the server, take their time on a busy machine.
    private const float Patience = 120_000;

    [Fact]
    [Trait("needs", "browser")]
    [Trait("needs", "jupyter")]
    [Trait("needs", "npm")]
    public async Task A_prediction_unlocks_the_slider_and_the_slider_moves_the_figure()
    {
        var folder = Path.Combine(home.Folder, "live");
        await WidgetPage.BuildAsync(folder);
        File.Copy(RepositoryFiles.Path("lessons", Lesson, "lesson.ipynb"), Path.Combine(folder, "lesson.json"));
        await using var server = await JupyterServer.StartAsync(home, folder);
        await using var chromium = await BrowserPage.OpenAsync();
        var page = chromium.Page;
        await page.GotoAsync($"{server.Root}static/page.html?token={server.Token}&kernel=sunlessons&notebook=lesson.json");
        await ReadyAsync(page);
        await Expect(page.Locator("section[data-reply=ok]")).ToHaveCountAsync(await page.Locator("section").CountAsync());
        await Expect(page.Locator(".error")).ToHaveCountAsync(0);
        await Expect(page.Locator(ErrorWidget)).ToHaveCountAsync(0);

        // Locked before the prediction: the slider says so, and keys do not move it.
        var experiment = page.Locator("section[data-cell=experiment]");
        var slider = experiment.Locator(".widget-slider .noUi-target").First;
        var handle = slider.Locator(".noUi-handle");
        var figure = experiment.Locator(Figure).First;
        await Expect(slider).ToHaveAttributeAsync("disabled", new Regex(".*"));
        await Expect(figure).ToBeVisibleAsync();
        await Expect(experiment).Not.ToContainTextAsync(StepInWords());

        var prediction = page.Locator("section[data-cell=prediction]");
        var other = page.Locator("section[data-cell=clock-prediction]");
        foreach (var (cell, answer, button) in new[] { (prediction, 0, 0), (prediction, FirstAnswers, 1), (other, 0, 0) })
        {
            await cell.Locator("input[type=radio]").Nth(answer).CheckAsync();
            await cell.GetByRole(AriaRole.Button).Nth(button).ClickAsync();
        }

        await Expect(slider).Not.ToHaveAttributeAsync("disabled", new Regex(".*"), new() { Timeout = Patience });
        await Expect(prediction.Locator("input[type=radio]").First).ToBeDisabledAsync();
        await Expect(experiment).ToContainTextAsync(StepInWords(), new() { Timeout = Patience });
        var step = await StepAsync(experiment);

        // Four keys move the town 4 x 0.25 degrees to the east: its noon comes 4 minutes earlier (360 degrees in 24 hours).
        var before = await figure.InnerHTMLAsync();
        await handle.FocusAsync();
        for (var key = 0; key < 4; key++)
        {
            await handle.PressAsync("ArrowRight");
        }

        await Expect(experiment).ToContainTextAsync(Written(step - 4), new() { Timeout = Patience });
        // The words give a tenth of a minute, so a difference of two of them is good to a tenth.
        Assert.Equal(-4, await StepAsync(experiment) - step, 0.1001);
        Assert.NotEqual(before, await figure.InnerHTMLAsync());

        // Saved now, and opened again with no kernel: controls and figures stand as they were left.
        var saved = await page.EvaluateAsync<string>("async () => JSON.stringify(await window.save())");
        await File.WriteAllTextAsync(Path.Combine(folder, "saved.json"), saved);
        var kernel = await page.GetAttributeAsync("body", "data-kernel");
        await page.GotoAsync($"{server.Root}static/page.html?saved=saved.json");
        await ReadyAsync(page);
        await Expect(page.Locator(ErrorWidget)).ToHaveCountAsync(0);
        await Expect(experiment.Locator(Figure)).ToHaveCountAsync(2);
        await Expect(experiment).ToContainTextAsync(Written(step - 4));
        await Expect(handle).ToHaveAttributeAsync("aria-valuenow", "1.0");
        await Expect(prediction.Locator("input[type=radio]").First).ToBeCheckedAsync();

        // Another page comes back to the running kernel and shows the same controls as they stand now.
        await page.GotoAsync($"{server.Root}static/page.html?token={server.Token}&id={kernel}");
        await ReadyAsync(page);
        await Expect(page.Locator("main")).ToContainTextAsync(Written(step - 4));
        await Expect(page.Locator(".widget-slider .noUi-target[disabled]")).ToHaveCountAsync(0);

        Assert.Empty(chromium.Foreign);
        Assert.Empty(chromium.Problems);
    }

    [Fact]
    [Trait("needs", "browser")]
    [Trait("needs", "jupyter")]
    [Trait("needs", "npm")]
    public async Task What_nbclient_saved_shows_its_controls_and_figures_with_no_kernel()
    {
        var folder = Path.Combine(home.Folder, "saved");
        await WidgetPage.BuildAsync(folder);
        var notebook = Path.Combine(home.Folder, "saved.ipynb");
        var ran = await Tool.RunAsync(Tool.Python, [Tool.Script("run_lesson.py"), RepositoryFiles.Path("lessons", Lesson, "lesson.ipynb"), notebook], home.Environment);
        Assert.True(ran.ExitCode == 0, ran.Errors);
        File.Copy(notebook, Path.Combine(folder, "saved.json"));

        // The server only hands out files here: no kernel is started.
        await using var server = await JupyterServer.StartAsync(home, folder);
        await using var chromium = await BrowserPage.OpenAsync();
        var page = chromium.Page;
        await page.GotoAsync($"{server.Root}static/page.html?saved=saved.json");
        await ReadyAsync(page);
        await Expect(page.Locator(ErrorWidget)).ToHaveCountAsync(0);
        var experiment = page.Locator("section[data-cell=experiment]");
        await Expect(experiment.Locator(".noUi-target").First).ToBeVisibleAsync();
        await Expect(experiment.Locator(".noUi-target").First).ToHaveAttributeAsync("disabled", new Regex(".*"));
        await Expect(experiment.Locator(Figure)).ToHaveCountAsync(2);
        await Expect(experiment.Locator(Figure).First).ToBeVisibleAsync();
        await Expect(page.Locator("section[data-cell=prediction] input[type=radio]")).ToHaveCountAsync(FirstAnswers + 3);
        await Expect(experiment).Not.ToContainTextAsync(StepInWords());

        // Nothing is cut off at the 300 px that the standard's style sheet gives a control whose layout says nothing.
        Assert.Empty(await page.EvaluateAsync<string[]>(
            "() => [...document.querySelectorAll('.jupyter-button, .widget-radio-box label, .widget-label')].filter(e => e.offsetParent && e.scrollWidth > e.clientWidth + 1).map(e => e.innerText)"));
        Assert.Empty(await page.EvaluateAsync<string[]>(
            "() => [...document.querySelectorAll('.widget-radio-box label')].filter(e => e.scrollHeight > e.clientHeight + 4).map(e => e.innerText)"));
        Assert.Empty(await page.EvaluateAsync<string[]>(
            "() => [...document.querySelectorAll('.noUi-target, .widget-text input')].filter(e => e.offsetParent && e.getBoundingClientRect().width < 60).map(e => e.parentElement.innerText)"));
        Assert.Empty(chromium.Foreign);
        Assert.Empty(chromium.Problems);
    }

    [Fact]
    [Trait("needs", "npm")]
    public async Task Every_control_is_described_as_the_published_specification_has_it()
    {
        await WidgetPage.InstallAsync();
        using var specification = JsonDocument.Parse(await File.ReadAllTextAsync(WidgetPage.Specification));
        var published = specification.RootElement.EnumerateArray().ToDictionary(one => one.GetProperty("model").GetProperty("name").GetString()!);
        string[] plain = ["HBoxModel", "VBoxModel", "BoxModel", "LayoutModel"];
        var models = WidgetModels.Styled.Concat(WidgetModels.Styled.Select(model => WidgetModels.StyleOf(model)!)).Concat(plain).Distinct();
        foreach (var model in models)
        {
            Assert.True(published.TryGetValue(model, out var entry), $"{model} is not in the specification.");
            var ours = WidgetModels.Describe(model);
            Assert.Equal(Parts(entry.GetProperty("model")), $"{ours["_model_module"]} {ours["_model_name"]} {ours["_model_module_version"]}");
            Assert.Equal(Parts(entry.GetProperty("view")), $"{ours["_view_module"]} {ours["_view_name"]} {ours["_view_module_version"]}");
            var style = entry.GetProperty("attributes").EnumerateArray().FirstOrDefault(attribute => attribute.GetProperty("name").GetString() == "style");
            if (WidgetModels.StyleOf(model) is { } named)
            {
                Assert.Equal(style.GetProperty("widget").GetString() + "Model", named);
            }
        }

        static string Parts(JsonElement one) => $"{one.GetProperty("module")} {one.GetProperty("name")} {one.GetProperty("version")}";
    }

    private static async Task ReadyAsync(IPage page)
    {
        await Expect(page.Locator("body")).ToHaveAttributeAsync("data-state", new Regex("ready|failed"), new() { Timeout = Patience });
        Assert.True(await page.GetAttributeAsync("body", "data-state") == "ready", await page.InnerTextAsync("main"));
    }

    private static async Task<double> StepAsync(ILocator experiment)
    {
        var words = StepInWords().Match(await experiment.InnerTextAsync());
        Assert.True(words.Success, "The figure does not say its step in words.");
        return double.Parse(words.Groups[1].Value.Replace('−', '-'), CultureInfo.InvariantCulture);
    }

    private static string Written(double minutes) => $"The longitude step is {minutes.ToString("+0.0;−0.0;0.0", CultureInfo.InvariantCulture)} min";

    [GeneratedRegex("The longitude step is ([+−]?[0-9.]+) min")]
    private static partial Regex StepInWords();
}
