using NodaTime;
using SunLessons.CivilTime;

namespace SunLessons.Tests.CivilTime;

/// <summary>Base offset and daylight amount against the facts of TZDB 2026f in authorities/time.</summary>
public sealed class ClockRuleTests
{
    [Fact]
    public void TheRulesAreThoseOfTheVersionTheFactsWereMadeWith() => Assert.Equal("2026f", CivilZones.TzdbVersion);

    // authorities/time/nodatime_zone_facts_output.txt, lines "2026 Jan ... Jul ...": wall = std + savings.
    [Theory]
    [InlineData("Europe/London", 1, 0.0, 0.0)]
    [InlineData("Europe/London", 7, 0.0, 60.0)]
    [InlineData("Europe/Madrid", 1, 1.0, 0.0)]
    [InlineData("Europe/Madrid", 7, 1.0, 60.0)]
    [InlineData("Asia/Kathmandu", 7, 5.75, 0.0)]
    [InlineData("Pacific/Chatham", 1, 12.75, 60.0)]
    [InlineData("Pacific/Chatham", 7, 12.75, 0.0)]
    [InlineData("Australia/Lord_Howe", 1, 10.5, 30.0)]
    [InlineData("Australia/Lord_Howe", 7, 10.5, 0.0)]
    [InlineData("Australia/Eucla", 1, 8.75, 0.0)]
    [InlineData("America/St_Johns", 1, -3.5, 0.0)]
    [InlineData("America/St_Johns", 7, -3.5, 60.0)]
    [InlineData("Pacific/Marquesas", 1, -9.5, 0.0)]
    [InlineData("Pacific/Kiritimati", 1, 14.0, 0.0)]
    [InlineData("Antarctica/Troll", 7, 0.0, 120.0)]
    public void BaseOffsetAndDaylightTimeAreTheDatabasesOwnWhereSavingIsPositive(string zone, int month, double baseHours, double daylightMinutes)
    {
        var rule = CivilZones.Get(zone).RuleAt(Instant.FromUtc(2026, month, 15, 12, 0));
        Assert.Equal(baseHours, rule.BaseHours);
        Assert.Equal(daylightMinutes, rule.DaylightMinutes);
        Assert.Equal(15.0 * baseHours, rule.Meridian.Degrees, 1e-12); // 15 degrees to the hour: common practice, no source
    }

    // The database writes these with NEGATIVE saving (lines "negative ..." of the facts); taught as base + daylight they are:
    [Theory]
    [InlineData("Europe/Dublin", 2026, 1, 15, 0.0, 0.0)]
    [InlineData("Europe/Dublin", 2026, 7, 15, 0.0, 60.0)]
    [InlineData("Africa/Casablanca", 2026, 3, 1, 0.0, 0.0)] // Ramadan
    [InlineData("Africa/Casablanca", 2026, 7, 15, 0.0, 60.0)]
    [InlineData("Africa/Casablanca", 2025, 12, 31, 0.0, 60.0)] // the saving of the same year lies behind
    [InlineData("Africa/Casablanca", 2026, 12, 31, 0.0, 0.0)] // from September 2026 on UTC+0 by law
    [InlineData("Africa/El_Aaiun", 2026, 7, 15, 0.0, 60.0)]
    [InlineData("Europe/Dublin", 1970, 7, 15, 1.0, 0.0)] // no winter clock between October 1968 and October 1971
    [InlineData("Europe/Dublin", 1960, 7, 15, 0.0, 60.0)] // before that the saving was positive
    public void NegativeSavingIsToldAsTheSmallerOffsetOfTheYearPlusDaylightTime(
        string zone, int year, int month, int day, double baseHours, double daylightMinutes)
    {
        var rule = CivilZones.Get(zone).RuleAt(Instant.FromUtc(year, month, day, 12, 0));
        Assert.Equal(baseHours, rule.BaseHours);
        Assert.Equal(daylightMinutes, rule.DaylightMinutes);
    }

    [Fact]
    public void NowhereIsDaylightTimeNegativeAndTheSumIsAlwaysTheWallClock()
    {
        var checks = 0;
        foreach (var id in CivilZones.Ids)
        {
            var zone = CivilZones.Get(id);
            foreach (var interval in zone.Zone.GetZoneIntervals(Instant.FromUtc(1880, 1, 1, 0, 0), Instant.FromUtc(2030, 1, 1, 0, 0)))
            {
                if (!interval.HasStart)
                {
                    continue; // the mean time of the town, before any law
                }

                var at = interval.Start;
                var rule = zone.RuleAt(at);
                Assert.True(rule.Daylight >= Offset.Zero, $"{id} {at}");
                Assert.Equal(interval.WallOffset, rule.WallOffset);
                checks++;
            }
        }

        Assert.True(checks > 10_000, $"only {checks} intervals were seen");
    }

    [Fact]
    public void RulesAreWordedForPeople()
    {
        var july = Instant.FromUtc(2026, 7, 15, 12, 0);
        Assert.Equal("UTC+1 and 60 min daylight time", CivilZones.Get("Europe/Madrid").RuleAt(july).ToString());
        Assert.Equal("UTC+5:45", CivilZones.Get("Asia/Kathmandu").RuleAt(july).ToString());
        Assert.Equal("UTC-3:30 and 60 min daylight time", CivilZones.Get("America/St_Johns").RuleAt(july).ToString());
        Assert.Equal("UTC-0:44:30", CivilZones.Get("Africa/Monrovia").RuleAt(Instant.FromUtc(1950, 1, 1, 0, 0)).ToString());
    }
}
