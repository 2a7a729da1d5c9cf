using System.Text.Json.Nodes;
using SunLessons.Cells.Hosting;

namespace SunLessons.Cells.Tests;

public class SessionTests
{
    private static JsonObject Parse(string json) => (JsonObject)JsonNode.Parse(json)!;

    [Fact]
    public void A_session_begun_before_any_page_speaks_takes_place_and_record_when_one_does()
    {
        var host = new InMemoryHost();
        var lesson = new Lesson(host, new Page());
        Assert.Equal("Vigo", lesson.Here.Name);

        host.FrontEnd.Open(Parse($$$"""{"draws_figures":true,"place":{{{Page.Darwin}}},"record":{"control:turn":4}}"""));

        Assert.Equal("Darwin", lesson.Here.Name);
        Assert.Equal("Australia/Darwin", lesson.Here.ZoneId);
        Assert.Equal(4, lesson.Number("turn", "Turn", 0, 9, 1, 0).Value);
    }

    [Fact]
    public void A_page_that_keeps_records_but_tells_no_place_brings_back_the_one_chosen_last_time()
    {
        var host = new InMemoryHost();
        var lesson = new Lesson(host, new Page());

        host.FrontEnd.Open(Parse("{\"record\":{\"place\":" + Page.Darwin + "}}"));

        Assert.Equal("Darwin", lesson.Here.Name);
    }

    [Fact]
    public void A_record_of_a_place_beyond_the_pole_is_passed_over()
    {
        var host = new InMemoryHost();
        host.FrontEnd.Open(Parse("""{"record":{"place":{"name":"?","latitude_degrees":97,"longitude_degrees":0,"zone":"UTC"}}}"""));

        Assert.Equal("Vigo", new Lesson(host, new Page()).Here.Name);
    }

    [Fact]
    public async Task Two_sessions_do_not_hear_each_other()
    {
        var one = new Page(place: Page.Vigo);
        var two = new Page(place: Page.Darwin);
        var first = one.Lesson.Number("turn", "Turn", 0, 9, 1, 0);
        var second = two.Lesson.Number("turn", "Turn", 0, 9, 1, 0);
        one.Lesson.Show(first);
        two.Lesson.Show(second);

        one.Last("FloatSliderModel").ChangeFromPage(JsonValue.Create(5.0));
        await one.Lesson.Settled;

        Assert.Equal(5, first.Value);
        Assert.Equal(0, second.Value);
        Assert.Empty(two.Host.Recorded);
        Assert.Equal("Darwin", two.Lesson.Here.Name);
    }
}
