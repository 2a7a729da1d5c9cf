using System.Text.Json.Nodes;
using SunLessons.Figures;
using static SunLessons.Cells.Say;

namespace SunLessons.Cells.Tests;

public class ShowTests
{
    [Theory]
    [InlineData(94.88, "+0.0 min", "+94.9 min")]
    [InlineData(-15.84, "+0.0 min", "\u221215.8 min")]
    [InlineData(-0.01, "+0.0 min", "0.0 min")]
    [InlineData(94.88, "0 min", "95 min")]
    [InlineData(33.913, "0.00°", "33.91°")]
    [InlineData(13.31, "hh:mm", "13:19")]
    [InlineData(7.2, "about 0.0 m", "about 7.2 m")]
    public void A_value_is_shown_under_its_name_and_given_back(double number, string pattern, string text)
    {
        var page = new Page();

        var back = page.Lesson.Value("vigo-zone-step", number, pattern);

        Assert.Equal(number, back);
        var output = Assert.Single(page.Host.Outputs);
        Assert.Equal(text, (string?)output["text/plain"]);
        var value = output["application/vnd.sunlessons.value+json"];
        Assert.Equal(["name", "value", "text"], ((JsonObject)value).Select(p => p.Key));
        Assert.Equal("vigo-zone-step", (string?)value["name"]);
        Assert.Equal(number, (double)value["value"]!);
        Assert.Equal(text, (string?)value["text"]);
    }

    [Fact]
    public void Words_can_be_quoted_too()
    {
        var page = new Page();

        Assert.Equal("26 October", page.Lesson.Value("overhead", "26 October"));
        Assert.Equal("26 October", (string?)page.Host.Outputs[0]["application/vnd.sunlessons.value+json"]["value"]);
    }

    [Fact]
    public void A_value_that_cannot_be_quoted_is_refused_in_one_sentence()
    {
        var lesson = new Page().Lesson;

        Assert.StartsWith("Value 'x' is not a number", Assert.Throws<ArgumentException>(() => lesson.Value("x", double.NaN, "0.0")).Message);
        Assert.StartsWith("The name 'a b' cannot be quoted", Assert.Throws<ArgumentException>(() => lesson.Value("a b", 1, "0.0")).Message);
        Assert.StartsWith("The pattern 'min' has no place for a number.", Assert.Throws<ArgumentException>(() => lesson.Value("x", 1, "min")).Message);
    }

    [Fact]
    public void A_still_figure_is_shown_for_pages_for_readers_and_as_a_sentence()
    {
        var page = new Page();

        page.Lesson.Show(Figure.Titled("t").Line("a", [0, 1], [0, 1]).Says("It rises."));

        var output = Assert.Single(page.Host.Outputs);
        Assert.Equal(["application/vnd.plotly.v1+json", "text/html", "text/plain"], output.Keys.Order());
        Assert.Equal("It rises.", (string?)output["text/plain"]);
        Assert.Contains("<svg ", (string?)output["text/html"]);
        Assert.Contains("<table ", (string?)output["text/html"]);
    }

    [Fact]
    public void Things_stand_one_under_the_other_in_their_order()
    {
        var page = new Page(drawsFigures: true, place: Page.Vigo);
        var turn = page.Lesson.Number("turn", "Turn", 0, 9, 1, 3);
        var law = page.Lesson.Switch("law", "Daylight time");

        page.Lesson.Show("Try it:", turn, law, 5.5);

        Assert.Equal(3, page.Host.Outputs.Count);
        Assert.Equal("<p>Try it:</p>", (string?)page.Host.Outputs[0]["text/html"]);
        Assert.Equal("Turn: 3\nDaylight time: off", (string?)page.Host.Outputs[1]["text/plain"]);
        Assert.Equal("5.5", (string?)page.Host.Outputs[2]["text/plain"]);
        var box = page.Last("VBoxModel");
        Assert.Equal(
            [$"IPY_MODEL_{page.Last("FloatSliderModel").Id}", $"IPY_MODEL_{page.Last("CheckboxModel").Id}"],
            ((JsonArray)box.State["children"]!).Select(c => (string)c!));
        Assert.Equal(box.Id, (string?)page.Host.Outputs[1]["application/vnd.jupyter.widget-view+json"]["model_id"]);
    }

    [Fact]
    public async Task A_whole_cell_reads_aloud()
    {
        var page = new Page(drawsFigures: true, place: Page.Vigo);
        page.Lesson.BecomeCurrent();

        var guess = Predict("first", "Which way does the noon shadow point?", "north", "south");
        var hour = Hour("hour", "Hour", after: guess);
        var law = Switch("law", "Daylight time", after: guess);
        var figure = LiveFigure("dial", () => Figure.Titled($"At {Here.Name}").Curve("line", 0, 24, h => h * hour), hour);
        var words = LiveText("words", () => law ? "The law adds an hour." : "The law adds nothing.", law);
        Show(guess, hour, law, figure, words, guess.ShowBeside(() => "north"));

        page.Last("RadioButtonsModel").ChangeFromPage(new JsonObject { ["index"] = 0 });
        page.Press("record-prediction");
        page.Last("CheckboxModel").ChangeFromPage(JsonValue.Create(true));
        await page.Lesson.Settled;

        Assert.Equal("The law adds an hour.", words.PlainText);
        Assert.Equal("At Vigo", figure.Figure!.Title);
    }
}
