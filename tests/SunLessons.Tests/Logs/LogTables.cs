using NodaTime;
using SunLessons.Logs;

namespace SunLessons.Tests.Logs;

public class LogTables
{
    private const string Heading = "date_year_month_day,clock_hours_minutes,dial_hours_minutes,who,note\n";

    [Fact]
    public void A_log_survives_a_round_trip()
    {
        const string Text = "# invented readings\r\n" + Heading
            + "2026-03-20,13:41,12:00,Aino,\"cloud, then sun\"\n\n2026-06-21,14:36:30,11:39.2,,\"she said \"\"now\"\"\"\n";
        var log = ObservationLog.Parse(Text);
        Assert.Equal(2, log.Observations.Count);
        Assert.Equal(new Observation(3, new LocalDateTime(2026, 3, 20, 13, 41), DialTime.FromHours(12), "Aino", "cloud, then sun"), log.Observations[0]);
        Assert.Equal(new LocalDateTime(2026, 6, 21, 14, 36, 30), log.Observations[1].Clock);
        Assert.Equal(11.6533, log.Observations[1].Shown.Hours, 4);
        var again = ObservationLog.Parse(log.ToString());
        Assert.Equal(log.ToString(), again.ToString());
        Assert.Equal("she said \"now\"", again.Observations[1].Note);
    }

    [Fact]
    public void A_clock_may_be_followed_by_what_it_was_ahead_of_utc()
    {
        var log = ObservationLog.Parse(Heading + "2026-10-25,02:55 UTC+2,12:00,,\n2026-06-21,12:36 UTC,11:39.2,,\n2026-06-21,09:00 -3:30,11:39.2,,\n");
        Assert.Equal([Offset.FromHours(2), Offset.Zero, Offset.FromHoursAndMinutes(-3, -30)], log.Observations.Select(o => o.ClockOffset));
        Assert.Equal(log.ToString(), ObservationLog.Parse(log.ToString()).ToString());
    }

    [Theory]
    [InlineData("2026-06-21,13:41 summer,12:00,a,b", "Line 2: \"summer\" after the clock's time is not an offset from UTC-18 to UTC+18; write such as 02:30 UTC+2, or the time alone.")]
    [InlineData("21/06/2026,13:41,12:00,a,b", "Line 2: date \"21/06/2026\" is not a day as year-month-day; write 2026-06-21.")]
    [InlineData("2026-06-21,25:41,12:00,a,b", "Line 2: clock \"25:41\" is not a time from 00:00 to 23:59; write hours and minutes such as 14:36, 14:36.5 or 14:36:30.")]
    [InlineData("2026-06-21,13:41,12:60,a,b", "Line 2: dial \"12:60\" is not a time from 00:00 to 23:59; write hours and minutes such as 14:36, 14:36.5 or 14:36:30.")]
    [InlineData("2026-06-21,13:41,noon,a,b", "Line 2: dial \"noon\" is not a time from 00:00 to 23:59; write hours and minutes such as 14:36, 14:36.5 or 14:36:30.")]
    [InlineData("2026-06-21,13:41,12:00,a", "Line 2: there are 4 cells where 5 belong (date_year_month_day,clock_hours_minutes,dial_hours_minutes,who,note); put a cell that holds a comma into double quotes.")]
    [InlineData("2026-06-21,13:41,12:00,a,\"b", "Line 2: a double quote is opened and never closed; close it, or write two for one that is meant.")]
    public void A_bad_line_gets_one_sentence_with_its_number(string line, string sentence) =>
        Assert.Equal(sentence, Assert.Throws<FormatException>(() => ObservationLog.Parse(Heading + line)).Message);

    [Fact]
    public void A_bad_heading_and_an_empty_table_get_one_sentence()
    {
        Assert.Equal(
            "Line 1: the heading is \"date,clock\", but it must be date_year_month_day,clock_hours_minutes,dial_hours_minutes,who,note.",
            Assert.Throws<FormatException>(() => ObservationLog.Parse("date,clock\n")).Message);
        Assert.StartsWith("The table is empty; begin it with the line date_year", Assert.Throws<FormatException>(() => ObservationLog.Parse("\n")).Message);
    }
}
