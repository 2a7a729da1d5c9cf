using System.Globalization;
using System.Text.Json.Nodes;
using Microsoft.Playwright;
using SunLessons.App.Tests.Support;

namespace SunLessons.App.Tests.Browser;

/// <summary>The lesson on longitude and zone, driven in a real browser against the real program.</summary>
[Trait("needs", "browser")]
public sealed class YourOwnNoonTests : DrivenPages
{
    private const string Lesson = "your-own-noon";

    [Fact]
    public async Task Controls_are_locked_until_a_prediction_is_recorded_and_the_figure_follows_keyboard_button_and_field()
    {
        var lesson = await LessonPage.OpenAsync(Browser.Page, Pages, Lesson);
        Assert.Empty(ChildProcesses.Of(Pages.Process.Id));
        await lesson.StartAsync();

        await Assertions.Expect(lesson.Slider).ToBeDisabledAsync();
        await Assertions.Expect(lesson.NumberField).ToBeDisabledAsync();
        await Assertions.Expect(Browser.Page.Locator("select:has-text('Dunedin')").First).ToBeDisabledAsync();
        await lesson.PredictAsync("12:30");
        await Assertions.Expect(lesson.Slider).ToBeEnabledAsync();
        await lesson.WaitForSummaryAsync(Step(0));

        await lesson.Slider.FocusAsync();
        await Browser.Page.Keyboard.PressAsync("ArrowRight");
        await Browser.Page.Keyboard.PressAsync("ArrowRight");
        await Assertions.Expect(lesson.Slider).ToHaveValueAsync("0.5");
        await ExpectStepAsync(lesson, 0.5);

        await lesson.SliderRow.GetByRole(AriaRole.Button).Last.ClickAsync();
        await ExpectStepAsync(lesson, 0.75);
        await lesson.SliderRow.GetByRole(AriaRole.Button).First.ClickAsync();
        await ExpectStepAsync(lesson, 0.5);

        await lesson.NumberField.FillAsync("-1,25");
        await lesson.NumberField.PressAsync("Enter");
        await ExpectStepAsync(lesson, -1.25);

        await lesson.NumberField.FillAsync("far west");
        await lesson.NumberField.PressAsync("Enter");
        await Browser.Page.WaitForSelectorAsync("text=“far west” is not a number");
        Assert.Equal("far west", await lesson.NumberField.InputValueAsync());
        Assert.Empty(Browser.Foreign);
        Assert.Empty(Browser.Problems);
    }

    [Fact]
    public async Task Answers_are_saved_as_one_file_of_the_shape_that_the_teachers_page_counts()
    {
        var lesson = await LessonPage.OpenAsync(Browser.Page, Pages, Lesson);
        var link = Browser.Page.GetByRole(AriaRole.Link, new() { Name = "Save my answers" });
        await Assertions.Expect(link).ToHaveCountAsync(0);
        await lesson.StartAsync();
        await lesson.PredictAsync("12:30");
        var download = await Browser.Page.RunAndWaitForDownloadAsync(() => link.ClickAsync());
        Assert.Equal("your-own-noon-answers.json", download.SuggestedFilename);
        var answers = JsonNode.Parse(await File.ReadAllTextAsync(await download.PathAsync()))!;
        Assert.Equal("sunlessons-answers", (string?)answers["format"]);
        Assert.Equal(Lesson, (string?)answers["lesson"]);
        Assert.Equal("Europe/Madrid", (string?)answers["place"]!["zone"]);
        Assert.Equal("12:30", (string?)answers["record"]!["prediction:shortest-shadow"]!["answer"]);
        Assert.Empty(Browser.Problems);
    }

    [Theory]
    [InlineData("By the lake", "1.5 S", "30 E", "Africa/Nairobi", 45.0 - 30.0)]
    [InlineData("Our school", "-45,87", "170.5", "Pacific/Auckland", 180.0 - 170.5)]
    [InlineData("Far north", "69° 39′ N", "18,96", "Europe/Oslo", 15.0 - 18.96)]
    public async Task Every_figure_follows_a_typed_place(string name, string latitude, string longitude, string zone, double degreesWestOfTheFairMeridian)
    {
        var lesson = await LessonPage.OpenAsync(Browser.Page, Pages, Lesson);
        await lesson.StartAsync();
        await lesson.PredictAsync("13:18");
        await lesson.MoveToAsync(name, latitude, longitude, zone);

        var summary = await lesson.WaitForSummaryAsync(Minutes(4.0 * degreesWestOfTheFairMeridian));
        Assert.StartsWith(name, summary, StringComparison.Ordinal);
        var second = Browser.Page.Locator("[data-cell=experiment] .figure").Nth(1).Locator("[role=status]");
        await Assertions.Expect(second).ToContainTextAsync("Longitude " + Minutes(4.0 * degreesWestOfTheFairMeridian));
        await Assertions.Expect(Browser.Page.Locator("text=" + name + " keeps the zone " + zone)).ToBeVisibleAsync();
    }

