using System.Text.Json.Nodes;
using NodaTime;

namespace SunLessons.Cells.Tests;

public class PredictionTests
{
    private const string Question = "Where does the noon shadow point?";

    [Fact]
    public void A_control_that_waits_is_born_disabled_and_unlocks_when_the_prediction_is_recorded()
    {
        var page = new Page();
        var guess = page.Lesson.Predict("noon", Question, "north", "south");
        var turn = page.Lesson.Number("turn", "Turn", -10, 10, 0.5, 2, "°", after: guess);
        page.Lesson.Show(guess, turn);
        var slider = page.Last("FloatSliderModel");

        Assert.True((bool)slider.State["disabled"]!);
        Assert.Empty(slider.Updates);

        page.Last("RadioButtonsModel").ChangeFromPage(new JsonObject { ["index"] = 1 });
        Assert.True((bool)slider.State["disabled"]!);
        page.Press("record-prediction");

        Assert.False((bool)slider.State["disabled"]!);
        Assert.Equal("south", guess.Answer);
        Assert.True((bool)page.Role("record-prediction").State["disabled"]!);
        Assert.True((bool)page.Last("RadioButtonsModel").State["disabled"]!);
    }

    [Fact]
    public void A_control_that_waits_for_two_predictions_wakes_after_both_also_when_a_cell_is_run_again()
    {
        var page = new Page();
        var first = page.Lesson.Predict("first", Question, "north", "south");
        var second = page.Lesson.Predict("second", Question, "north", "south");
        var turn = page.Lesson.Number("turn", "Turn", -10, 10, 0.5, 2, "°", after: first);
        second.Unlocks(turn);
        page.Lesson.Show(turn);

        first.RecordExample();
        Assert.Equal("north", first.Answer);
        Assert.True(turn.IsLocked);
        Assert.True((bool)page.Last("FloatSliderModel").State["disabled"]!);

        var again = page.Lesson.Predict("second", Question, "north", "south");
        Assert.True(turn.IsLocked);
        again.RecordExample();
        Assert.False(turn.IsLocked);
        Assert.False((bool)page.Last("FloatSliderModel").State["disabled"]!);
    }

    [Fact]
    public void Every_kind_of_prediction_has_an_example_that_can_be_recorded()
    {
        var page = new Page();
        var sketch = page.Lesson.PredictSketch("sketch", "?", "Date", ["a", "b", "c", "d", "e"], "Height", "°", -10, -2);
        var number = page.Lesson.PredictNumber("number", "?", "clock");

        sketch.RecordExample();
        number.RecordExample();

        Assert.Equal([-6, -6, -6, -6, -6], sketch.Numbers);
        Assert.Equal("13:18", number.Answer);
    }

    [Fact]
    public void A_locked_control_that_a_page_moves_all_the_same_goes_back()
    {
        var page = new Page();
        var turn = page.Lesson.Number("turn", "Turn", -10, 10, 0.5, 2, "°", after: page.Lesson.Predict("noon", Question, "north", "south"));
        page.Lesson.Show(turn);

        page.Last("FloatSliderModel").ChangeFromPage(JsonValue.Create(7.0));

        Assert.Equal(2.0, turn.Value);
        Assert.Equal(2.0, (double)page.Last("FloatSliderModel").State["value"]!);
        Assert.DoesNotContain(page.Host.Recorded, r => r.Key == "control:turn");
    }

    [Fact]
    public void Without_an_answer_nothing_is_recorded_and_one_sentence_says_what_to_do()
    {
        var page = new Page();
        var guess = page.Lesson.Predict("noon", Question, "north", "south");
        page.Lesson.Show(guess);

        page.Press("record-prediction");

        Assert.False(guess.IsRecorded);
        Assert.Empty(page.Host.Recorded);
        Assert.Contains("Choose one of the answers first", page.Html("status"));
    }

    [Fact]
    public void It_is_recorded_with_its_time_and_cannot_be_changed_afterwards()
    {
        var page = new Page();
        var guess = page.Lesson.Predict("noon", Question, "north", "south");
        page.Lesson.Show(guess);
        page.Last("RadioButtonsModel").ChangeFromPage(new JsonObject { ["index"] = 0 });
        page.Press("record-prediction");
        page.Wait(Duration.FromHours(1));

        page.Last("RadioButtonsModel").ChangeFromPage(new JsonObject { ["index"] = 1 });
        page.Press("record-prediction");

        Assert.Equal("north", guess.Answer);
        Assert.Equal(Instant.FromUtc(2026, 6, 21, 12, 0), guess.RecordedAt);
        var (key, value) = Assert.Single(page.Host.Recorded);
        Assert.Equal("prediction:noon", key);
        Assert.Equal("""{"answer":"north","at":"2026-06-21T12:00:00Z"}""", value!.ToJsonString());
        Assert.Contains("Recorded 21 June 2026, 12:00 UT.", page.Html("status"));
    }

