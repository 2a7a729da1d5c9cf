using System.Text.Json.Nodes;

namespace SunLessons.Cells.Tests;

public class ExplanationTests
{
    [Fact]
    public void The_learners_words_are_kept_and_come_back()
    {
        var page = new Page();
        page.Lesson.Show(page.Lesson.Explain("why", "Why did it come out otherwise?"));

        page.Last("TextModel").ChangeFromPage(JsonValue.Create("Vigo lies <far> west."));

        Assert.Equal("explanation:why", page.Host.Recorded[^1].Key);
        var later = new Page(record: page.Host.FrontEnd.Record);
        var again = later.Lesson.Explain("why", "Why did it come out otherwise?");
        later.Lesson.Show(again);
        Assert.Equal("Vigo lies <far> west.", again.Text);
        Assert.Equal("Vigo lies <far> west.", (string?)later.Last("TextModel").State["value"]);
        Assert.Equal("Why did it come out otherwise?", (string?)later.Last("TextModel").State["_sunlessons_label"]);
    }

    [Fact]
    public void A_pasted_book_is_cut_and_the_page_is_told()
    {
        var page = new Page();
        var words = page.Lesson.Explain("why", "Why?");
        page.Lesson.Show(words);

        page.Last("TextModel").ChangeFromPage(JsonValue.Create(new string('a', 10_000)));

        Assert.Equal(4000, words.Text.Length);
        Assert.Equal(4000, ((string)page.Last("TextModel").State["value"]!).Length);
    }
}
