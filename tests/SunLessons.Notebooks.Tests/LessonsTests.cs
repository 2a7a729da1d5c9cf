using SunLessons.Notebooks.Review;

namespace SunLessons.Notebooks.Tests;

/// <summary>The lessons that ship: every one keeps every rule, and its file is the way we write files.</summary>
public class LessonsTests
{
    internal static readonly LessonShelf Shelf = new(Path.Combine(Root(), "lessons"));

    public static TheoryData<string> Ids() => [.. Shelf.Lessons().Select(lesson => lesson.Id)];

    [Fact]
    public void The_shelf_holds_the_lesson_on_longitude_and_no_broken_folder()
    {
        Assert.Contains("your-own-noon", Shelf.Lessons().Select(lesson => lesson.Id));
        Assert.Empty(Shelf.Problems());
        Assert.Equal(Shelf.Lessons().Count, Shelf.Lessons().Select(lesson => lesson.Number).Distinct().Count());
    }

    [Theory]
    [MemberData(nameof(Ids))]
    public void Every_rule_of_the_review_is_kept(string id) =>
        Assert.Equal("", string.Join("\n", LessonReview.Review(Shelf.Find(id).ReadNotebook())));

    [Theory]
    [MemberData(nameof(Ids))]
    public void The_file_is_valid_and_is_written_back_byte_for_byte(string id)
    {
        Lesson lesson = Shelf.Find(id);
        Assert.Equal("valid", NotebookTests.NbformatSays(lesson.FilePath));
        Assert.Equal(File.ReadAllText(lesson.FilePath), lesson.ReadNotebook().ToJson());
        Assert.StartsWith($"{lesson.Number:00}-", lesson.Folder);
    }

    private static string Root()
    {
        for (string? folder = AppContext.BaseDirectory; folder is not null; folder = Path.GetDirectoryName(folder))
        {
            if (File.Exists(Path.Combine(folder, "SunLessons.sln")))
            {
                return folder;
            }
        }

        throw new InvalidOperationException("The tests run inside the repository, whose top folder holds SunLessons.sln.");
    }
}
