using System.Text.Json.Nodes;
using SunLessons.Cells.Controls;
using SunLessons.Cells.Predictions;
using SunLessons.Cells.Trials;

namespace SunLessons.Cells.Tests;

public class StoredTrialsTests
{
    private static (TrialTable Table, NumberControl Turn, ChoiceControl Season, SwitchControl Summer) Experiment(Page page, Prediction? after = null)
    {
        var turn = page.Lesson.Number("turn", "Turn", -10, 10, 0.5, 2, "°", after);
        var season = page.Lesson.Choice("season", "Season", ["June", "December"], after);
        var summer = page.Lesson.Switch("summer", "Daylight time", after: after);
        var table = page.Lesson.Trials("trials", "Error", () => $"{4 * turn + (summer ? 60 : 0)} min in {season.Value}", turn, season, summer);
        return (table, turn, season, summer);
    }

    [Fact]
    public void Each_control_is_moved_alone_and_the_others_are_held_at_their_start_and_named()
    {
        var (table, _, _, _) = Experiment(new Page());

        var sweeps = table.Sweeps();

        Assert.Equal(
            [
                "Turn, moved alone. Held: Season June, Daylight time off",
                "Season, moved alone. Held: Turn 2.0°, Daylight time off",
                "Daylight time, moved alone. Held: Turn 2.0°, Season June",
            ],
            sweeps.Select(s => s.Caption));
        Assert.Equal(["−10.0°", "−5.0°", "0.0°", "2.0°", "5.0°", "10.0°"], sweeps[0].Rows.Select(r => r.Inputs[0]));
        Assert.Equal("-40 min in June", sweeps[0].Rows[0].Outcomes[0]);
        Assert.Equal(["June: 8 min in June", "December: 8 min in December"], sweeps[1].Rows.Select(r => $"{r.Inputs[0]}: {r.Outcomes[0]}"));
        Assert.Equal(["off: 8 min in June", "on: 68 min in June"], sweeps[2].Rows.Select(r => $"{r.Inputs[0]}: {r.Outcomes[0]}"));
    }

    [Fact]
    public void Nothing_moves_while_trials_are_computed()
    {
        var page = new Page();
        var (table, turn, season, summer) = Experiment(page);
        var moves = 0;
        turn.Changed += () => moves++;

        _ = table.Sweeps();

        Assert.Equal((2.0, "June", false, 0), (turn.Value, season.Value, summer.IsOn, moves));
        Assert.Empty(page.Host.Recorded);
    }

    [Theory]
    [InlineData(0, 0.05, 0.0001, 0)]
    [InlineData(-30, 30, 0.25, 0)]
    [InlineData(-66, 66, 0.5, 49)]
    [InlineData(1900, 2030, 1, 2025)]
    [InlineData(5, 19, 0.25, 12)]
    [InlineData(1, 365, 1, 172)]
    [InlineData(0, 30, 0.01, 23.44)]
    [InlineData(-5, 5, 0.1, 0)]
    [InlineData(0.2, 2, 0.1, 1)]
    public void A_number_has_five_to_nine_stations_that_it_can_be_moved_to_its_start_among_them(double from, double to, double step, double start)
    {
        var page = new Page();
        var control = page.Lesson.Number("n", "N", from, to, step, start);
        double[] tried = [.. page.Lesson.Trials("t", "N", () => "", control).Sweeps()[0].Rows.Select(r => double.Parse(r.Inputs[0].Replace('−', '-')))];

        Assert.InRange(tried.Length, 5, 9);
        Assert.Equal(tried.Order().Distinct(), tried);
        Assert.Contains(start, tried);
        Assert.All(tried, position => Assert.InRange(position, from, to));
        Assert.All(tried, position => Assert.Equal((position - from) / step, Math.Round((position - from) / step), 6));
    }

