using System.Text.Json.Nodes;
using SunLessons.Cells.Checks;
using SunLessons.Cells.Worked;

namespace SunLessons.Cells.Tests;

/// <summary>What questions, predictions and worked examples say to somebody who writes them down elsewhere, such as on a teacher's sheet.</summary>
public class AnswersInWordsTests
{
    private static readonly string[] Hints = ["a", "b", "c"];
    private static readonly SlipKind Lost = Say.OwnSlip("lost", "sign lost");
    private static readonly SlipKind Half = Say.OwnSlip("half", "half of it");

    [Theory]
    [InlineData("clock", 12.5055, 0.5, "12:30", "0.5 min")]
    [InlineData("min", 94.88, 0.5, "94.9 min", "0.5 min")]
    [InlineData("s", 29.16, 2, "29 s", "2 s")]
    [InlineData("bearing", 6.33, 0.3, "6.3°", "0.3°")]
    [InlineData("longitude", 142.5, 0.5, "142.5° E", "0.5°")]
    [InlineData("", 0.0167, 0.0005, "0.0167", "0.0005")]
    public void An_answer_and_its_tolerance_are_said_with_the_unit(string unit, double answer, double tolerance, string said, string within)
    {
        var check = new Page().Lesson.NumberCheck("c", "?", way => way.Made(Half) ? answer / 2 : answer, tolerance, unit, [new Slip(Half, "Whole.")], Hints, "s");

        Assert.Equal(said, check.Say(check.Problem().Answer));
        Assert.Equal(within, check.ToleranceText);
    }

    [Fact]
    public void A_slip_that_leads_to_the_answer_at_this_place_leads_nobody_astray_there()
    {
        var page = new Page(place: Page.Vigo);
        var check = page.Lesson.NumberCheckHere(
            "c",
            () => "?",
            way => way.Made(Half) ? 1 : way.Made(Lost) ? Math.Abs(page.Lesson.Here.Point.Latitude.Degrees) : page.Lesson.Here.Point.Latitude.Degrees,
            0.5,
            "°",
            [new Slip(Lost, "South is minus."), new Slip(Half, "Whole.")],
            Hints,
            () => "s");

        Assert.Equal(["half of it"], check.Problem().Astray.Select(path => path.Name));
        page.Lesson.MoveTo(new Places.Place("there", GeoPoint.FromDegrees(-12.46, 130.84), "Australia/Darwin"));
        Assert.Equal(["sign lost: South is minus.", "half of it: Whole."], check.Problem().Astray.Select(path => $"{path.Name}: {path.Reply}"));
    }

    [Fact]
    public void A_prediction_tells_its_answers_or_its_empty_grid()
    {
        var lesson = new Page().Lesson;

        var choice = lesson.Predict("a", "?", "yes", "no");
        Assert.Equal(["yes", "no"], choice.Options);
        Assert.Null(choice.Grid);

        var sketch = lesson.PredictSketch("b", "?", "Date", ["1", "2", "3", "4", "5"], "Noon", "clock", 12, 13.5);
        Assert.Empty(sketch.Options);
        Assert.Equal(("Date", "Noon", 12.0, 13.5), (sketch.Grid!.X.Label, sketch.Grid.Y.Label, sketch.Grid.Y.Min, sketch.Grid.Y.Max));
        Assert.Empty(sketch.Grid.Series);

        Assert.Empty(lesson.PredictNumber("c", "?", "min").Options);
    }

    [Fact]
    public async Task An_outcome_is_told_once_the_prediction_is_recorded()
    {
        var page = new Page();
        var guess = page.Lesson.Predict("a", "?", "yes", "no");
        var beside = guess.ShowBeside(() => "13:18");
        page.Lesson.Show(guess, beside);
        Assert.Empty(beside.Outcomes);

        page.Last("RadioButtonsModel").ChangeFromPage(new JsonObject { ["index"] = 0 });
        page.Press("record-prediction");
        await page.Lesson.Settled;

        Assert.Equal(["13:18"], beside.Outcomes);
    }

    [Fact]
    public void A_worked_example_tells_what_its_blank_steps_hold()
    {
        var example = new Page().Lesson.Worked(
            "w",
            "Vigo",
            Fade.EveryStep,
            Say.Line("degrees west", _ => 23.72, 0.1, "°", "8.72 + 15"),
            Say.Line("step", _ => 94.88, 0.5, "min", "4 for each", idea: true, signed: true));

        Assert.Equal(("Vigo", 0), (example.Title, example.FirstBlank));
        Assert.Equal(["23.7°", "+94.9 min"], example.Lines.Select(line => line.Text));
    }
}
