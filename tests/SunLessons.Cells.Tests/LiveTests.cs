using System.Text.Json.Nodes;
using SunLessons.Cells.Live;
using SunLessons.Figures;

namespace SunLessons.Cells.Tests;

public class LiveTests
{
    private static Figure Slope(double value) => Figure.Titled("Slope").Across("x", "", 0, 1).Up("y", "", -20, 20)
        .Line("slope", [0, 1], [0, value]).Line("flat", [0, 1], [0, 0]).Says($"The slope is {Axis.Numeral(value, 1)}.");

    [Fact]
    public async Task Two_hundred_moves_end_in_the_newest_value_and_are_merged()
    {
        var page = new Page(drawsFigures: true, place: Page.Vigo);
        var turn = page.Lesson.Number("turn", "Turn", 0, 200, 1, 0);
        var first = new ManualResetEventSlim();
        var go = new ManualResetEventSlim();
        var computed = 0;
        var figure = page.Lesson.LiveFigure("slope", () =>
        {
            if (Interlocked.Increment(ref computed) == 2)
            {
                // The first recomputation waits until all moves have come, as a slow one would.
                first.Set();
                Assert.True(go.Wait(TimeSpan.FromSeconds(20)));
            }

            return Slope(turn);
        }, turn);
        page.Lesson.Show(turn, figure);

        for (var i = 1; i <= 200; i++)
        {
            page.Last("FloatSliderModel").ChangeFromPage(JsonValue.Create((double)i));
            if (i == 1)
            {
                Assert.True(first.Wait(TimeSpan.FromSeconds(20)));
            }
        }

        go.Set();
        await page.Lesson.Settled;

        Assert.Equal("The slope is 200.0.", figure.PlainText);
        Assert.Equal("The slope is 200.0.", (string?)page.Role("figure").Customs[^1]["summary"]);

        // Once at first, once for the first move, once for all moves that came meanwhile.
        Assert.Equal(3, computed);
        Assert.Equal(200, page.Host.Recorded.Count(r => r.Key == "control:turn"));
    }

    [Fact]
    public async Task Moves_without_any_waiting_end_in_the_newest_value_too()
    {
        var page = new Page();
        var turn = page.Lesson.Number("turn", "Turn", 0, 200, 1, 0);
        var figure = page.Lesson.LiveFigure("slope", () => Slope(turn), turn);
        page.Lesson.Show(turn, figure);

        for (var i = 1; i <= 200; i++)
        {
            page.Last("FloatSliderModel").ChangeFromPage(JsonValue.Create(i));
        }

        await page.Lesson.Settled;
        Assert.Contains("The slope is 200.0.", page.Html("figure"));
    }

    [Fact]
    public async Task A_page_that_draws_gets_the_figure_once_and_then_only_what_changed()
    {
        var page = new Page(drawsFigures: true, place: Page.Vigo);
        var turn = page.Lesson.Number("turn", "Turn", -20, 20, 1, 3);
        page.Lesson.Show(turn, page.Lesson.LiveFigure("slope", () => Slope(turn), turn));
        var widget = page.Role("figure");

        Assert.Equal(["alt", "config", "data", "layout", "summary"], ((JsonObject)widget.State["_sunlessons_figure"]!).Select(p => p.Key).Order());
        Assert.Equal("The slope is 3.0.", (string?)widget.State["_sunlessons_summary"]);
        Assert.DoesNotContain("<svg", (string)widget.State["value"]!);

        page.Last("FloatSliderModel").ChangeFromPage(JsonValue.Create(-7.0));
        await page.Lesson.Settled;

        var custom = Assert.Single(widget.Customs);
        Assert.Equal("[0]", custom["columns"]!["traces"]!.ToJsonString());
        Assert.Equal("[[0,-7]]", custom["columns"]!["y"]!.ToJsonString());
        Assert.Equal("The slope is \u22127.0.", (string?)custom["summary"]);
        Assert.Empty(widget.Updates);
    }

