using System.Text.Json.Nodes;
using SunLessons.Notebooks.Review;

namespace SunLessons.Notebooks.Tests.Review;

public class LessonReviewTests
{
    [Fact]
    public void A_lesson_that_keeps_every_rule_gets_no_remark() => Assert.Empty(LessonReview.Review(Good()));

    [Theory]
    [InlineData("The step is 94.9 min.", "94.9 min")]
    [InlineData("Noon comes at 13:18 there.", "13:18")]
    [InlineData("It lies at −8.72 on the map.", "−8.72")]
    [InlineData("Turn it by 7° to the left.", "7°")]
    [InlineData("The edge is 3 mm wide.", "3 mm")]
    [InlineData("| Town | Step |\n|---|---|\n| Vigo | +95 min |", "+95 min")]
    [InlineData("Wait 20 minutes.", "20 minutes")]
    [InlineData("- It is 2,5 too much.", "2,5")]
    [InlineData("> quoted: 12.5 h", "12.5 h")]
    [InlineData("<p>raw: 12.5 h</p>", "12.5 h")]
    public void A_bare_computed_number_is_named_with_what_to_write(string text, string number)
    {
        ReviewRemark remark = Assert.Single(LessonReview.Review(Good(text)));
        Assert.Equal(("puzzle", "bare-number"), (remark.CellId, remark.Rule));
        Assert.StartsWith($"\"{number}\" stands bare in ", remark.Sentence);
        Assert.EndsWith($"write [{number}](#value:its-name), or add it to \"given\" in the notebook's metadata if it is given and not computed.", remark.Sentence);
    }

    [Theory]
    [InlineData("The step is [94.9 min](#value:step).")]
    [InlineData("There are 8 towns and 3 questions on 3 November 2026.")]
    [InlineData("Write `94.9 min` or $4.5$ or\n\n```\n12:30\n```\n")]
    [InlineData("The Earth turns by 15° in an hour.")]
    public void Links_code_formulas_counts_dates_and_given_numbers_may_stand(string text) => Assert.Empty(LessonReview.Review(Good(text)));

    [Theory]
    [InlineData("At noon the Sun is in the south.")]
    [InlineData("The noon shadow points north.")]
    [InlineData("The Sun at noon stands due north.")]
    [InlineData("June is summer.")]
    [InlineData("The numbers on a dial run clockwise.")]
    public void A_sentence_that_holds_on_one_side_of_the_world_needs_its_condition(string sentence)
    {
        Assert.Equal("hemisphere", Assert.Single(LessonReview.Review(Good(sentence))).Rule);
        Assert.Empty(LessonReview.Review(Good("In Vigo, " + sentence)));
        Assert.Equal("hemisphere", Assert.Single(LessonReview.Review(Good("Vigo is a town. " + sentence))).Rule);
    }

    [Fact]
    public void Each_rule_of_the_lessons_shape_is_kept_watch_over()
    {
        Assert.Contains(Rules(Good().WithCellSunLessons("goals", "language", null)), rule => rule == ("goals", "language"));
        Assert.Contains(Rules(Good().WithCellSunLessons("goals", "role", "ornament")), rule => rule == ("goals", "role"));
        Assert.Contains(Rules(Good().WithCellSunLessons("safety", "role", "exit")), rule => rule.Rule == "safety-first");
        Assert.Contains(Rules(Good().WithSource("safety", "## Safe\n\nTake care.")), rule => rule.Rule == "safety-words");
        Assert.Contains(Rules(Good().WithSource("goals", "# Another title")), rule => rule.Rule == "headings");
        Assert.Contains(Rules(Good().WithSource("goals", "#### Deep")), rule => rule == ("goals", "headings"));
        Assert.Contains(Rules(Good("[1 min](#value:nowhere)")), rule => rule == ("puzzle", "unknown-value"));
        Assert.Contains(Rules(Good("$\\nonsense$")), rule => rule == ("puzzle", "formula"));
        Assert.Contains(Rules(Moved(Good(), "refutation", "prediction")), rule => rule == ("prediction", "anatomy"));
        Assert.Contains(Rules(Good().WithOutputs("own-dial", [NotebookOutput.Stream("stdout", "x")], 1)), rule => rule == ("own-dial", "stored-output"));
        Assert.Contains(Rules(Good().WithSource("own-dial", "<p>x</p>")), rule => rule == ("own-dial", "language"));
        Assert.Contains(Rules(Good().WithSunLessons("minutes", null)), rule => rule.Rule == "facts");
        Assert.Contains(Rules(Good("Notwithstanding considerable institutional complications, international administrative organisations systematically discontinued multitudinous idiosyncratic chronological approximations throughout innumerable municipalities.")), rule => rule.Rule == "reading-level");
    }

