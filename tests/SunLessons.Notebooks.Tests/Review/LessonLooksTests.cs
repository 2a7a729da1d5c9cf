using SunLessons.Notebooks.Review;

namespace SunLessons.Notebooks.Tests.Review;

/// <summary>Words in the place of drawings, links, and how much moves at once.</summary>
public class LessonLooksTests
{
    [Theory]
    [InlineData("![](attachment:dial.png)", "alt-text")]
    [InlineData("![a dial](https://example.org/dial.png)", "links")]
    [InlineData("<p><img src=\"attachment:dial.png\"></p>", "alt-text")]
    [InlineData("<p><img src=\"attachment:dial.png\" alt=\"  \"></p>", "alt-text")]
    [InlineData("<svg viewBox=\"0 0 1 1\"><path d=\"M0 0\"/></svg>", "alt-text")]
    [InlineData("Read [more on dials](http://example.org).", "links")]
    [InlineData("Read [more on dials](dials.html).", "links")]
    [InlineData("Read [more on dials](#no-such-heading).", "links")]
    [InlineData("It stands [here](https://example.org/dials).", "links")]
    public void A_drawing_without_words_and_a_link_that_leads_nowhere_are_named(string text, string rule)
    {
        ReviewRemark remark = Assert.Single(LessonReview.Review(LessonReviewTests.Good(text)));
        Assert.Equal(("puzzle", rule, 3, "puzzle"), (remark.CellId, remark.Rule, remark.CellNumber, remark.Role));
        Assert.StartsWith($"cell 3 (puzzle, \"puzzle\"), {rule}: ", remark.ToString());
    }

    [Theory]
    [InlineData("![a dial with its shadow](attachment:dial.png)")]
    [InlineData("<p><img src=\"attachment:dial.png\" alt=\"a dial\"></p>")]
    [InlineData("<svg viewBox=\"0 0 1 1\" aria-label=\"a dial\"><path d=\"M0 0\"/></svg>")]
    [InlineData("<svg viewBox=\"0 0 1 1\"><title>A dial</title><path d=\"M0 0\"/></svg>")]
    [InlineData("Read [more on dials](https://example.org/dials).")]
    [InlineData("## The dial\n\nGo back to [the dial](#the-dial).")]
    public void With_words_and_an_address_they_may_stand(string text) => Assert.Empty(LessonReview.Review(LessonReviewTests.Good(text)));

    [Fact]
    public void A_step_has_at_most_three_controls_and_a_heading_begins_the_next_step()
    {
        const string two = """var a = Number("a", "A", 0, 1, 1, 0, after: guess); var b = Switch("b", "B", after: guess);""";
        Assert.Empty(LessonReview.Review(Experiment(("text", "Move."), ("one", two))));
        ReviewRemark remark = Assert.Single(LessonReview.Review(Experiment(("text", "Move."), ("one", two), ("two", two))));
        Assert.Equal(("two", "controls"), (remark.CellId, remark.Rule));
        Assert.StartsWith("This step has 4 controls, and at most 3 move at once;", remark.Sentence);
        Assert.Empty(LessonReview.Review(Experiment(("text", "Move."), ("one", two), ("next", "## Then"), ("two", two))));
        Assert.Empty(LessonReview.Review(Experiment(("text", "Move."), ("one", two), ("two", "// var c = Number(\"c\" was here\nShow(1);"))));
    }

    [Fact]
    public void Controls_wait_for_a_guess_and_figures_say_their_result()
    {
        Assert.Equal(("one", "guess-first"), Told(Experiment(("one", """var a = Town("a");"""))));
        Assert.Equal(("one", "alt-text"), Told(Experiment(("one", """Show(Figure.Titled("Noon").Point("noon", 0, 1));"""))));
        Assert.Empty(LessonReview.Review(Experiment(("one", """var a = Town("a"); guess.Unlocks(a); Show(Figure.Titled("Noon").Says("It is noon."));"""))));
    }

    private static (string Cell, string Rule) Told(Notebook lesson)
    {
        ReviewRemark remark = Assert.Single(LessonReview.Review(lesson));
        return (remark.CellId, remark.Rule);
    }

    /// <summary>A good lesson whose experiment has these cells: code where the text ends with a semicolon, else words.</summary>
    private static Notebook Experiment(params (string Id, string Source)[] cells)
    {
        Notebook lesson = LessonReviewTests.Good();
        int at = lesson.Cells.ToList().FindIndex(cell => cell.Id == "experiment");
        foreach ((string id, string source) in cells)
        {
            bool code = source.EndsWith(';');
            lesson = lesson.WithInsertedCell(++at, code ? CellType.Code : CellType.Markdown, id, source)
                .WithCellSunLessons(id, "language", code ? "csharp" : "markdown")
                .WithCellSunLessons(id, "role", "experiment");
        }

        return lesson;
    }
}
