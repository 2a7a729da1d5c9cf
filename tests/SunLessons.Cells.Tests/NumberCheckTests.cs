using System.Text.Json.Nodes;
using SunLessons.Cells.Checks;
using static SunLessons.Cells.UsualSlips;

namespace SunLessons.Cells.Tests;

public class NumberCheckTests
{
    private static readonly string[] Hints = ["first hint", "second hint", "third hint"];

    // Vigo, 8.72 degrees west of Greenwich in a zone one hour ahead of UT: 4 minutes a degree (common practice, no source).
    private static readonly SlipKind ZoneLeftOut = Say.OwnSlip("zone", "zone left out");

    private static double Step(Way way, double longitude, double zoneHours) =>
        (way.Made(DegreesAsMinutes) ? 1 : 4) * (15 * (way.Made(ZoneLeftOut) ? 0 : zoneHours) - (way.Made(WestTakenAsPlus) ? -longitude : longitude));

    private static NumberCheck Vigo(Page page) => page.Lesson.NumberCheck(
        "vigo-step",
        "How many minutes do you add in Vigo?",
        way => Step(way, -8.72, 1),
        0.5,
        "min",
        [
            new Slip(WestTakenAsPlus, "Vigo lies west of Greenwich."),
            new Slip(ZoneLeftOut, "The clock keeps the time of a meridian."),
            new Slip(DegreesAsMinutes, "A degree is 4 minutes."),
        ],
        Hints,
        "4 times (15 + 8.72) is 94.9.");

