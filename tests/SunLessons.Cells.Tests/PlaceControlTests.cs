using System.Text.Json.Nodes;

namespace SunLessons.Cells.Tests;

public class PlaceControlTests
{
    private static Page WithText(string? place = null, bool draws = false)
    {
        var page = new Page(draws, place);
        page.Lesson.Show(page.Lesson.LiveText("where", () => page.Lesson.Here.Name));
        return page;
    }

    [Fact]
    public void Where_no_page_tells_the_place_its_control_comes_with_the_first_thing_that_follows_it_and_only_once()
    {
        var page = WithText();
        page.Lesson.Show(page.Lesson.LiveText("other", () => "x"));

        Assert.Single(page.Host.Channels, c => (string?)c.State["_sunlessons_role"] == "place");
    }

    [Fact]
    public void When_that_cell_is_run_again_the_place_control_is_there_again()
    {
        var page = WithText();
        page.Lesson.Show(page.Lesson.LiveText("where", () => page.Lesson.Here.Name));

        var groups = page.Host.Channels.Where(c => (string?)c.State["_sunlessons_role"] == "group").ToArray();
        Assert.Equal(2, groups.Length);
        Assert.Equal((string?)groups[0].State["children"]![0], (string?)groups[1].State["children"]![0]);
    }

    [Fact]
    public void Where_the_page_tells_the_place_there_is_no_control() =>
        Assert.DoesNotContain(WithText(Page.Vigo, draws: true).Host.Channels, c => (string?)c.State["_sunlessons_role"] == "place");

    [Fact]
    public async Task Typed_numbers_and_zone_move_the_learner_and_are_recorded()
    {
        var page = WithText();
        var fields = page.Host.Channels.Where(c => c.Model == "BoundedFloatTextModel").ToArray();

        fields[0].ChangeFromPage(JsonValue.Create(-1.29));
        fields[1].ChangeFromPage(JsonValue.Create(36.82));
        page.Last("TextModel").ChangeFromPage(JsonValue.Create("Africa/Nairobi"));
        await page.Lesson.Settled;

        Assert.Equal("Nairobi", page.Lesson.Here.Name);
        Assert.Contains("Nairobi", page.Html("text"));
        Assert.Equal(4, (int)page.Last("DropdownModel").State["index"]!);
        Assert.Equal("place", page.Host.Recorded[^1].Key);

        var later = new Page(record: page.Host.FrontEnd.Record);
        Assert.Equal("Nairobi", later.Lesson.Here.Name);
    }

    [Fact]
    public void An_unknown_zone_leaves_the_place_and_is_answered_in_one_sentence()
    {
        var page = WithText();

        page.Last("TextModel").ChangeFromPage(JsonValue.Create("Europe/Madird"));

        Assert.Equal("Vigo", page.Lesson.Here.Name);
        Assert.Contains("Europe/Madird", page.Html("status"));
        Assert.Contains("Europe/Madrid", page.Html("status"));
    }

    [Fact]
    public async Task A_chosen_town_fills_the_numbers()
    {
        var page = WithText();

        page.Last("DropdownModel").ChangeFromPage(new JsonObject { ["index"] = 6 });
        await page.Lesson.Settled;

        Assert.Equal("Dunedin", page.Lesson.Here.Name);
        Assert.Equal(-45.87, (double)page.Host.Channels.First(c => c.Model == "BoundedFloatTextModel").State["value"]!);
        Assert.Contains("Dunedin", page.Html("text"));
    }
}
