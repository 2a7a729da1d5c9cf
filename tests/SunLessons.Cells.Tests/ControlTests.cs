using System.Text.Json.Nodes;

namespace SunLessons.Cells.Tests;

public class ControlTests
{
    [Fact]
    public void A_number_is_one_standard_slider_with_what_a_page_needs_for_a_number_field()
    {
        var page = new Page();
        page.Lesson.Show(page.Lesson.Number("turn", "Turn of the dial", -10, 10, 0.5, 2, "°"));

        var state = page.Last("FloatSliderModel").State;
        Assert.Equal(2.0, (double)state["value"]!);
        Assert.Equal(-10.0, (double)state["min"]!);
        Assert.Equal(10.0, (double)state["max"]!);
        Assert.Equal(0.5, (double)state["step"]!);
        Assert.Equal("Turn of the dial (°)", (string?)state["description"]);
        Assert.Equal("Turn of the dial", (string?)state["_sunlessons_label"]);
        Assert.Equal("°", (string?)state["_sunlessons_unit"]);
        Assert.Equal("2.0°", (string?)state["_sunlessons_text"]);
        Assert.Equal(".1f", (string?)state["readout_format"]);
    }

    [Fact]
    public void Each_move_is_recorded_and_said_in_words()
    {
        var page = new Page(drawsFigures: true, place: Page.Vigo);
        var day = page.Lesson.Day("day");
        page.Lesson.Show(day);

        page.Last("FloatSliderModel").ChangeFromPage(JsonValue.Create(1));

        Assert.Equal(1, day.Value);
        Assert.Equal("1 Jan", day.Text);
        Assert.Equal("1 Jan", (string?)page.Last("FloatSliderModel").State["_sunlessons_text"]);
        Assert.Equal("control:day", page.Host.Recorded[^1].Key);
        Assert.Equal("1", page.Host.Recorded[^1].Value!.ToJsonString());
    }

    [Fact]
    public void Where_only_numbers_are_shown_the_words_stand_in_the_label()
    {
        var page = new Page();
        page.Lesson.Show(page.Lesson.Day("day"));
        Assert.Equal("Date: 21 Jun", (string?)page.Last("FloatSliderModel").State["description"]);

        page.Last("FloatSliderModel").ChangeFromPage(JsonValue.Create(355.0));

        Assert.Equal("Date: 21 Dec", (string?)page.Last("FloatSliderModel").State["description"]);
    }

    [Theory]
    [InlineData("99.0", 10)]
    [InlineData("-99", -10)]
    [InlineData("\"far\"", 2)]
    [InlineData("null", 2)]
    public void A_value_out_of_range_is_brought_back_and_the_page_is_told(string sent, double taken)
    {
        var page = new Page();
        var turn = page.Lesson.Number("turn", "Turn", -10, 10, 0.5, 2);
        page.Lesson.Show(turn);

        page.Last("FloatSliderModel").ChangeFromPage(new JsonObject { ["value"] = JsonNode.Parse(sent) });

        Assert.Equal(taken, turn.Value);
        Assert.Equal(taken, (double)page.Last("FloatSliderModel").State["value"]!);
    }

    [Fact]
    public void Choice_and_switch_follow_the_page_and_come_back()
    {
        var page = new Page();
        var season = page.Lesson.Choice("season", "Season", ["June", "March", "December"]);
        var law = page.Lesson.Switch("law", "Daylight time");
        page.Lesson.Show(season, law);

        page.Last("DropdownModel").ChangeFromPage(new JsonObject { ["index"] = 2 });
        page.Last("CheckboxModel").ChangeFromPage(JsonValue.Create(true));

        Assert.Equal("December", season.Value);
        Assert.True(law);
        var again = page.Lesson.Choice("season", "Season", ["June", "March", "December"]);
        Assert.Equal("December", again.Value);
        Assert.True(page.Lesson.Switch("law", "Daylight time").IsOn);
        Assert.Equal("""["June","March","December"]""", page.Last("DropdownModel").State["_options_labels"]!.ToJsonString());
    }

    [Fact]
    public void The_town_picker_begins_with_the_learners_place_and_follows_it()
    {
        var page = new Page(drawsFigures: true, place: """{"name":"my garden","latitude_degrees":10,"longitude_degrees":20,"zone":"Africa/Ndjamena"}""");
        var town = page.Lesson.Town("town");
        page.Lesson.Show(town);

        Assert.Equal("My place: my garden", (string?)page.Last("DropdownModel").State["_options_labels"]![0]);
        Assert.Equal(9, ((JsonArray)page.Last("DropdownModel").State["_options_labels"]!).Count);

        page.Host.FrontEnd.Receive(new JsonObject { ["place"] = JsonNode.Parse(Page.Darwin) });

        Assert.Equal("Darwin", town.Place.Name);
        Assert.Equal("My place: Darwin", (string?)page.Last("DropdownModel").State["_options_labels"]![0]);

        page.Last("DropdownModel").ChangeFromPage(new JsonObject { ["index"] = 3 });
        Assert.Equal("Vigo", town.Place.Name);
        Assert.Equal("Vigo", (string?)page.Host.Recorded[^1].Value);
    }

    [Fact]
    public void A_town_that_is_none_of_the_eight_is_refused_in_one_sentence()
    {
        var error = Assert.Throws<ArgumentException>(() => new Page().Lesson.Town("town", start: "Atlantis"));

        Assert.StartsWith("'Atlantis' is none of the eight towns. Write one of Tromsø, St. John's, Vigo,", error.Message);
    }

    [Theory]
    [InlineData(10, -10, 1, 0)]
    [InlineData(0, 10, 0, 5)]
    [InlineData(0, 10, 1, 11)]
    public void Ends_step_and_start_must_fit(double from, double to, double step, double start)
    {
        var error = Assert.Throws<ArgumentException>(() => new Page().Lesson.Number("n", "N", from, to, step, start));

        Assert.Contains("Give the smaller end first, a step above 0 and a start between the ends.", error.Message);
    }

    [Theory]
    [InlineData("")]
    [InlineData("two words")]
    [InlineData("a:b")]
    public void A_name_that_a_record_cannot_keep_is_refused(string key)
    {
        var error = Assert.Throws<ArgumentException>(() => new Page().Lesson.Switch(key, "S"));

        Assert.Contains("Give a short name without spaces and colons", error.Message);
    }
}