    [Fact]
    public void A_number_is_read_as_people_write_it_and_junk_is_answered_kindly()
    {
        var page = new Page();
        var guess = page.Lesson.PredictNumber("step", "How many minutes?", "min");
        page.Lesson.Show(guess);

        page.Last("TextModel").ChangeFromPage(JsonValue.Create("about an hour"));
        page.Press("record-prediction");
        Assert.False(guess.IsRecorded);
        Assert.Contains("cannot be read as minutes of time", page.Html("status"));

        page.Last("TextModel").ChangeFromPage(JsonValue.Create("1:34"));
        page.Press("record-prediction");
        Assert.Equal(94, guess.Number);
    }

    [Fact]
    public async Task It_stands_beside_the_outcome_only_after_it_was_recorded()
    {
        var page = new Page();
        var asked = 0;
        var guess = page.Lesson.Predict("noon", Question, "north", "south");
        var beside = guess.ShowBeside(() =>
        {
            asked++;
            return "north, at <b>all</b> times";
        });
        page.Lesson.Show(guess, beside);
        Assert.Equal(0, asked);
        Assert.Contains("Record your prediction first", page.Html("beside"));

        page.Last("RadioButtonsModel").ChangeFromPage(new JsonObject { ["index"] = 1 });
        page.Press("record-prediction");
        await page.Lesson.Settled;

        Assert.Equal(1, asked);
        Assert.Contains("<td>south</td><td>north, at &lt;b&gt;all&lt;/b&gt; times</td>", page.Html("beside"));
        Assert.Contains("<th scope=\"col\">You predicted</th>", page.Html("beside"));
    }

    [Fact]
    public void After_a_restart_prediction_and_position_come_back_and_the_control_is_free()
    {
        var record = (JsonObject)JsonNode.Parse("""{"prediction:noon":{"answer":"south","at":"2026-06-21T12:00:00Z"},"control:turn":-3.5}""")!;
        var page = new Page(record: record);

        var guess = page.Lesson.Predict("noon", Question, "north", "south");
        var turn = page.Lesson.Number("turn", "Turn", -10, 10, 0.5, 2, "°", after: guess);
        page.Lesson.Show(guess, turn);

        Assert.Equal("south", guess.Answer);
        Assert.Equal(-3.5, turn.Value);
        Assert.False((bool)page.Last("FloatSliderModel").State["disabled"]!);
        Assert.Equal(1, (int)page.Last("RadioButtonsModel").State["index"]!);
    }

    [Theory]
    [InlineData("""{"prediction:noon":{"answer":"west","at":"2026-06-21T12:00:00Z"}}""")]
    [InlineData("""{"prediction:noon":{"answer":"north","at":"yesterday"}}""")]
    [InlineData("""{"prediction:noon":"north"}""")]
    [InlineData("""{"control:turn":99}""")]
    [InlineData("""{"control:turn":"far"}""")]
    public void A_record_that_no_longer_fits_is_passed_over(string record)
    {
        var page = new Page(record: (JsonObject)JsonNode.Parse(record)!);

        Assert.False(page.Lesson.Predict("noon", Question, "north", "south").IsRecorded);
        Assert.Equal(2, page.Lesson.Number("turn", "Turn", -10, 10, 0.5, 2).Value);
    }

    [Fact]
    public void When_only_the_cell_of_the_prediction_is_run_again_the_old_control_unlocks_with_the_new_prediction()
    {
        var page = new Page();
        var first = page.Lesson.Predict("noon", Question, "north", "south");
        var turn = page.Lesson.Number("turn", "Turn", -10, 10, 0.5, 2, after: first);
        page.Lesson.Show(first, turn);

        var second = page.Lesson.Predict("noon", Question, "north", "south");
        page.Lesson.Show(second);
        page.Last("RadioButtonsModel").ChangeFromPage(new JsonObject { ["index"] = 1 });
        page.Press("record-prediction");

        Assert.False(turn.IsLocked);
        Assert.Equal("south", first.Answer);
    }

    [Fact]
    public void One_answer_is_no_choice()
    {
        var error = Assert.Throws<ArgumentException>(() => new Page().Lesson.Predict("noon", Question, "north"));

        Assert.StartsWith("Prediction 'noon' offers 1 answers, or one of them twice. Give at least 2 different answers.", error.Message);
    }

