using NodaTime;
using SunLessons.CivilTime;

namespace SunLessons.Tests.CivilTime;

/// <summary>A clock reading means one instant, none or two; nothing is chosen silently.</summary>
public sealed class ClockAnswerTests
{
    [Fact]
    public void AnOrdinaryReadingIsOneInstant()
    {
        var one = Assert.IsType<ClockAnswer.One>(CivilZones.Get("Europe/Madrid").InstantOf(new LocalDateTime(2026, 8, 21, 14, 35)));
        Assert.Equal(Instant.FromUtc(2026, 8, 21, 12, 35), one.Instant);
        Assert.Equal("14:35 on 21 August 2026 in Europe/Madrid is 12:35 UTC (UTC+1 and 60 min daylight time).", one.Message);
    }

    // European Union, Directive 2000/84/EC: the last Sundays of March and October, at 01:00 UTC.
    [Fact]
    public void AReadingThatDaylightTimeSkippedNamesBothAnswers()
    {
        var skipped = Assert.IsType<ClockAnswer.Skipped>(CivilZones.Get("Europe/Madrid").InstantOf(new LocalDateTime(2026, 3, 29, 2, 30)));
        Assert.Equal(Instant.FromUtc(2026, 3, 29, 1, 0), skipped.Change);
        Assert.Equal(Duration.FromHours(1), skipped.MovedForward);
        Assert.Equal(Instant.FromUtc(2026, 3, 29, 0, 30), skipped.JustBefore);
        Assert.Equal(Instant.FromUtc(2026, 3, 29, 1, 30), skipped.JustAfter);
        Assert.Equal(
            "Clock time 02:30 on 29 March 2026 does not exist in Europe/Madrid: the clock was moved from 02:00 to 03:00. Write 01:30 or 03:30.",
            skipped.Message);
    }

    [Fact]
    public void AReadingThatHappenedTwiceNamesBothAnswers()
    {
        var doubled = Assert.IsType<ClockAnswer.Doubled>(CivilZones.Get("Europe/Madrid").InstantOf(new LocalDateTime(2026, 10, 25, 2, 30)));
        Assert.Equal(Instant.FromUtc(2026, 10, 25, 0, 30), doubled.Earlier);
        Assert.Equal(Instant.FromUtc(2026, 10, 25, 1, 30), doubled.Later);
        Assert.True(doubled.RuleEarlier.IsDaylightTime);
        Assert.False(doubled.RuleLater.IsDaylightTime);
        Assert.Equal(
            "Clock time 02:30 on 25 October 2026 happens twice in Europe/Madrid: first at 00:30 UTC (UTC+1 and 60 min daylight time), "
            + "again at 01:30 UTC (UTC+1). Say which one you mean: the earlier or the later.",
            doubled.Message);
    }

    // Facts: Lord Howe Island's daylight time is half an hour; first Sunday of October at 02:00 local.
    [Fact]
    public void LordHoweSkipsHalfAnHour()
    {
        var zone = CivilZones.Get("Australia/Lord_Howe");
        var skipped = Assert.IsType<ClockAnswer.Skipped>(zone.InstantOf(new LocalDateTime(2026, 10, 4, 2, 15)));
        Assert.Equal(Duration.FromMinutes(30), skipped.MovedForward);
        Assert.Equal(new LocalDateTime(2026, 10, 4, 2, 0), skipped.MovedFrom);
        Assert.Equal(new LocalDateTime(2026, 10, 4, 2, 30), skipped.MovedTo);
        Assert.IsType<ClockAnswer.One>(zone.InstantOf(new LocalDateTime(2026, 10, 4, 2, 30)));
        Assert.IsType<ClockAnswer.One>(zone.InstantOf(new LocalDateTime(2026, 10, 4, 1, 59)));
    }

    // Facts: Ireland moves in March from +0 to +1, though the database calls the summer clock standard.
    [Fact]
    public void DublinSkipsAnHourInMarchLikeItsNeighbours()
    {
        var skipped = Assert.IsType<ClockAnswer.Skipped>(CivilZones.Get("Europe/Dublin").InstantOf(new LocalDateTime(2026, 3, 29, 1, 30)));
        Assert.Equal("UTC+0", skipped.RuleBefore.ToString());
        Assert.Equal("UTC+0 and 60 min daylight time", skipped.RuleAfter.ToString());
    }

    // Samoa went over the date line on 29 December 2011 (time-zone database, "australasia"): Friday the 30th did not happen.
    [Fact]
    public void SamoaSkippedAWholeDayAndTheAnswersCarryTheirDates()
    {
        var skipped = Assert.IsType<ClockAnswer.Skipped>(CivilZones.Get("Pacific/Apia").InstantOf(new LocalDateTime(2011, 12, 30, 12, 0)));
        Assert.Equal(Duration.FromHours(24), skipped.MovedForward);
        Assert.EndsWith("Write 12:00 on 29 December 2011 or 12:00 on 31 December 2011.", skipped.Message, StringComparison.Ordinal);
    }
}
