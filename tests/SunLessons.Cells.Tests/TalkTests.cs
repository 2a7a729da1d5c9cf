using System.Text.Json.Nodes;
using NodaTime;
using SunLessons.Places;
using SunLessons.Readings;

namespace SunLessons.Cells.Tests;

/// <summary>A reading explained one correction a press, and the controls in which it is entered.</summary>
public sealed class TalkTests
{
    private static readonly LocalDate Day = new(2026, 11, 3);

    [Fact]
    public void Each_press_shows_the_next_step_and_the_last_one_the_clock()
    {
        var page = new Page(place: Page.Vigo);
        var vigo = Gazetteer.Towns.First(t => t.Name == "Vigo");
        var read = (ClockReading.One)ClockFromDial.Read(vigo, Day, DialTime.FromHours(12));
        page.Lesson.Show(page.Lesson.Talk("talk", () => ClockFromDial.Read(page.Lesson.Here, Day, DialTime.FromHours(12))));
        Assert.Contains("The dial shows", page.Html("talk-card"), StringComparison.Ordinal);
        foreach (var step in read.Chain.Steps)
        {
            page.Press("talk-next");
            Assert.Contains(ReadingChain.TimeText(step.RunningTime), page.Html("talk-card"), StringComparison.Ordinal);
        }

        page.Press("talk-next");
        Assert.Contains("By the clock", page.Html("talk-card"), StringComparison.Ordinal);
        Assert.True((bool)page.Role("talk-next").State["disabled"]!);
        page.Press("talk-back");
        Assert.False((bool)page.Role("talk-next").State["disabled"]!);
    }

    [Fact]
    public void A_reading_that_fits_no_time_is_talked_about_as_that()
    {
        var page = new Page(place: Page.Vigo);
        var talk = page.Lesson.Talk("talk", () => ClockFromDial.Read(page.Lesson.Here, Day, DialTime.FromHours(2)));
        page.Lesson.Show(talk);
        Assert.Equal("No single time", Assert.Single(talk.Cards).Name);
        Assert.True((bool)page.Role("talk-next").State["disabled"]!);
    }

    [Fact]
    public void A_date_is_picked_kept_and_a_date_that_is_none_is_put_back()
    {
        var page = new Page(place: Page.Vigo);
        var date = page.Lesson.Date("day");
        page.Lesson.Show(date);
        Assert.Equal(new LocalDate(2026, 6, 21), date.Date);
        page.Role("date").ChangeFromPage(JsonNode.Parse("""{"value":{"year":2028,"month":1,"date":29}}""")!.AsObject());
        Assert.Equal(new LocalDate(2028, 2, 29), date.Date);
        page.Role("date").ChangeFromPage(JsonNode.Parse("""{"value":{"year":2027,"month":1,"date":29}}""")!.AsObject());
        Assert.Equal(new LocalDate(2028, 2, 29), date.Date);
        Assert.Equal(29, (int)page.Role("date").State["value"]!["date"]!);
        Assert.Equal(("control:day", """{"year":2028,"month":1,"date":29}"""), (page.Host.Recorded[^1].Key, page.Host.Recorded[^1].Value!.ToJsonString()));
    }

    [Theory]
    [InlineData("2101-01-01")]
    [InlineData("1899-12-31")]
    public void A_date_for_which_the_Sun_is_not_proved_is_refused(string date) =>
        Assert.Contains("outside 1900-01-01 to 2100-12-31", Assert.Throws<ArgumentException>(() => new Page().Lesson.Date("day", start: NodaTime.Text.LocalDatePattern.Iso.Parse(date).Value)).Message, StringComparison.Ordinal);

    [Fact]
    public void What_the_dial_shows_is_typed_and_junk_is_answered_while_the_last_time_holds()
    {
        var page = new Page(place: Page.Vigo);
        var shown = page.Lesson.DialShows("shown", start: DialTime.FromHoursMinutes(10, 30));
        page.Lesson.Show(shown);
        page.Last("TextModel").ChangeFromPage("14:05");
        Assert.Equal(14 + 5 / 60.0, shown.Time.Hours, 9);
        page.Last("TextModel").ChangeFromPage("noonish");
        Assert.Equal(14 + 5 / 60.0, shown.Time.Hours, 9);
        Assert.Contains("noonish", page.Html("status"), StringComparison.Ordinal);
        page.Last("TextModel").ChangeFromPage("8:00");
        Assert.Equal("", page.Html("status"));
    }
}