    [Fact]
    public async Task Every_other_front_end_gets_a_drawing_with_its_sentence_and_table()
    {
        var page = new Page();
        var turn = page.Lesson.Number("turn", "Turn", -20, 20, 1, 3);
        page.Lesson.Show(turn, page.Lesson.LiveFigure("slope", () => Slope(turn), turn));
        var before = page.Html("figure");

        page.Last("FloatSliderModel").ChangeFromPage(JsonValue.Create(-7.0));
        await page.Lesson.Settled;

        var after = page.Html("figure");
        Assert.StartsWith("<figure class=\"sunlessons-figure\"><svg ", after);
        Assert.Contains("role=\"status\">The slope is \u22127.0.</p>", after);
        Assert.Contains("<th scope=\"col\">", after);
        Assert.NotEqual(before, after);
        Assert.Empty(page.Role("figure").Customs);
        Assert.False(page.Role("figure").State.ContainsKey("_sunlessons_figure"));
    }

    [Fact]
    public async Task The_place_is_followed()
    {
        var page = new Page(drawsFigures: true, place: Page.Vigo);
        page.Lesson.Show(
            page.Lesson.LiveFigure("f", () => Slope(page.Lesson.Here.Point.Latitude.Degrees / 10)),
            page.Lesson.LiveText("t", () => $"You are in {page.Lesson.Here.Name}."));

        page.Host.FrontEnd.Receive(new JsonObject { ["place"] = JsonNode.Parse(Page.Darwin) });
        await page.Lesson.Settled;

        Assert.Equal("The slope is \u22121.2.", (string?)page.Role("figure").Customs[^1]["summary"]);
        Assert.Contains("You are in Darwin.", page.Html("text"));
    }

    [Fact]
    public async Task An_error_becomes_one_sentence_and_the_next_value_heals_it()
    {
        var page = new Page(drawsFigures: true, place: Page.Vigo);
        var height = page.Lesson.Number("height", "Height", 0, 95, 5, 30, "°");
        page.Lesson.Show(height, page.Lesson.LiveFigure("f", () => Slope(Altitude.FromDegrees(height).Degrees / 10), height));

        page.Last("FloatSliderModel").ChangeFromPage(JsonValue.Create(95.0));
        await page.Lesson.Settled;
        Assert.Equal(
            "Altitude 95 degrees is outside -90 to +90 degrees. Give the height above the horizon.",
            (string?)page.Role("figure").Customs[^1]["problem"]);

        page.Last("FloatSliderModel").ChangeFromPage(JsonValue.Create(90.0));
        await page.Lesson.Settled;
        Assert.Equal("The slope is 9.0.", (string?)page.Role("figure").Customs[^1]["summary"]);
        Assert.NotNull(page.Role("figure").Customs[^1]["figure"]);
    }

    [Fact]
    public void An_error_at_the_very_first_value_is_a_sentence_too()
    {
        var page = new Page();
        page.Lesson.Show(page.Lesson.LiveFigure("f", () => throw new InvalidOperationException("the Sun is down")));

        Assert.Contains("This cannot be worked out for these values: the Sun is down", page.Html("figure"));
    }

    [Fact]
    public async Task The_numbers_travel_when_they_are_asked_for()
    {
        var page = new Page(drawsFigures: true, place: Page.Vigo);
        var turn = page.Lesson.Number("turn", "Turn", -20, 20, 1, 3);
        page.Lesson.Show(turn, page.Lesson.LiveFigure("slope", () => Slope(turn), turn));

        page.Role("figure").CustomFromPage(new JsonObject { ["event"] = "table" });
        await page.Lesson.Settled;

        var custom = Assert.Single(page.Role("figure").Customs);
        Assert.Contains("<caption>Slope</caption>", (string?)custom["table"]);
        Assert.Equal("x,slope,flat\r\n0,0,0\r\n1,3,0\r\n", (string?)custom["csv"]);
    }

    [Fact]
    public async Task A_page_loaded_again_is_told_the_present_figure()
    {
        var page = new Page(drawsFigures: true, place: Page.Vigo);
        var turn = page.Lesson.Number("turn", "Turn", -20, 20, 1, 3);
        page.Lesson.Show(turn, page.Lesson.LiveFigure("slope", () => Slope(turn), turn));
        page.Last("FloatSliderModel").ChangeFromPage(JsonValue.Create(9.0));
        await page.Lesson.Settled;

        page.Host.FrontEnd.Open(new JsonObject { ["draws_figures"] = true });

        Assert.Equal("9", page.Role("figure").State["_sunlessons_figure"]!["data"]![0]!["y"]![1]!.ToJsonString().Replace(".0", ""));
        Assert.Equal("The slope is 9.0.", (string?)page.Role("figure").State["_sunlessons_summary"]);
    }