    [Fact]
    public void A_lesson_says_where_trials_are_made_what_is_held_and_what_else_comes_out()
    {
        var (table, turn, season, summer) = Experiment(new Page());
        table.And("Twice", () => $"{8 * turn}").Swept(turn, -1, 0, 1).Held(season, "December").Held(summer, true);

        var sweep = table.Sweeps()[0];

        Assert.Equal("Turn, moved alone. Held: Season December, Daylight time on", sweep.Caption);
        Assert.Equal(["Error", "Twice"], sweep.Headings);
        Assert.Equal([["56 min in December", "-8"], ["60 min in December", "0"], ["64 min in December", "8"]], sweep.Rows.Select(r => r.Outcomes));
        Assert.StartsWith("'May' is none of the names of 'season'. Write one of June, December.", Assert.Throws<ArgumentException>(() => table.Held(season, "May")).Message);
    }

    [Fact]
    public void A_control_that_is_not_in_the_table_cannot_be_held()
    {
        var page = new Page();
        var (table, _, _, _) = Experiment(page);
        var other = page.Lesson.Number("other", "Other", 0, 1, 1, 0);

        var error = Assert.Throws<ArgumentException>(() => table.Held(other, 1));

        Assert.StartsWith("Trial table 'trials' does not follow the control 'other'. Name it among its controls.", error.Message);
    }

    [Fact]
    public void A_trial_at_which_nothing_comes_out_says_why()
    {
        var page = new Page();
        var turn = page.Lesson.Number("turn", "Turn", -1, 1, 1, 0);
        var table = page.Lesson.Trials("t", "Error", () => turn < 0 ? throw new ArgumentException("The Sun is down then.") : "up", turn).Swept(turn, -1, 1);

        Assert.Equal(["The Sun is down then.", "up"], table.Sweeps()[0].Rows.Select(r => r.Outcomes[0]));
    }

    [Fact]
    public void A_figure_can_be_asked_how_it_stands_at_the_held_positions()
    {
        var page = new Page();
        var turn = page.Lesson.Number("turn", "Turn", -10, 10, 0.5, 2);
        var figure = page.Lesson.LiveFigure("f", () => Figures.Figure.Titled("Turn").Says($"Turned by {turn.Value}."), turn);
        var table = page.Lesson.Trials("t", "Error", () => "", turn);

        Assert.Equal("Turned by 2.", table.Drawn(figure)!.Summary);
        Assert.Equal("Turned by 7.5.", table.Held(turn, 7.5).Drawn(figure)!.Summary);
        Assert.Equal("Turned by 2.", figure.PlainText);
    }

    [Fact]
    public async Task Stored_trials_stand_in_the_page_once_the_prediction_is_recorded()
    {
        var page = new Page();
        var guess = page.Lesson.Predict("guess", "?", "a", "b");
        var (table, turn, season, summer) = Experiment(page, guess);
        page.Lesson.Show(guess, turn, season, summer, table);
        Assert.Contains("Record your prediction first", page.Html("stored-trials"));

        page.Last("RadioButtonsModel").ChangeFromPage(new JsonObject { ["index"] = 0 });
        page.Press("record-prediction");
        await page.Lesson.Settled;

        Assert.Contains("Turn, moved alone. Held: Season June, Daylight time off</caption>", page.Html("stored-trials"));
        Assert.Contains("<td>68 min in June</td>", page.Html("stored-trials"));
    }

    [Fact]
    public async Task A_town_is_swept_through_the_eight_and_trials_follow_the_place()
    {
        var page = new Page(place: Page.Darwin);
        var town = page.Lesson.Town("town");
        var turn = page.Lesson.Number("turn", "Turn", 0, 4, 1, 0);
        var table = page.Lesson.Trials("t", "Latitude", () => $"{town.Place.Point.Latitude.Degrees:0}", town, turn);
        page.Lesson.Show(table);
        Assert.Equal(8, table.Sweeps()[0].Rows.Count);
        Assert.Contains("Turn, moved alone. Held: Town Darwin", page.Html("stored-trials"));

        page.Lesson.MoveTo(new Places.Place("Puerto Montt", GeoPoint.FromDegrees(-41.5, -72.9), "America/Santiago"));
        await page.Lesson.Settled;

        Assert.Equal("Puerto Montt", table.Sweeps()[0].Rows[0].Inputs[0]);
        Assert.Equal(9, table.Sweeps()[0].Rows.Count);
        Assert.Contains("Turn, moved alone. Held: Town Puerto Montt", page.Html("stored-trials"));
    }
}
