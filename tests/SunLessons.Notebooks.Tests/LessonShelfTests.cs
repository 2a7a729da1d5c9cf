namespace SunLessons.Notebooks.Tests;

public class LessonShelfTests
{
    [Fact]
    public void Lessons_come_in_course_order_and_are_found_by_folder_and_by_id()
    {
        string folder = Samples.NewFolder();
        Samples.Shelve(folder, Samples.Lesson.Replace("your-own-noon", "latitude").Replace("\"number\": 6", "\"number\": 4"), "zz-latitude");
        Samples.Shelve(folder);
        var shelf = new LessonShelf(folder);
        Assert.Equal(["latitude", "your-own-noon"], shelf.Lessons().Select(lesson => lesson.Id));
        Assert.Equal("06-noon", shelf.Find("your-own-noon").Folder);
        Assert.Equal(("Your own noon", 6, 50), (shelf.Find("06-noon").Title, shelf.Find("06-noon").Number, shelf.Find("06-noon").Minutes));
        Assert.Equal(3, shelf.Find("06-noon").ReadNotebook().Cells.Count);
        Assert.Empty(shelf.Problems());
    }

    [Theory]
    [InlineData("..")]
    [InlineData("../06-noon")]
    [InlineData("06-noon/../06-noon")]
    [InlineData("06-noon/")]
    [InlineData("/etc")]
    [InlineData("..\\06-noon")]
    [InlineData("%2e%2e")]
    [InlineData("")]
    [InlineData("06-noon\0")]
    public void Names_that_are_paths_are_refused(string name)
    {
        string folder = Samples.NewFolder();
        Samples.Shelve(folder);
        var problem = Assert.Throws<NotebookFormatException>(() => new LessonShelf(folder).Find(name));
        Assert.Equal($"There is no lesson \"{name}\"; the lessons here are your-own-noon.", problem.Message);
    }

    [Fact]
    public void A_link_that_leads_out_of_the_folder_is_not_followed()
    {
        string outside = Samples.NewFolder();
        Samples.Shelve(outside);
        string folder = Samples.NewFolder();
        try
        {
            Directory.CreateSymbolicLink(Path.Combine(folder, "06-noon"), Path.Combine(outside, "06-noon"));
        }
        catch (Exception refused) when (OperatingSystem.IsWindows() && refused is IOException or UnauthorizedAccessException)
        {
            // Windows lets only developers and administrators make links: then there is no link to follow either.
            return;
        }

        var problem = Assert.Throws<NotebookFormatException>(() => new LessonShelf(folder).Find("06-noon"));
        Assert.Contains("leads out of", problem.Message);
        Assert.Empty(new LessonShelf(folder).Lessons());
    }

    [Fact]
    public void A_folder_without_the_lessons_facts_is_named_and_the_others_stay()
    {
        string folder = Samples.NewFolder();
        Samples.Shelve(folder);
        Directory.CreateDirectory(Path.Combine(folder, "07-sun"));
        File.WriteAllText(Path.Combine(folder, "07-sun", "lesson.ipynb"), Notebook.Empty().ToJson());
        var shelf = new LessonShelf(folder);
        Assert.Single(shelf.Lessons());
        Assert.Equal("07-sun/lesson.ipynb does not say which lesson it is: its metadata \"sunlessons\" needs \"id\" (lower-case letters, digits, hyphens), \"title\", \"number\" and \"minutes\" (whole, from 1); add them.", Assert.Single(shelf.Problems()));
    }

    [Fact]
    public void A_shelf_whose_folder_is_not_there_is_empty() => Assert.Empty(new LessonShelf(Path.Combine(Samples.NewFolder(), "none")).Lessons());
}
