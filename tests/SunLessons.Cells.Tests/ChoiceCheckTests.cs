using System.Text.Json.Nodes;
using SunLessons.Cells.Checks;

namespace SunLessons.Cells.Tests;

public class ChoiceCheckTests
{
    private static readonly string[] Hints = ["first hint", "second hint", "third hint"];

    private static ChoiceCheck Parallel(Page page) => page.Lesson.ChoiceCheck(
        "parallel",
        "Why are the shadows parallel?",
        [
            Say.Wrong("Rays spread from a point", "That is the lamp: move it to 3 m and look."),
            Say.Right("The Sun is so far that rays arrive side by side", "So it is."),
            Say.Nearly("The Sun is large", "Large it is, but its distance does it."),
        ],
        Hints,
        "The Sun is far.");

    [Theory]
    [InlineData(0, CheckState.NotYet, "Not yet. That is the lamp: move it to 3 m and look.")]
    [InlineData(1, CheckState.Right, "Right. So it is.")]
    [InlineData(2, CheckState.Nearly, "Nearly. Large it is, but its distance does it.")]
    public void Each_answer_has_its_own_reply(int index, CheckState state, string reply)
    {
        var page = new Page();
        var check = Parallel(page);
        page.Lesson.Show(check);

        page.Last("RadioButtonsModel").ChangeFromPage(new JsonObject { ["index"] = index });
        page.Press("check-answer");

        Assert.Equal(state, check.State);
        Assert.Equal(reply, check.Reply);
        Assert.Contains(reply, page.Html("status"));
    }

    [Fact]
    public void Without_a_choice_nothing_is_judged()
    {
        var page = new Page();
        var check = Parallel(page);
        page.Lesson.Show(check);

        page.Press("check-answer");

        Assert.Equal(CheckState.NotStarted, check.State);
        Assert.Contains("Choose one of the answers first.", page.Html("status"));
    }

    [Fact]
    public void The_choice_comes_back()
    {
        var page = new Page();
        page.Lesson.Show(Parallel(page));
        page.Last("RadioButtonsModel").ChangeFromPage(new JsonObject { ["index"] = 0 });
        page.Press("check-answer");

        var later = new Page(record: page.Host.FrontEnd.Record);
        var check = Parallel(later);
        later.Lesson.Show(check);

        Assert.Equal(CheckState.NotYet, check.State);
        Assert.Equal(0, (int)later.Last("RadioButtonsModel").State["index"]!);
    }

    [Fact]
    public void A_question_without_a_right_answer_is_refused() =>
        Assert.StartsWith(
            "Check 'c' needs at least 2 different answers, one of them right, and a reply to each.",
            Assert.Throws<ArgumentException>(() => new Page().Lesson.ChoiceCheck("c", "?", [Say.Wrong("a", "r"), Say.Wrong("b", "r")], Hints, "s")).Message);
}
