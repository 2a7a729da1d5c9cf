using System.Text.RegularExpressions;
using SunLessons.Publishing.Tests.Support;

namespace SunLessons.Publishing.Tests;

public sealed partial class PublisherTests(PublishedLessons published)
{
    // The project's own limits for a download that a school's network and a phone can carry.
    [Fact]
    public void The_player_the_compiler_and_each_lesson_stay_small()
    {
        long Size(string file) => new FileInfo(Path.Combine(published.Folder, file)).Length;
        Assert.InRange(Size("shared/player.js"), 1, 6_000_000);
        Assert.InRange(Size("shared/player.js") + Size("shared/compiler.js"), 1, 12_000_000);
        foreach (var lesson in PublishedLessons.Shelf.Lessons())
        {
            Assert.InRange(Size(lesson.Folder + ".html"), 1, 300_000);
        }
    }

    [Fact]
    public void No_page_names_a_script_style_font_or_picture_of_another_address()
    {
        foreach (var file in published.Files.Where(file => file.EndsWith(".html", StringComparison.Ordinal) || file.EndsWith(".css", StringComparison.Ordinal)))
        {
            var text = File.ReadAllText(Path.Combine(published.Folder, file));
            Assert.DoesNotMatch(ForeignPart(), text);
        }
    }

    [Fact]
    public void A_translated_lesson_has_a_page_of_its_language_and_each_page_leads_to_the_other()
    {
        string Text(string file) => File.ReadAllText(Path.Combine(published.Folder, file));
        var spanish = Text("06-your-own-noon.es.html");
        Assert.Contains("<html lang=\"es\"", spanish, StringComparison.Ordinal);
        Assert.Contains("suma 32,7 min: el cuadrante est&#225; al oeste del meridiano de referencia", spanish, StringComparison.Ordinal);
        Assert.Contains("<a href=\"06-your-own-noon.html\" lang=\"en\"", spanish, StringComparison.Ordinal);
        Assert.Contains("<a href=\"06-your-own-noon.es.html\" lang=\"es\"", Text("06-your-own-noon.html"), StringComparison.Ordinal);
        Assert.DoesNotContain("Record my prediction", spanish, StringComparison.Ordinal);

        // The list of lessons in Spanish: one lesson in Spanish, the others in English.
        var list = Text("index.es.html");
        Assert.Contains("<a href=\"06-your-own-noon.es.html\" hreflang=\"es\">Tu propio mediod&#237;a</a>", list, StringComparison.Ordinal);
        Assert.Contains("<a href=\"04-a-dial-that-moved-house.html\" hreflang=\"en\" lang=\"en\">", list, StringComparison.Ordinal);
        Assert.Contains("<a href=\"index.es.html\" lang=\"es\"", Text("index.html"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_same_lessons_give_the_same_files()
    {
        var again = Directory.CreateTempSubdirectory("sunlessons-again-").FullName;
        try
        {
            await PublishedLessons.NewPublisher().PublishAsync(PublishedLessons.Shelf, again, singleFile: false);
            foreach (var file in published.Files)
            {
                Assert.True(File.ReadAllBytes(Path.Combine(again, file)).AsSpan().SequenceEqual(File.ReadAllBytes(Path.Combine(published.Folder, file))), $"{file} differs from one publishing to the next.");
            }
        }
        finally
        {
            Directory.Delete(again, recursive: true);
        }
    }

    [Theory]
    [InlineData("var a = 1;\nvar b = System.Linq.Expressions.Expression.Constant(a).Nothing();", "own, cell \"only\", line 2: ")]
    [InlineData("var n = 1;\nreturn n.Missing;", "own, cell \"only\", line 2: 'int' does not contain a definition for 'Missing'")]
    [InlineData("throw new InvalidOperationException(\"no shadow\");", "own, cell \"only\": InvalidOperationException: no shadow")]
    public async Task A_cell_that_cannot_run_in_a_page_is_named_with_its_line_and_nothing_is_written(string cell, string sentence)
    {
        using var own = new OwnLesson(cell);
        var problem = await Assert.ThrowsAsync<PublishProblemException>(() => PublishedLessons.NewPublisher().PublishAsync(own.Shelf, own.Out, singleFile: false));
        Assert.StartsWith(sentence, problem.Message, StringComparison.Ordinal);
        Assert.False(Directory.Exists(own.Out));
    }

    [Fact]
    public async Task A_folder_without_lessons_is_said_to_be_one()
    {
        var problem = await Assert.ThrowsAsync<PublishProblemException>(() => PublishedLessons.NewPublisher().PublishAsync(new Notebooks.LessonShelf(published.Folder), published.Folder + "-out", singleFile: false));
        Assert.Contains("There are no lessons in", problem.Message, StringComparison.Ordinal);
    }

    [GeneratedRegex("""(?:src|href)="(?:https?:)?//[^"]*\.(?:js|css|woff2?|png|svg)"|url\(["']?https?:|@import""")]
    private static partial Regex ForeignPart();
}