    [Fact]
    public async Task A_cell_run_again_silences_what_its_former_run_made()
    {
        var page = new Page();
        var turn = page.Lesson.Number("turn", "Turn", -20, 20, 1, 3);
        var old = 0;
        page.Lesson.Show(turn, page.Lesson.LiveFigure("slope", () =>
        {
            old++;
            return Slope(turn);
        }, turn));
        page.Lesson.Show(page.Lesson.LiveFigure("slope", () => Slope(turn), turn));

        page.Last("FloatSliderModel").ChangeFromPage(JsonValue.Create(9.0));
        await page.Lesson.Settled;

        Assert.Equal(1, old);
        Assert.Contains("9.0", page.Html("figure"));
    }

    [Fact]
    public async Task When_only_the_cell_of_the_control_is_run_again_the_old_figure_follows_the_new_control()
    {
        var page = new Page();
        var turn = page.Lesson.Number("turn", "Turn", -20, 20, 1, 3);
        page.Lesson.Show(turn);
        page.Lesson.Show(page.Lesson.LiveFigure("slope", () => Slope(turn), turn));

        page.Lesson.Show(page.Lesson.Number("turn", "Turn", -20, 20, 1, 3));
        page.Last("FloatSliderModel").ChangeFromPage(JsonValue.Create(9.0));
        await page.Lesson.Settled;

        Assert.Contains("The slope is 9.0.", page.Html("figure"));
    }

    [Fact]
    public void A_fourth_live_control_is_refused_in_one_sentence()
    {
        var page = new Page();
        var four = Enumerable.Range(0, 4).Select(i => page.Lesson.Number($"n{i}", "N", 0, 1, 1, 0)).ToArray();

        var error = Assert.Throws<ArgumentException>(() => page.Lesson.LiveFigure("f", () => Slope(1), four));

        Assert.StartsWith("'f' depends on 4 controls, which is more than a reader can watch. Leave at most 3.", error.Message);
    }

    [Fact]
    public async Task A_chain_of_corrections_is_a_table_that_follows()
    {
        var page = new Page();
        var law = page.Lesson.Switch("law", "Daylight time");
        var steps = page.Lesson.Steps("chain", "From the dial to the clock", () =>
        [
            new StepRow("what the dial shows", "", "", "12:00"),
            StepRow.Of("longitude", ReadingCorrection.FromMinutes(94.88), "the dial stands west of the zone's meridian", "13:34.9"),
            .. law.IsOn ? new[] { StepRow.Of("law", ReadingCorrection.FromMinutes(60), "daylight time", "14:34.9") } : [],
        ], law);
        page.Lesson.Show(law, steps);
        Assert.DoesNotContain("daylight time", page.Html("steps"));

        page.Last("CheckboxModel").ChangeFromPage(JsonValue.Create(true));
        await page.Lesson.Settled;

        var html = page.Html("steps");
        Assert.Contains("<caption>From the dial to the clock</caption>", html);
        Assert.Contains("<th scope=\"row\">longitude</th><td>+94.9 min</td><td>add 94.9 min: the dial stands west of the zone&#39;s meridian</td><td>13:34.9</td>", html);
        Assert.Contains("<th scope=\"row\">law</th><td>+60.0 min</td>", html);
    }

    [Fact]
    public void Nothing_that_is_shown_holds_script_event_attributes_headings_or_styles()
    {
        var page = new Page();
        var guess = page.Lesson.Predict("<p>", "<script>alert(1)</script>?", "<b onclick=x>", "b");
        page.Lesson.Show(
            guess,
            guess.ShowBeside(() => "<img src=x onerror=y>"),
            page.Lesson.LiveText("t", () => "<script>"),
            page.Lesson.LiveFigure("f", () => Figure.Titled("<script>").Line("<img onerror=x>", [0, 1], [0, 1])),
            page.Lesson.Steps("s", "<i>", () => [new StepRow("<script>", "", "", "")]));

        foreach (var html in page.Host.Channels.Where(c => c.Model == "HTMLModel").Select(c => (string)c.State["value"]!))
        {
            Assert.DoesNotMatch("<(script|img|style|h[1-6])|<[^>]* (on[a-z]+|style)=", html);
        }
    }
}
