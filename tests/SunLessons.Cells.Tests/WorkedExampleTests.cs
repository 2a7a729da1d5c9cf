using System.Text.Json.Nodes;
using SunLessons.Cells.Checks;
using SunLessons.Cells.Hosting;
using SunLessons.Cells.Worked;
using static SunLessons.Cells.UsualSlips;

namespace SunLessons.Cells.Tests;

public class WorkedExampleTests
{
    // 4 minutes of time for each degree of longitude (360 degrees in 24 hours).
    private static WorkedLine[] Lines(double longitude, double zone) =>
    [
        Say.Line("the fair meridian", _ => 15 * zone, 0.5, "longitude", "15 degrees for each hour."),
        Say.Line("degrees west of it", way => 15 * zone - (way.Made(WestTakenAsPlus) ? -longitude : longitude), 0.5, "°", "West is minus.", [new Slip(WestTakenAsPlus, "It lies west.")], idea: true),
        Say.Line("the step", _ => 4 * (15 * zone - longitude), 0.5, "min", "4 minutes for each degree.", signed: true),
    ];

    private static WorkedExample Vigo(Page page, Fade fade)
    {
        var worked = page.Lesson.Worked("vigo", "Vigo", fade, Lines(-8.72, 1));
        page.Lesson.Show(worked);
        return worked;
    }

    private static InMemoryFields Fields(Page page) => new(page);

    [Fact]
    public void With_no_step_faded_each_one_is_written_out_with_its_reason()
    {
        var page = new Page();
        var worked = Vigo(page, Fade.NoStep);

        Assert.DoesNotContain(page.Host.Channels, c => c.Model is "TextModel" or "ButtonModel");
        Assert.Equal(
            [
                "<p class=\"sunlessons-step\"><strong>1. the fair meridian:</strong> 15.0&#176; E. 15 degrees for each hour.</p>",
                "<p class=\"sunlessons-step\"><strong>2. degrees west of it:</strong> 23.7&#176;. West is minus.</p>",
                "<p class=\"sunlessons-step\"><strong>3. the step:</strong> +94.9 min. 4 minutes for each degree.</p>",
            ],
            page.Host.Channels.Where(c => (string?)c.State["_sunlessons_role"] == "step").Select(c => (string)c.State["value"]!));
        Assert.True(worked.IsDone);
    }

    [Theory]
    [InlineData(Fade.LastSteps, 1, 2)]
    [InlineData(Fade.EveryStep, 0, 3)]
    public void The_step_that_carries_the_idea_is_the_first_to_fade(Fade fade, int firstBlank, int fields)
    {
        var page = new Page();
        var worked = Vigo(page, fade);

        Assert.Equal(firstBlank, worked.FirstBlank);
        Assert.Equal(fields, Fields(page).All.Count);
        Assert.False(worked.IsDone);
        Assert.DoesNotContain("94.9", worked.PlainText);
    }

    [Fact]
    public void A_blank_step_is_answered_like_a_check_and_tells_its_reason_when_right()
    {
        var page = new Page();
        var worked = Vigo(page, Fade.LastSteps);
        var fields = Fields(page);
        page.Press("check-steps");
        Assert.StartsWith("Nothing is written yet.", worked.ReplyAt(1));
        Assert.Equal("", worked.ReplyAt(2));

        fields.Type(0, "6,28");
        fields.Type(1, "junk");
        page.Press("check-steps");
        Assert.Equal("Not yet: west taken as plus. It lies west.", worked.ReplyAt(1));
        Assert.StartsWith("'junk' cannot be read as minutes of time.", worked.ReplyAt(2));

        fields.Type(0, "23.72");
        fields.Type(1, "94,9");
        page.Press("check-steps");
        Assert.Equal("Right: 23.7°. West is minus.", worked.ReplyAt(1));
        Assert.True(worked.IsDone);
    }

    [Fact]
    public void Enter_answers_one_step_and_leaves_the_others_alone()
    {
        var page = new Page();
        var worked = Vigo(page, Fade.EveryStep);
        var field = Fields(page).All[1];

        field.CustomFromPage(new JsonObject { ["event"] = "submit" });
        field.ChangeFromPage(JsonValue.Create("99"));

        Assert.Equal("Not yet: look at this step in the version above, and put the other numbers in.", worked.ReplyAt(1));
        Assert.Equal("", worked.ReplyAt(0));
    }

    [Fact]
    public void Steps_can_be_shown_one_by_one_and_all_comes_back_after_a_restart()
    {
        var page = new Page();
        Vigo(page, Fade.EveryStep);
        Fields(page).Type(0, "15 E");
        page.Press("check-steps");
        page.Press("show-step");

        var later = new Page(record: page.Host.FrontEnd.Record);
        var worked = Vigo(later, Fade.EveryStep);
        Assert.Equal("Right: 15.0° E. 15 degrees for each hour.", worked.ReplyAt(0));
        Assert.Equal("23.7°. West is minus.", worked.ReplyAt(1));
        Assert.Equal("", worked.ReplyAt(2));
        Assert.False(worked.IsDone);
        later.Press("show-step");
        Assert.True(worked.IsDone);
    }

    [Fact]
    public void It_follows_the_place_and_judges_anew()
    {
        var page = new Page(drawsFigures: true, place: Page.Vigo);
        var worked = page.Lesson.WorkedHere(
            "here",
            () => $"Now {page.Lesson.Here.Name}",
            Fade.LastSteps,
            () => Lines(page.Lesson.Here.Point.Longitude.Degrees, page.Lesson.Here.Name == "Vigo" ? 1 : 9.5));
        page.Lesson.Show(worked);
        Fields(page).Type(1, "94.9");
        page.Press("check-steps");
        Assert.StartsWith("Right", worked.ReplyAt(2));

        page.Host.FrontEnd.Receive(new JsonObject { ["place"] = JsonNode.Parse(Page.Darwin) });

        Assert.Contains("Now Darwin", page.Html("question"));
        Assert.Contains("142.5&#176; E", page.Html("step"));
        Assert.StartsWith("Not yet", worked.ReplyAt(2));
    }

    [Fact]
    public void It_needs_two_steps_and_exactly_one_that_carries_the_idea()
    {
        var lines = Lines(-8.72, 1);

        var error = Assert.Throws<ArgumentException>(() => new Page().Lesson.Worked("w", "t", Fade.NoStep, lines[0], lines[2]));

        Assert.StartsWith("Worked example 'w' has 2 steps and 0 of them that carry the idea.", error.Message);
        Assert.Throws<ArgumentException>(() => new Page().Lesson.Worked("w", "t", Fade.NoStep, lines[1]));
    }

    /// <summary>The fields of the blank steps, in order.</summary>
    private sealed class InMemoryFields(Page page)
    {
        public IReadOnlyList<InMemoryChannel> All => [.. page.Host.Channels.Where(c => c.Model == "TextModel")];

        public void Type(int blank, string text) => All[blank].ChangeFromPage(JsonValue.Create(text));
    }
}
