using System.Text.Json.Nodes;
using SunLessons.Cells.Checks;

namespace SunLessons.Cells.Tests;

public class NumberCheckTests
{
    private static readonly string[] Hints = ["first hint", "second hint", "third hint"];

    // Vigo, 8.72 degrees west of Greenwich in a zone one hour ahead of UT: 4 minutes a degree (common practice, no source).
    private static double Step(double longitude, double zoneHours) => 4 * (15 * zoneHours - longitude);

    private static NumberCheck Vigo(Page page) => page.Lesson.NumberCheck(
        "vigo-step",
        "How many minutes do you add in Vigo?",
        Step(-8.72, 1),
        0.5,
        "min",
        [
            new WrongPath("west taken as positive", Step(8.72, 1), "Vigo lies west of Greenwich."),
            new WrongPath("zone left out", Step(-8.72, 0), "The clock keeps the time of a meridian."),
            new WrongPath("degrees read as minutes", 15 + 8.72, "A degree is 4 minutes."),
        ],
        Hints,
        "4 times (15 + 8.72) is 94.9.");

    private static void Answer(Page page, string text)
    {
        page.Last("TextModel").ChangeFromPage(JsonValue.Create(text));
        page.Press("check-answer");
    }

    [Theory]
    [InlineData("94.9", CheckState.Right, null)]
    [InlineData("94,88 min", CheckState.Right, null)]
    [InlineData("1:34:53", CheckState.Right, null)]
    [InlineData("95.38", CheckState.Right, null)]
    [InlineData("94", CheckState.Nearly, null)]
    [InlineData("96.2", CheckState.Nearly, null)]
    [InlineData("25.1", CheckState.NotYet, "west taken as positive")]
    [InlineData("34.9", CheckState.NotYet, "zone left out")]
    [InlineData("23.7", CheckState.NotYet, "degrees read as minutes")]
    [InlineData("-94.9", CheckState.NotYet, null)]
    [InlineData("0", CheckState.NotYet, null)]
    public void It_has_four_answers_and_names_the_wrong_path(string text, CheckState state, string? path)
    {
        var page = new Page();
        var check = Vigo(page);
        page.Lesson.Show(check);
        Assert.Equal(CheckState.NotStarted, check.State);

        Answer(page, text);

        Assert.Equal(state, check.State);
        Assert.Equal(path, check.WrongPathName);
        if (path is not null)
        {
            Assert.Contains($"Not yet: {path}.", page.Html("status"));
        }
    }

    [Fact]
    public void An_answer_that_no_slip_explains_brings_the_next_hint_and_never_a_bare_wrong()
    {
        var page = new Page();
        var check = Vigo(page);
        page.Lesson.Show(check);

        Answer(page, "500");
        Assert.Contains("<strong>Hint 1 of 3:</strong> first hint", page.Html("help"));
        Assert.DoesNotContain("second hint", page.Html("help"));

        Answer(page, "600");
        Assert.Contains("second hint", page.Html("help"));
        Assert.DoesNotContain("Worked solution", page.Html("help"));
    }

    [Fact]
    public void Hints_come_one_by_one_then_the_worked_solution()
    {
        var page = new Page();
        var check = Vigo(page);
        page.Lesson.Show(check);
        var button = page.Role("hint");
        Assert.Equal("Hint 1 of 3", (string?)button.State["description"]);

        button.Click();
        button.Click();
        button.Click();
        Assert.Contains("third hint", page.Html("help"));
        Assert.DoesNotContain("Worked solution", page.Html("help"));
        Assert.Equal("Show the worked solution", (string?)button.State["description"]);

        button.Click();
        Assert.Contains("<strong>Worked solution:</strong> 4 times (15 + 8.72) is 94.9.", page.Html("help"));
        Assert.True((bool)button.State["disabled"]!);
    }

    [Fact]
    public void A_right_answer_says_the_number_and_shows_the_worked_solution()
    {
        var page = new Page();
        page.Lesson.Show(Vigo(page));

        Answer(page, "95");

        Assert.Contains("Right: 94.9 min.", page.Html("status"));
        Assert.Contains("Worked solution", page.Html("help"));
        Assert.Equal("right", (string?)page.Role("status").State["_sunlessons_state"]);
    }

    [Theory]
    [InlineData("", "Nothing is written yet. Write minutes of time, such as 12.5 min.")]
    [InlineData("<b>west</b>", "&#39;&lt;b&gt;west&lt;/b&gt;&#39; cannot be read as minutes of time. Write it in digits, such as 12.5 min.")]
    [InlineData("22.5°", "&#39;22.5&#176;&#39; is an angle, but the question asks for minutes of time. Write a number such as 12.5 min.")]
    public void What_cannot_be_judged_is_answered_kindly_and_takes_no_hint(string text, string sentence)
    {
        var page = new Page();
        var check = Vigo(page);
        page.Lesson.Show(check);

        Answer(page, text);

        Assert.Equal(CheckState.NotStarted, check.State);
        Assert.Equal(0, check.HintsTaken);
        Assert.Contains(sentence, page.Html("status"));
    }

    [Fact]
    public void Answer_state_and_hints_come_back_after_a_restart()
    {
        var page = new Page();
        page.Lesson.Show(Vigo(page));
        page.Role("hint").Click();
        Answer(page, "25.1");

        var later = new Page(record: page.Host.FrontEnd.Record);
        var check = Vigo(later);
        later.Lesson.Show(check);

        Assert.Equal(CheckState.NotYet, check.State);
        Assert.Equal("west taken as positive", check.WrongPathName);
        Assert.Equal(1, check.HintsTaken);
        Assert.Equal("25.1", (string?)later.Last("TextModel").State["value"]);
        Assert.Empty(later.Host.Recorded);
    }

