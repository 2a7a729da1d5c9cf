using System.Text.Json.Nodes;
using SunLessons.Notebooks.Review;

namespace SunLessons.Notebooks.Tests.Review;

/// <summary>Each idea of the table is met three times in each finished lesson that it belongs to, and no cell marks another one.</summary>
public class MisconceptionsTests
{
    [Fact]
    public void The_table_has_33_ideas_each_with_lessons_sources_and_what_shows_it()
    {
        Assert.Equal(Enumerable.Range(1, 33), Misconceptions.All.Select(idea => idea.Number));
        Assert.All(Misconceptions.All, idea =>
        {
            Assert.NotEmpty(idea.Lessons);
            Assert.All(idea.Lessons, lesson => Assert.InRange(lesson, 1, 12));
            Assert.NotEmpty(idea.Sources);
            Assert.All(idea.Sources, source => Assert.True(source.Source.Length > 0 && source.Basis is "read" or "from memory" or "inferred" or "observed in lessons of our own", $"idea {idea.Number}"));
            Assert.EndsWith(".", idea.Belief);
            Assert.EndsWith(".", idea.ShownBy);
        });
        Assert.Equal(33, Misconceptions.All.Select(idea => idea.Belief).Distinct().Count());
        Assert.Null(Misconceptions.Find(34));
    }

    [Theory]
    [MemberData(nameof(NeededPartsTests.Finished), MemberType = typeof(NeededPartsTests))]
    public void A_finished_lesson_foretells_offers_and_refutes_the_ideas_that_the_table_gives_it_and_no_other(string id)
    {
        Lesson lesson = LessonsTests.Shelf.Find(id);
        int[] given = [.. Misconceptions.All.Where(idea => idea.Lessons.Contains(lesson.Number)).Select(idea => idea.Number)];
        Assert.NotEmpty(given);
        Notebook notebook = lesson.ReadNotebook();
        Assert.Equal(given, IdeaMarks.In(notebook, IdeaPart.Prediction).Order());
        Assert.Equal(given, IdeaMarks.In(notebook, IdeaPart.Refutation).Order());

        // Questions from before bring back ideas of earlier lessons; those of this one are all among the wrong answers.
        Assert.Superset(given.ToHashSet(), IdeaMarks.In(notebook, IdeaPart.WrongAnswer).ToHashSet());
        int[] others = [.. IdeaMarks.In(notebook, IdeaPart.WrongAnswer).Except(given)];
        Assert.All(others, number => Assert.True(Misconceptions.Find(number)!.Lessons.Min() < lesson.Number, $"idea {number} comes before its lesson."));
    }

    [Theory]
    [MemberData(nameof(NeededPartsTests.Finished), MemberType = typeof(NeededPartsTests))]
    public void A_mark_without_its_idea_its_words_or_its_other_parts_is_named(string id)
    {
        Notebook whole = LessonsTests.Shelf.Find(id).ReadNotebook();
        int marks = 0;
        foreach (NotebookCell cell in whole.Cells)
        {
            foreach ((string number, JsonNode? words) in cell.Metadata["sunlessons"]?["ideas"] as JsonObject ?? [])
            {
                marks++;
                Assert.Contains(Told(With(cell, "34", words)), sentence => sentence == "The cell marks the idea \"34\", and the table of misconceptions has 1 to 33; write one of these numbers.");
                Assert.Contains(Told(With(cell, number, "no such words")), sentence => sentence.StartsWith($"The words \"no such words\" of the idea {number} do not stand in the cell", StringComparison.Ordinal));
                if (cell.Role is "prediction" or "refutation")
                {
                    Assert.Contains(Told(With(cell, number, null)), sentence => sentence.StartsWith($"{(cell.Role == "prediction" ? "No prediction offers" : "No text refutes")} the idea {number} (\"", StringComparison.Ordinal));
                }
            }
        }

        Assert.True(marks >= 9, $"{id} has {marks} marks.");
        Assert.Contains(Told(whole.WithCellSunLessons("goals", "ideas", new JsonObject { ["20"] = "Say" })), sentence => sentence.StartsWith("The cell marks the idea 20, and only cells with the role", StringComparison.Ordinal));

        Notebook With(NotebookCell cell, string number, JsonNode? words) => whole.WithCellSunLessons(cell.Id, "ideas", words is null ? null : new JsonObject { [number] = words.DeepClone() });
        static IEnumerable<string> Told(Notebook lesson) => LessonReview.Review(lesson).Where(remark => remark.Rule == "ideas").Select(remark => remark.Sentence);
    }
}
