using SunLessons.Notebooks.Review;

namespace SunLessons.Notebooks.Tests.Review;

/// <summary>A finished lesson with a part taken out is told which, and a lesson that is not finished is told kindly.</summary>
public class NeededPartsTests
{
    public static TheoryData<string> Finished() =>
        [.. LessonsTests.Shelf.Lessons().Where(lesson => LessonReview.IsFinished(lesson.ReadNotebook())).Select(lesson => lesson.Id)];

    [Fact]
    public void Some_lessons_on_the_shelf_call_themselves_finished() => Assert.NotEmpty(Finished());

    [Theory]
    [MemberData(nameof(Finished))]
    public void A_finished_lesson_without_one_of_its_roles_is_told_where_to_add_it(string id)
    {
        Notebook whole = LessonsTests.Shelf.Find(id).ReadNotebook();
        foreach (string role in LessonRoles.Needed)
        {
            Notebook without = whole.Cells.Where(cell => cell.Role == role).Aggregate(whole, (lesson, cell) => lesson.WithoutCell(cell.Id));
            Assert.Contains(LessonReview.Review(without), remark => remark.Rule == "anatomy"
                && remark.Sentence.StartsWith($"The lesson has no cell with the role {role}; add one {(role == "title" ? "at the top" : "after cell ")}", StringComparison.Ordinal));
        }
    }

    public static TheoryData<string, string, string, string> Parts()
    {
        var rows = new TheoryData<string, string, string, string>();
        foreach (var lesson in Finished())
        {
            foreach ((string role, string text, string rule) in new[]
            {
                ("recall", "ChoiceCheck(", "recall"),
                ("prediction", "Predict", "prediction"),
                ("experiment", "LiveFigure(", "two-views"),
                ("experiment", "Trials(", "trials"),
                ("experiment", ".ShowBeside(", "beside"),
                ("worked", "Fade.NoStep", "fades"),
                ("worked", "Fade.LastSteps", "fades"),
                ("worked", "Fade.EveryStep", "fades"),
                ("check", "NumberCheck", "checks"),
                ("check", "ChoiceCheck(", "checks"),
                ("experiment", "at a time", "one-thing"),
                ("reasoning", "Without a formula", "no-formula"),
                ("activity", ". ", "activity"),
                ("sources", "- ", "sources"),
                ("teacher", "## ", "folded"),
                ("teacher", "| 16 |", "minutes"),
            })
            {
                rows.Add(lesson.Data, role, text, rule);
            }
        }

        return rows;
    }

    [Theory]
    [MemberData(nameof(Parts))]
    public void A_finished_lesson_without_one_of_its_parts_is_told_which(string id, string role, string text, string rule)
    {
        Notebook whole = LessonsTests.Shelf.Find(id).ReadNotebook();
        Notebook without = whole.Cells.Where(cell => cell.Role == role)
            .Aggregate(whole, (lesson, cell) => lesson.WithSource(cell.Id, cell.Source.Replace(text, "Gone", StringComparison.Ordinal)));
        ReviewRemark remark = Assert.Single(LessonReview.Review(without), remark => remark.Rule == rule);
        Assert.Equal(role, remark.Role);
        Assert.InRange(remark.CellNumber, 1, whole.Cells.Count);
    }

    [Theory]
    [InlineData("Nairobi", "Darwin", "in the tropics")]
    [InlineData("Dunedin", "Ushuaia", "south of the tropics")]
    public void A_finished_lesson_works_a_case_on_each_side_of_the_tropics_and_between_them(string one, string other, string where)
    {
        Notebook whole = LessonsTests.Shelf.Find("your-own-noon").ReadNotebook();
        Notebook without = whole.Cells.Aggregate(whole, (lesson, cell) => lesson.WithSource(cell.Id, cell.Source.Replace(one, "Vigo").Replace(other, "Vigo")));
        ReviewRemark remark = Assert.Single(LessonReview.Review(without), remark => remark.Rule == "cases");
        Assert.StartsWith($"No case lies {where}; name ", remark.Sentence);
        Assert.Contains($"{one}", remark.Sentence);
    }

    [Fact]
    public void A_lesson_that_is_not_finished_breaks_no_rule_by_what_it_lacks()
    {
        Notebook begun = LessonReviewTests.Good().WithoutCell("activity");
        Assert.Empty(LessonReview.Review(begun));
        Assert.Contains(LessonReview.StillToWrite(begun), remark => remark.Sentence == "The lesson has no cell with the role activity; add one after cell 12 (check, \"check\").");
        Notebook finished = begun.WithSunLessons("finished", true);
        Assert.Empty(LessonReview.StillToWrite(finished));
        Assert.Equal(LessonReview.StillToWrite(begun), LessonReview.Review(finished));
    }
}