    [Fact]
    public async Task A_wrong_path_is_answered_by_its_name_and_a_right_answer_with_a_comma_is_right()
    {
        var lesson = await LessonPage.OpenAsync(Browser.Page, Pages, Lesson);
        await lesson.StartAsync();
        await lesson.AnswerAsync("ushuaia", "-93,2");
        await Browser.Page.WaitForSelectorAsync("[data-key=ushuaia] >> text=plus and minus exchanged");
        await lesson.AnswerAsync("ushuaia", "-453");
        await Browser.Page.WaitForSelectorAsync("[data-key=ushuaia] >> text=west taken as plus");
        await lesson.AnswerAsync("ushuaia", "93,2 min", press: false);
        await Browser.Page.PressAsync("[data-key=ushuaia] input[type=text]", "Enter");
        await Browser.Page.WaitForSelectorAsync("[data-key=ushuaia] >> text=Right");
        await lesson.AnswerAsync("kathmandu", "-41.3");
        await Browser.Page.WaitForSelectorAsync("[data-key=kathmandu] >> text=the part of an hour in the zone dropped");
        await lesson.AnswerAsync("kathmandu", "a lot");
        await Browser.Page.WaitForSelectorAsync("[data-key=kathmandu] >> .sunlessons-problem");
    }

    [Fact]
    public async Task A_learner_writes_a_cell_with_nothing_to_import()
    {
        var page = Browser.Page;
        var lesson = await LessonPage.OpenAsync(page, Pages, Lesson);
        await lesson.StartAsync();
        var cell = page.Locator("[data-cell=own-dial]");
        await cell.GetByText("Change it").ClickAsync();
        await cell.Locator(".monaco-editor textarea").WaitForAsync();
        await cell.Locator(".monaco-editor .view-lines").ClickAsync();
        await page.Keyboard.PressAsync("Control+A");
        await page.Keyboard.PressAsync("Delete");
        await page.Keyboard.InsertTextAsync(
            "var turn = Latitude.FromDegrees(42.24);\nConsole.WriteLine(new LocalDate(2026, 11, 3).DayOfWeek);\nFigure.Titled(\"Mine\").Curve(\"line\", 0, 1, x => x)");
        await page.Keyboard.PressAsync("Control+Enter");
        await Assertions.Expect(cell.Locator(".cell-output")).ToContainTextAsync("Tuesday", new LocatorAssertionsToContainTextOptions { Timeout = 30_000 });
        await Assertions.Expect(cell.Locator(".cell-output svg").First).ToBeVisibleAsync();

        await page.Keyboard.PressAsync("Control+A");
        await page.Keyboard.InsertTextAsync("Console.WriteLine(turn.Degrees); Console.WriteLine(6 *);");
        await page.Keyboard.PressAsync("Control+Enter");
        await Assertions.Expect(cell.Locator(".cell-output")).ToContainTextAsync("line 1, column 55", new LocatorAssertionsToContainTextOptions { Timeout = 30_000 });
        Assert.Empty(Browser.Foreign);
    }

    private async Task ExpectStepAsync(LessonPage lesson, double shift)
    {
        await lesson.WaitForSummaryAsync(Step(shift));
        var drawn = await lesson.DrawnTextAsync();
        Assert.Contains(Step(shift).Replace("The longitude step is ", "", StringComparison.Ordinal), drawn.Replace("\u00a0", " ", StringComparison.Ordinal), StringComparison.Ordinal);
    }

    /// <summary>The sentence's number for Vigo moved by some degrees east, from the library's own longitude and the zone's meridian.</summary>
    private static string Step(double shift)
    {
        var vigo = SunLessons.Places.Gazetteer.Towns.Single(town => town.Name == "Vigo");
        var rule = vigo.Zone.RuleAt(NodaTime.Instant.FromUtc(2026, 11, 3, 12, 0));
        return Minutes((rule.Meridian - vigo.Point.Longitude.Angle - Angle.FromDegrees(shift)).TimeMinutes);
    }

    private static string Minutes(double minutes) => minutes.ToString("+0.0;\u22120.0;0.0", CultureInfo.InvariantCulture) + " min";
}