    [Fact]
    public void The_page_finds_the_question_as_label_of_the_field()
    {
        var page = new Page();
        page.Lesson.Show(page.Lesson.Predict("noon", Question, "north", "south"));

        Assert.Equal(Question, (string?)page.Last("RadioButtonsModel").State["_sunlessons_label"]);
        Assert.Equal("prediction", (string?)page.Last("VBoxModel").State["_sunlessons_role"]);
    }

    private static Predictions.Prediction Sketch(Page page) => page.Lesson.PredictSketch(
        "year", "Noon by the clock", "Date", ["January", "April", "July", "September", "November"], "Clock", "clock", 11, 13);

    private static void Type(Page page, params string[] times)
    {
        var fields = page.Host.Channels.Where(c => c.Model == "TextModel").ToArray();
        for (var i = 0; i < times.Length; i++)
        {
            fields[i].ChangeFromPage(JsonValue.Create(times[i]));
        }
    }

    [Fact]
    public async Task A_sketch_is_five_numbers_and_its_figure_follows_them()
    {
        var page = new Page();
        var guess = Sketch(page);
        page.Lesson.Show(guess);
        Type(page, "12:05", "12:00");
        await page.Lesson.Settled;
        var figure = page.Role("figure");
        Assert.Contains("My sketch: January 12:05, April 12:00, July none, September none, November none.", (string)figure.State["value"]!);

        page.Press("record-prediction");
        Assert.False(guess.IsRecorded);
        Assert.Contains("July: Nothing is written yet.", page.Html("status"));

        Type(page, "12:05", "12:00", "12h 10m", "9:00", "11:44");
        page.Press("record-prediction");
        Assert.Contains("September: 09:00 is outside 11:00 to 13:00; write a number in that range.", page.Html("status"));

        Type(page, "12:05", "12:00", "12h 10m", "11:59", "11:44");
        page.Press("record-prediction");
        Assert.True(guess.IsRecorded);
        Assert.Equal("12:05; 12:00; 12h 10m; 11:59; 11:44", guess.Answer);
        Assert.Equal([12 + 5 / 60.0, 12, 12 + 10 / 60.0, 11 + 59 / 60.0, 11 + 44 / 60.0], guess.Numbers);
        Assert.Null(guess.Number);
        Assert.All(page.Host.Channels.Where(c => c.Model == "TextModel"), field => Assert.True((bool)field.State["disabled"]!));
    }

    [Fact]
    public async Task A_sketch_stands_beside_the_outcome_in_table_and_figure_also_after_a_restart()
    {
        var page = new Page();
        var guess = Sketch(page);
        page.Lesson.Show(guess, guess.ShowBeside(() => [12.05, 12, 12.1, 12, 11.75]));
        Assert.DoesNotContain("11:45", page.Html("beside"));
        Type(page, "12:00", "12:00", "12:00", "12:00", "12:00");
        page.Press("record-prediction");
        await page.Lesson.Settled;
        Assert.Contains("<th scope=\"row\">November</th><td>12:00</td><td>11:45</td>", page.Html("beside"));
        Assert.Contains("It came out: January 12:03, April 12:00, July 12:06, September 12:00, November 11:45.", (string)page.Role("figure").State["value"]!);

        var later = new Page(record: page.Host.FrontEnd.Record);
        var again = Sketch(later);
        later.Lesson.Show(again, again.ShowBeside(() => [12.05, 12, 12.1, 12, 11.75]));
        await later.Lesson.Settled;
        Assert.True(again.IsRecorded);
        Assert.Contains("<td>12:00</td><td>11:45</td>", later.Html("beside"));
        Assert.Equal("12:00", (string?)later.Host.Channels.First(c => c.Model == "TextModel").State["value"]);
    }

    [Fact]
    public void A_sketch_has_five_points_and_only_a_sketch_has_an_outcome_of_numbers()
    {
        var page = new Page();

        var error = Assert.Throws<ArgumentException>(() => page.Lesson.PredictSketch("s", "?", "Date", ["a", "b"], "Clock", "clock", 11, 13));
        Assert.StartsWith("Sketch 's' has 2 points on a grid from 11 to 13. Give 5 points", error.Message);

        var choice = page.Lesson.Predict("noon", Question, "north", "south");
        Assert.StartsWith("Prediction 'noon' is no sketch", Assert.Throws<InvalidOperationException>(() => choice.ShowBeside(() => new double[5])).Message);
    }
}