    /// <summary>A check whose slips lead to given numbers, two at once to their sum.</summary>
    private static NumberCheck Given(Page page, double answer, double tolerance, string unit, bool follows, params (string Name, double Value)[] slips)
    {
        var kinds = slips.Select(s => (Kind: new SlipKind(s.Name, s.Name), s.Value)).ToArray();
        double Formula(Way way) => kinds.Any(k => way.Made(k.Kind)) ? kinds.Where(k => way.Made(k.Kind)).Sum(k => k.Value) : answer;
        var declared = kinds.Select(k => new Slip(k.Kind, $"reply {k.Kind.Name}")).ToArray();
        return follows
            ? page.Lesson.NumberCheckHere("c", () => "?", Formula, tolerance, unit, declared, Hints, () => "s")
            : page.Lesson.NumberCheck("c", "?", Formula, tolerance, unit, declared, Hints, "s");
    }

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
    [InlineData("25.1", CheckState.NotYet, "west taken as plus")]
    [InlineData("34.9", CheckState.NotYet, "zone left out")]
    [InlineData("23.7", CheckState.NotYet, "degrees left as degrees")]
    [InlineData("6.3", CheckState.NotYet, "west taken as plus and degrees left as degrees")]
    [InlineData("8.7", CheckState.NotYet, "zone left out and degrees left as degrees")]
    [InlineData("-34.9", CheckState.NotYet, "west taken as plus and zone left out")]
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
            Assert.Contains(path.Contains(" and ") ? $"Not yet: two slips at once, {path}." : $"Not yet: {path}.", page.Html("status"));
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
        Assert.Equal("west taken as plus", check.WrongPathName);
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
    [InlineData(25.5, "'a' gives 25.5 and 'west taken as plus' gives 25.12, which is within the tolerance of 0.5.")]
    [InlineData(double.NaN, "'a' gives NaN")]
    public void Slips_that_cannot_be_told_apart_are_refused_when_the_check_is_made(double value, string sentence)
    {
        var page = new Page();

        var error = Assert.Throws<ArgumentException>(() => Given(page, 94.88, 0.5, "min", false, ("west taken as plus", 25.12), ("a", value)));

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
            "hour-line", "?", way => Line(way.Made(SineForCosine) ? Math.Cos(f) : Math.Sin(f)), 1.0, "°", [new Slip(SineForCosine, "r")], Hints, "s"));
    }

    [Fact]
    public void Two_hints_are_not_enough()
    {
        var error = Assert.Throws<ArgumentException>(() => new Page().Lesson.NumberCheck("c", "?", _ => 1, 0.1, "", [], ["a", "b"], "s"));

        Assert.StartsWith("Check 'c' has 2 hints; give 3 hints, each one going further, and the worked solution.", error.Message);
    }

    [Theory]
    [InlineData("359.8", CheckState.Right)]
    [InlineData("0.3", CheckState.Right)]
    [InlineData("180", CheckState.NotYet)]
    public void Bearings_come_round(string text, CheckState state)
    {
        var page = new Page();
        var check = Given(page, 0, 0.5, "bearing", false, ("mirrored", 180));
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
        var check = Given(page, 0, 0.5, "clock", false);
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
            way => Step(way, page.Lesson.Here.Point.Longitude.Degrees, page.Lesson.Here.Name == "Vigo" ? 1 : 9.5),
            0.5,
            "min",
            [new Slip(WestTakenAsPlus, "East is plus.")],
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
    public void At_a_place_where_two_slips_agree_neither_is_named_alone()
    {
        var page = new Page();
        var check = Given(page, 10, 0.5, "min", true, ("a", 20), ("b", 20.2), ("c", 10.1), ("d", 40));
        page.Lesson.Show(check);

        Answer(page, "20.2");
        Assert.Equal("a, or b", check.WrongPathName);
        Assert.Contains("several slips lead to the same number: a, or b. reply a reply b", page.Html("status"));
        Assert.Equal("""["a/b"]""", page.Host.FrontEnd.Recorded("check:c")!["wrong"]!.ToJsonString());

        // What cannot be told from the truth is never named.
        Answer(page, "10.55");
        Assert.Equal(CheckState.Nearly, check.State);
        Answer(page, "10.2");
        Assert.Equal(CheckState.Right, check.State);
        Answer(page, "40");
        Assert.Equal("d", check.WrongPathName);
    }

    [Fact]
    public void A_pair_of_slips_is_named_only_where_no_other_way_leads_there()
    {
        var page = new Page();

        // a+b gives 50 and nothing else does; a+c gives what d gives.
        var check = Given(page, 10, 0.5, "min", false, ("a", 20), ("b", 30), ("c", 60), ("d", 80), ("e", 320));
        page.Lesson.Show(check);

        Assert.Equal(["a+b", "b+c", "a+d", "b+d", "c+d", "a+e", "b+e", "c+e", "d+e"], [.. check.Problem().Pairs.OrderBy(p => p.Value).Select(p => p.Id)]);
        Answer(page, "80");
        Assert.Equal("d", check.WrongPathName);
        Answer(page, "50");
        Assert.Equal("a and b", check.WrongPathName);
        Assert.Contains("Not yet: two slips at once, a and b. reply a reply b", page.Html("status"));
    }

    [Fact]
    public void A_slip_declared_twice_is_refused()
    {
        var error = Assert.Throws<ArgumentException>(() => new Page().Lesson.NumberCheck(
            "c", "?", way => way.Made(WestTakenAsPlus) ? 2 : 1, 0.1, "", [new Slip(WestTakenAsPlus, "r"), new Slip(WestTakenAsPlus, "s")], Hints, "s"));

        Assert.StartsWith("Check 'c' declares a slip twice; each one has one reply.", error.Message);
    }

    [Fact]
    public void Every_usual_slip_has_a_name_and_an_id_of_its_own()
    {
        var all = typeof(UsualSlips).GetProperties().Select(p => (SlipKind)p.GetValue(null)!).ToArray();

        Assert.Equal(all.Length, all.Select(k => k.Id).Distinct().Count());
        Assert.Equal(all.Length, all.Select(k => k.Name).Distinct().Count());
        Assert.All(all, kind => Assert.Matches("^W[0-9]+b?$", kind.Id));
    }

    [Fact]
    public void Tries_wrong_paths_and_times_are_recorded()
    {
        var page = new Page();
        page.Lesson.Show(Vigo(page));

        Answer(page, "25.1");
        page.Wait(NodaTime.Duration.FromMinutes(2));
        Answer(page, "6.28");
        Answer(page, "25.1");
        page.Wait(NodaTime.Duration.FromMinutes(3));
        Answer(page, "94.9");
        page.Wait(NodaTime.Duration.FromMinutes(3));
        Answer(page, "95");

        Assert.Equal(
            """{"answer":"95","state":"right","hints":0,"tries":5,"wrong":["W6","W6\u002BW15"],"first_at":"2026-06-21T12:00:00Z","right_at":"2026-06-21T12:05:00Z"}""",
            page.Host.FrontEnd.Recorded("check:vigo-step")!.ToJsonString());
        var later = new Page(record: page.Host.FrontEnd.Record);
        later.Lesson.Show(Vigo(later));
        later.Role("hint").Click();
        Assert.Equal(5, (int)later.Host.FrontEnd.Recorded("check:vigo-step")!["tries"]!);
    }

    [Fact]
    public void Enter_answers_with_the_text_that_the_page_sends_after_it()
    {
        var page = new Page();
        var check = Vigo(page);
        page.Lesson.Show(check);
        var field = page.Last("TextModel");

        // The standard's order, see EnterKey: "submit" first, the text after it.
        field.CustomFromPage(new JsonObject { ["event"] = "submit" });
        Assert.Equal(CheckState.NotStarted, check.State);
        field.ChangeFromPage(JsonValue.Create("25.1"));
        Assert.Equal(CheckState.NotYet, check.State);

        field.ChangeFromPage(JsonValue.Create("94.9"));
        Assert.Equal(CheckState.NotYet, check.State);
    }

    [Fact]
    public async Task Enter_answers_also_when_the_text_had_come_before()
    {
        var page = new Page();
        var check = Vigo(page);
        page.Lesson.Show(check);
        var field = page.Last("TextModel");
        field.ChangeFromPage(JsonValue.Create("94.9"));

        field.CustomFromPage(new JsonObject { ["event"] = "submit" });

        for (var i = 0; i < 400 && check.State == CheckState.NotStarted; i++)
        {
            await Task.Delay(25);
        }

        Assert.Equal(CheckState.Right, check.State);
    }
}
