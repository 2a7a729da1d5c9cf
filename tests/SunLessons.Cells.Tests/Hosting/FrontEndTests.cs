using System.Text.Json.Nodes;
using SunLessons.Cells.Hosting;

namespace SunLessons.Cells.Tests.Hosting;

public class FrontEndTests
{
    private static JsonObject Parse(string json) => (JsonObject)JsonNode.Parse(json)!;

    [Fact]
    public void A_front_end_that_says_nothing_draws_nothing_and_has_no_place_and_no_record()
    {
        var frontEnd = new FrontEnd();

        Assert.False(frontEnd.DrawsFigures);
        Assert.Null(frontEnd.Place);
        Assert.Empty(frontEnd.Record);
    }

    [Fact]
    public void The_opening_words_are_taken()
    {
        var frontEnd = new FrontEnd();
        var moves = 0;
        frontEnd.PlaceChanged += () => moves++;

        frontEnd.Open(Parse("""{"draws_figures":true,"place":{"name":"Vigo","latitude_degrees":42.24,"longitude_degrees":-8.72,"zone":"Europe/Madrid"},"record":{"a":1}}"""));

        Assert.True(frontEnd.DrawsFigures);
        Assert.Equal(PagePlace.FromDegrees("Vigo", 42.24, -8.72, "Europe/Madrid"), frontEnd.Place);
        Assert.Equal("1", frontEnd.Recorded("a")!.ToJsonString());
        Assert.Equal(1, moves);
    }

    [Fact]
    public void A_later_place_is_told_once_and_the_same_place_not_again()
    {
        var frontEnd = new FrontEnd();
        var moves = 0;
        frontEnd.PlaceChanged += () => moves++;
        var message = """{"place":{"name":"Darwin","latitude_degrees":-12.46,"longitude_degrees":130.84,"zone":"Australia/Darwin"}}""";

        frontEnd.Receive(Parse(message));
        frontEnd.Receive(Parse(message));
        frontEnd.Receive(Parse("""{"something":"else"}"""));

        Assert.Equal("Darwin", frontEnd.Place!.Name);
        Assert.Equal(1, moves);
    }

    [Fact]
    public void A_place_beyond_the_pole_leaves_the_old_one()
    {
        var frontEnd = new FrontEnd();
        frontEnd.MoveTo(PagePlace.FromDegrees("Vigo", 42.24, -8.72, "Europe/Madrid"));

        var error = Assert.Throws<ArgumentOutOfRangeException>(() =>
            frontEnd.Receive(Parse("""{"place":{"name":"?","latitude_degrees":97.3,"longitude_degrees":0,"zone":"Etc/UTC"}}""")));

        Assert.Contains("outside -90 to +90 degrees", error.Message);
        Assert.Equal("Vigo", frontEnd.Place!.Name);
    }

    [Fact]
    public void A_place_comes_back_from_its_json()
    {
        var place = PagePlace.FromDegrees("St. John's", 47.56, -52.71, "America/St_Johns");

        var json = place.ToJson().ToJsonString();

        Assert.Equal(place, PagePlace.FromJson(JsonNode.Parse(json)));
        Assert.Contains("47.56,", json);
    }

    [Fact]
    public void The_host_in_memory_plays_the_page()
    {
        var host = new InMemoryHost();
        var channel = (InMemoryChannel)host.Open("FloatSliderModel", new JsonObject { ["value"] = 1.0 });
        JsonObject? got = null;
        channel.Changed += change => got = change;

        channel.ChangeFromPage(JsonValue.Create(2.5));
        channel.Update(new JsonObject { ["disabled"] = true });
        host.Record("control:x", JsonValue.Create(2.5));

        Assert.Equal(2.5, got!["value"]!.GetValue<double>());
        Assert.Equal("""{"value":2.5,"disabled":true}""", channel.State.ToJsonString());
        Assert.Equal("2.5", host.FrontEnd.Recorded("control:x")!.ToJsonString());
    }
}
