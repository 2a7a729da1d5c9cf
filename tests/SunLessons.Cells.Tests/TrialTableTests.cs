using System.Text.Json.Nodes;
using SunLessons.Cells.Controls;
using SunLessons.Cells.Trials;

namespace SunLessons.Cells.Tests;

public class TrialTableTests
{
    private static (TrialTable Table, NumberControl Turn, SwitchControl Summer) Experiment(Page page, Predictions.Prediction? after = null)
    {
        var turn = page.Lesson.Number("turn", "Turn", -10, 10, 0.5, 2, "°", after);
        var summer = page.Lesson.Switch("summer", "Summer", after: after);
        var table = page.Lesson.Trials("my-trials", "Error", () => $"{4 * turn + (summer ? 60 : 0)} min", turn, summer);
        page.Lesson.Show(turn, summer, table);
        return (table, turn, summer);
    }

    private static void Turn(Page page, double to) => page.Last("FloatSliderModel").ChangeFromPage(JsonValue.Create(to));

    [Fact]
    public void A_button_keeps_positions_and_outcome_as_a_row_of_a_table()
    {
        var page = new Page();
        var (table, _, _) = Experiment(page);
        Assert.Contains("No trial is kept yet.", page.Html("trial-rows"));
        Assert.True((bool)page.Role("drop-trial").State["disabled"]!);

        page.Press("keep-trial");
        Turn(page, 3);
        page.Press("keep-trial");

        Assert.Equal([["2.0°", "off"], ["3.0°", "off"]], table.Trials.Select(t => t.Inputs));
        Assert.Equal(["8 min", "12 min"], table.Trials.Select(t => t.Outcomes[0]));
        Assert.Equal("", table.Note);
        Assert.Contains("<th scope=\"row\">2</th><td>3.0°</td><td>off</td><td>12 min</td><td>Turn</td>".Replace("°", "&#176;"), page.Html("trial-rows"));
        Assert.Contains("<th scope=\"col\">Moved since the trial before</th>", page.Html("trial-rows"));
        Assert.Equal("Trial 1: Turn 2.0°, Summer off: 8 min\nTrial 2: Turn 3.0°, Summer off: 12 min", table.PlainText);
    }

    [Fact]
    public void Two_controls_moved_between_two_trials_bring_a_note_and_are_named_in_the_row()
    {
        var page = new Page();
        var (table, _, _) = Experiment(page);
        page.Press("keep-trial");
        Turn(page, 3);
        page.Last("CheckboxModel").ChangeFromPage(JsonValue.Create(true));

        page.Press("keep-trial");

        Assert.StartsWith("One thing at a time: since the last trial these were moved together: Turn, Summer.", table.Note);
        Assert.Contains(table.Note, page.Html("status"));
        Assert.Contains("<td>Turn and Summer: two things at once</td>", page.Html("trial-rows"));

        page.Last("CheckboxModel").ChangeFromPage(JsonValue.Create(false));
        page.Press("keep-trial");
        Assert.Equal("", table.Note);
        Assert.Equal(3, table.Trials.Count);
    }

    [Fact]
    public void Nothing_moved_is_no_new_trial_and_the_last_one_can_be_taken_back()
    {
        var page = new Page();
        var (table, _, _) = Experiment(page);
        page.Press("keep-trial");
        page.Press("keep-trial");
        Assert.Single(table.Trials);
        Assert.StartsWith("Nothing was moved since the last trial", table.Note);

        page.Press("drop-trial");
        Assert.Empty(table.Trials);
        Assert.Equal("[]", page.Host.FrontEnd.Recorded("trials:my-trials")!.ToJsonString());
    }

    [Fact]
    public void Before_the_prediction_no_trial_can_be_kept()
    {
        var page = new Page();
        var guess = page.Lesson.Predict("guess", "?", "a", "b");
        var (table, _, _) = Experiment(page, guess);

        page.Press("keep-trial");

        Assert.Empty(table.Trials);
        Assert.Equal("Record your prediction first: Turn is still locked.", table.Note);
    }

    [Fact]
    public void Trials_come_back_after_a_restart_and_those_of_other_controls_do_not()
    {
        var page = new Page();
        Experiment(page);
        page.Press("keep-trial");
        Turn(page, -4);
        page.Press("keep-trial");

        var later = new Page(record: page.Host.FrontEnd.Record);
        var (table, _, _) = Experiment(later);
        Assert.Equal(["8 min", "-16 min"], table.Trials.Select(t => t.Outcomes[0]));

        var other = new Page(record: page.Host.FrontEnd.Record);
        var turn = other.Lesson.Number("turn", "Turn", -10, 10, 0.5, 2, "°");
        Assert.Empty(other.Lesson.Trials("my-trials", "Error", () => "", turn).Trials);
    }

    [Fact]
    public void There_is_an_end_to_it_and_an_outcome_that_fails_is_a_sentence()
    {
        var page = new Page();
        var (table, turn, _) = Experiment(page);
        for (var i = 0; i < 31; i++)
        {
            Turn(page, i % 2 == 0 ? 1 : 2);
            page.Press("keep-trial");
        }

        Assert.Equal(30, table.Trials.Count);
        Assert.StartsWith("30 trials are kept, and that is all there is room for.", table.Note);

        var failing = page.Lesson.Trials("other", "Error", () => throw new ArgumentException("The Sun is down then."), turn);
        page.Lesson.Show(failing);
        page.Press("keep-trial");
        Assert.Equal("The Sun is down then.", failing.Note);
    }
}
