using System.Globalization;
using System.Text.Json.Nodes;
using SunLessons.App.Tests.Browser;
using SunLessons.Cells.Hosting;
using SunLessons.CivilTime;
using SunLessons.Figures;
using SunLessons.Notebooks;
using SunLessons.Places;
using SunLessons.Publishing.Tests.Support;
using SunLessons.Words;

namespace SunLessons.Publishing.Tests.Tiers;

/// <summary>
/// Every number of a published page, computed by the player (WebAssembly) in a browser, beside the same lesson run by the kernel's engine on this machine: text,
/// tables, chains of steps, live sentences, drawings with their coordinates, controls, replies, hints and solutions. Nothing is rounded for the comparison.
/// </summary>
/// <remarks>Not compared: the text of a cell, which is the source of both; the version of the zones' rules and the coordinates in the line of the place are compared with the library.</remarks>
[Trait("needs", "browser")]
public sealed class PlayerNumbersTests(PublishedLessons published)
{
    // Another half of the Earth, another side of Greenwich's meridian than many towns, and no town of the list. The place's name is invented.
    private static readonly (string Name, string Latitude, string Longitude, string Zone) School = ("Our school", "33° 2' 45\" S", "71.62 W", "America/Santiago");

    // Outside the sections: the names of the sizes of paper.
    private static readonly string[] Around = ["A4", "A4"];

    public static TheoryData<string> Editions => [.. PublishedLessons.Editions.Select(lesson => lesson.Folder)];

    [Theory]
    [MemberData(nameof(Editions))]
    public async Task Whatever_a_learner_does_the_page_shows_the_kernels_numbers(string folder)
    {
        var edition = PublishedLessons.Editions.Single(lesson => lesson.Folder == folder);
        await using var kernel = await KernelLesson.StartAsync(edition, new SvgPen());
        kernel.Run.Lesson.BecomeCurrent();
        await using var browser = await BrowserPage.OpenAsync();
        var page = new PlayerLesson(browser);
        await page.OpenAsync(published.Address(folder));
        await SameAsync(kernel, page, "as a learner finds it");
        Assert.Equal(Around, await page.AroundAsync());
        Assert.Equal(PlaceLine(edition, "Vigo", "42.24 N", "8.72 W", "Europe/Madrid"), await page.PlaceLineAsync());

        await page.PredictAsync();
        foreach (var (key, parts) in kernel.Parts("prediction"))
        {
            kernel.Clock.Now = await page.RecordedAtAsync(key);
            Predict(parts);
        }

        var found = await SameAsync(kernel, page, "after the predictions");
        Press(kernel, await PressAsync(kernel, page, "keep-trial"));
        await page.MoveToAsync(School.Name, School.Latitude, School.Longitude, School.Zone);
        var typed = PlaceText.Read(School.Name, School.Latitude, School.Longitude, School.Zone).Place!;
        kernel.Run.Host.FrontEnd.MoveTo(new PagePlace(typed.Name, typed.Point, typed.ZoneId));
        var moved = await SameAsync(kernel, page, "at another place");
        Assert.Equal(PlaceLine(edition, School.Name, School.Latitude, School.Longitude, School.Zone), await page.PlaceLineAsync());
        Assert.NotEqual(found, moved);

        await MoveEverythingAsync(kernel, page);
        Press(kernel, await PressAsync(kernel, page, "keep-trial"));
        var turned = await SameAsync(kernel, page, "with every control elsewhere");
        Assert.NotEqual(moved, turned);

        await AnswerEverythingAsync(kernel, page);
        foreach (var role in (string[])["check-answer", "check-steps", "hint", "hint", "hint", "hint", "show-step", "show-step", "show-step", "show-step"])
        {
            Press(kernel, await PressAsync(kernel, page, role));
        }

        var solved = await SameAsync(kernel, page, "with every hint, step and solution");
        Assert.True(solved.Length > turned.Length);
        // Fewer would mean that something is not read any more: a figure alone has some hundred.
        Assert.True(solved.Length > 1000, $"{solved.Length} lines");
        Assert.Empty(browser.Foreign);
        Assert.Empty(browser.Problems);
    }