    // The formula with syllables counted by hand: 11 words, 1 sentence, 12 syllables ("lazy" has two).
    [Fact]
    public void The_reading_grade_is_the_published_formula() =>
        Assert.Equal((0.39 * 11) + (11.8 * 12 / 11.0) - 15.59, ReadingLevel.FleschKincaidGrade(["The old brown fox jumps at once on the lazy dog."]), 9);

    [Theory]
    [InlineData("the", 1)]
    [InlineData("time", 1)]
    [InlineData("table", 2)]
    [InlineData("shadow", 2)]
    [InlineData("marked", 1)]
    [InlineData("printed", 2)]
    [InlineData("longitude", 3)]
    [InlineData("meridian", 3)] // me-rid-i-an has 4: neighbouring vowels are one group, the method's known slip
    [InlineData("minutes", 2)]
    [InlineData("places", 2)]
    public void Syllables_are_groups_of_vowels(string word, int count) => Assert.Equal(count, ReadingLevel.Syllables(word));

    [Theory]
    [InlineData("sol", 1)]
    [InlineData("reloj", 2)]
    [InlineData("mediodía", 4)]
    [InlineData("cuadrante", 3)]
    [InlineData("línea", 3)]
    [InlineData("oeste", 3)]
    [InlineData("después", 2)]
    [InlineData("guía", 2)]
    [InlineData("pequeño", 3)]
    [InlineData("hay", 1)]
    [InlineData("y", 1)]
    [InlineData("mayo", 2)]
    [InlineData("ciudad", 2)]
    [InlineData("antigüedad", 4)]
    public void Spanish_syllables_are_counted_as_they_are_written(string word, int count) => Assert.Equal(count, ReadingLevel.SpanishSyllables(word));

    [Fact]
    public void A_Spanish_text_has_its_own_score()
    {
        // Two sentences, 10 words, 14 syllables: la som-bra es más cor-ta, el Sol es-tá muy al-to.
        Assert.Equal(206.835 - (62.3 * 1.4) - 5, ReadingLevel.SzigrisztPazosScore(["La sombra es más corta.", "El Sol está muy alto."]), 9);
    }

    private static IEnumerable<(string Cell, string Rule)> Rules(Notebook lesson) => LessonReview.Review(lesson).Select(remark => (remark.CellId, remark.Rule));

    /// <summary>The two roles have changed places: what stood in one cell stands in the other.</summary>
    private static Notebook Moved(Notebook lesson, string one, string other) =>
        lesson.WithCellSunLessons(one, "role", other).WithCellSunLessons(other, "role", one);

    internal static Notebook Good(string puzzle = "The dial is late.")
    {
        Notebook notebook = Notebook.Empty();
        foreach ((string name, JsonNode value) in new (string, JsonNode)[] { ("id", "noon"), ("title", "Noon"), ("number", 6), ("minutes", 50), ("summary", "A step."), ("given", new JsonArray("15°")) })
        {
            notebook = notebook.WithSunLessons(name, value);
        }

        foreach (string role in LessonRoles.Needed)
        {
            bool code = role is "own-dial";
            string text = role switch
            {
                "title" => "# Noon",
                "safety" => "## Stay safe\n\nNever look at the Sun.",
                "puzzle" => puzzle,
                "own-dial" => "Value(\"step\", 1);",
                _ => "Read the text.",
            };
            notebook = notebook.WithInsertedCell(notebook.Cells.Count, code ? CellType.Code : CellType.Markdown, role, text)
                .WithCellSunLessons(role, "language", code ? "csharp" : "markdown")
                .WithCellSunLessons(role, "role", role);
        }

        return notebook;
    }
}