    [Fact]
    public void An_answer_that_was_only_typed_is_kept_but_not_judged()
    {
        var page = new Page();
        page.Lesson.Show(Vigo(page));
        page.Last("TextModel").ChangeFromPage(JsonValue.Create("25.1"));

        var later = new Page(record: page.Host.FrontEnd.Record);
        var check = Vigo(later);
        later.Lesson.Show(check);

        Assert.Equal(CheckState.NotStarted, check.State);
        Assert.Equal("25.1", (string?)later.Last("TextModel").State["value"]);
    }

    [Theory]
    [InlineData(94.6, "'a' gives 94.6 and 'the right answer' gives 94.88, which is within the tolerance of 0.5.")]
    [InlineData(25.5, "'a' gives 25.5 and 'west taken as positive' gives 25.12, which is within the tolerance of 0.5.")]
    [InlineData(double.NaN, "'a' gives NaN")]
    public void Slips_that_cannot_be_told_apart_are_refused_when_the_check_is_made(double value, string sentence)
    {
        var page = new Page();

        var error = Assert.Throws<ArgumentException>(() => page.Lesson.NumberCheck(
            "c", "?", 94.88, 0.5, "min", [new WrongPath("west taken as positive", 25.12, "r"), new WrongPath("a", value, "r")], Hints, "s"));

        Assert.Contains(sentence, error.Message);
        Assert.StartsWith("Check 'c' cannot tell slips apart:", error.Message);
    }

    [Fact]
    public void Inputs_that_are_known_to_hide_a_slip_are_refused()
    {
        // Dunedin, 45.87 degrees: sine and cosine of the latitude give hour lines 0.9 degrees apart, within a reading of 1 degree.
        var f = 45.87 * Math.PI / 180;
        double Line(double factor) => Math.Atan(factor * Math.Tan(Math.PI / 4)) * 180 / Math.PI;

        Assert.Throws<ArgumentException>(() => new Page().Lesson.NumberCheck(
            "hour-line", "?", Line(Math.Sin(f)), 1.0, "°", [new WrongPath("cosine for sine", Line(Math.Cos(f)), "r")], Hints, "s"));
    }

    [Fact]
    public void Two_hints_are_not_enough()
    {
        var error = Assert.Throws<ArgumentException>(() => new Page().Lesson.NumberCheck("c", "?", 1, 0.1, "", [], ["a", "b"], "s"));

        Assert.StartsWith("Check 'c' has 2 hints; give 3 hints, each one going further, and the worked solution.", error.Message);
    }

    [Theory]
    [InlineData("359.8", CheckState.Right)]
    [InlineData("0.3", CheckState.Right)]
    [InlineData("180", CheckState.NotYet)]
    public void Bearings_come_round(string text, CheckState state)
    {
        var page = new Page();
        var check = page.Lesson.NumberCheck("c", "?", 0, 0.5, "bearing", [new WrongPath("mirrored", 180, "r")], Hints, "s");
        page.Lesson.Show(check);

        Answer(page, text);

        Assert.Equal(state, check.State);
    }

    [Theory]
    [InlineData("23:59:45", CheckState.Right)]
    [InlineData("0:00", CheckState.Right)]
    [InlineData("0:01", CheckState.Nearly)]
    [InlineData("12:00", CheckState.NotYet)]
    public void Clock_times_come_round_and_their_tolerance_is_in_minutes(string text, CheckState state)
    {
        var page = new Page();
        var check = page.Lesson.NumberCheck("c", "?", 0, 0.5, "clock", [], Hints, "s");
        page.Lesson.Show(check);

        Answer(page, text);

        Assert.Equal(state, check.State);
    }

    [Fact]
    public void A_check_that_follows_the_place_asks_and_judges_anew()
    {
        var page = new Page(drawsFigures: true, place: Page.Vigo);
        var check = page.Lesson.NumberCheckHere(
            "here",
            () => $"How many minutes do you add in {page.Lesson.Here.Name}?",
            () => new NumberProblem(Step(page.Lesson.Here.Point.Longitude.Degrees, page.Lesson.Here.Name == "Vigo" ? 1 : 9.5), []),
            0.5,
            "min",
            Hints,
            () => $"Worked for {page.Lesson.Here.Name}.");
        page.Lesson.Show(check);
        Answer(page, "94.9");
        Assert.Equal(CheckState.Right, check.State);

        page.Host.FrontEnd.Receive(new JsonObject { ["place"] = JsonNode.Parse(Page.Darwin) });

        Assert.Equal(CheckState.NotYet, check.State);
        Assert.Contains("in Darwin?", page.Html("question"));

        // 46.6 is what lessons print for Darwin: 4 x (142.5 - 130.84) = 46.64.
        Answer(page, "46.6");
        Assert.Equal(CheckState.Right, check.State);
        Assert.Contains("Worked for Darwin.", page.Html("help"));
    }

    [Fact]
    public void At_a_place_where_two_slips_agree_only_the_first_is_named()
    {
        var page = new Page();
        var check = page.Lesson.NumberCheckHere("here", () => "?", () => new NumberProblem(10, [new WrongPath("a", 20, "r"), new WrongPath("b", 20.2, "r"), new WrongPath("c", 10.1, "r")]), 0.5, "min", Hints, () => "s");
        page.Lesson.Show(check);

        Answer(page, "20.2");
        Assert.Equal("a", check.WrongPathName);
        Answer(page, "10.2");
        Assert.Equal(CheckState.Right, check.State);
    }
}