    /// <summary>Waits until the page has caught up; then all lines are the same. Gives them.</summary>
    private static async Task<string[]> SameAsync(KernelLesson kernel, PlayerLesson page, string when)
    {
        await kernel.Run.Lesson.Settled;
        var expected = kernel.Lines();
        var until = DateTime.UtcNow.AddSeconds(10);
        IReadOnlyList<SectionNumbers> shown;
        do
        {
            await Task.Delay(100);
            shown = await page.LinesAsync();
        }
        while (DateTime.UtcNow < until && !shown.Zip(expected).All(pair => pair.First.Lines.SequenceEqual(pair.Second.Lines)));

        Assert.Equal(expected.Select(section => section.Cell), shown.Select(section => section.Cell));
        foreach (var (one, other) in expected.Zip(shown))
        {
            var at = one.Lines.Zip(other.Lines).TakeWhile(pair => pair.First == pair.Second).Count();
            Assert.True(at == one.Lines.Count && at == other.Lines.Count, $"{when}, cell \"{one.Cell}\", line {at + 1}: the kernel says \"{one.Lines.ElementAtOrDefault(at)}\", the page \"{other.Lines.ElementAtOrDefault(at)}\".");
        }

        return [.. shown.SelectMany(section => section.Lines)];
    }

    private static string PlaceLine(Lesson edition, string name, string latitude, string longitude, string zone) =>
        WordTable.In(edition.Language).Say("place.line", name, LanguageCulture.Of(edition.Language).Retold(PlaceText.Read(name, latitude, longitude, zone).Place!.Point.ToString()), zone, CivilZones.TzdbVersion);

    // As PublishedPage.PredictAsync does in the page.
    private static void Predict(IReadOnlyList<InMemoryChannel> parts)
    {
        foreach (var choices in parts.Where(part => part.Model == "RadioButtonsModel"))
        {
            choices.ChangeFromPage(new JsonObject { ["index"] = 0 });
        }

        var fields = parts.Where(part => part.Model == "TextModel").ToArray();
        foreach (var field in fields)
        {
            field.ChangeFromPage((JsonNode)(fields.Length > 1 ? "12:00" : (string)field.State["placeholder"]!));
        }

        parts.Single(part => (string?)part.State["_sunlessons_role"] == "record-prediction").Click();
    }

    private static async Task<IReadOnlyList<InMemoryChannel>> BothAsync(KernelLesson kernel, PlayerLesson page, string model)
    {
        var all = kernel.Widgets(model);
        Assert.Equal(all.Count, await page.CountAsync(model));
        return all;
    }

    private static async Task MoveEverythingAsync(KernelLesson kernel, PlayerLesson page)
    {
        var sliders = await BothAsync(kernel, page, "FloatSliderModel");
        Assert.NotEmpty(sliders);
        for (var i = 0; i < sliders.Count; i++)
        {
            // Three tenths of the way, on the control's grid.
            double Of(string name) => (double)sliders[i].State[name]!;
            var text = KernelLesson.Written(Of("min") + Math.Round(0.3 * (Of("max") - Of("min")) / Of("step")) * Of("step"), Of("step"), CultureInfo.InvariantCulture);
            await page.SlideAsync(i, text);
            sliders[i].ChangeFromPage((JsonNode)double.Parse(text, CultureInfo.InvariantCulture));
        }

        var lists = await BothAsync(kernel, page, "DropdownModel");
        for (var i = 0; i < lists.Count; i++)
        {
            var option = ((int)lists[i].State["index"]! + 3) % lists[i].State["_options_labels"]!.AsArray().Count;
            await page.ChooseAsync(i, option);
            lists[i].ChangeFromPage(new JsonObject { ["index"] = option });
        }

        var switches = await BothAsync(kernel, page, "CheckboxModel");
        for (var i = 0; i < switches.Count; i++)
        {
            var ticked = !(bool)switches[i].State["value"]!;
            await page.TickAsync(i, ticked);
            switches[i].ChangeFromPage((JsonNode)ticked);
        }
    }

    private static async Task AnswerEverythingAsync(KernelLesson kernel, PlayerLesson page)
    {
        var fields = await BothAsync(kernel, page, "TextModel");
        for (var i = 0; i < fields.Count; i++)
        {
            if ((bool?)fields[i].State["disabled"] != true)
            {
                await page.TypeAsync(i, "7.25");
                fields[i].ChangeFromPage((JsonNode)"7.25");
            }
        }
    }

    /// <summary>Presses all buttons of a role in the page; gives which.</summary>
    private static async Task<int[]> PressAsync(KernelLesson kernel, PlayerLesson page, string role)
    {
        var buttons = await BothAsync(kernel, page, "ButtonModel");
        int[] pressed = [.. buttons.Index().Where(button => (string?)button.Item.State["_sunlessons_role"] == role).Select(button => button.Index)];
        await page.PressAsync(pressed);
        return pressed;
    }

    private static void Press(KernelLesson kernel, int[] buttons)
    {
        var all = kernel.Widgets("ButtonModel");
        foreach (var button in buttons)
        {
            all[button].Click();
        }
    }
}
