using NodaTime;
using SunLessons.CivilTime;

namespace SunLessons.Tests.CivilTime;

/// <summary>Finding a zone by what a person typed.</summary>
public sealed class CivilZonesTests
{
    [Theory]
    [InlineData("Europe/Madrid", "Europe/Madrid")]
    [InlineData(" europe/madrid ", "Europe/Madrid")]
    [InlineData("america/st johns", "America/St_Johns")]
    [InlineData("Asia/Katmandu", "Asia/Katmandu")] // an old name is a name
    [InlineData("UTC", "UTC")]
    [InlineData("Etc/GMT-1", "Etc/GMT-1")]
    [InlineData("+5:45", "UTC+5:45")]
    [InlineData("utc+05:45", "UTC+5:45")]
    [InlineData("UTC-3:30", "UTC-3:30")]
    [InlineData("−3", "UTC-3")]
    public void AZoneIsFoundWhateverItsSpelling(string typed, string id) =>
        Assert.Equal(id, Assert.IsType<ZoneAnswer.Found>(CivilZones.Find(typed)).Zone.Id);

    [Fact]
    public void AFixedOffsetHasNoDaylightTime()
    {
        var rule = CivilZones.Get("+5:45").RuleAt(Instant.FromUtc(2026, 7, 1, 0, 0));
        Assert.Equal(5.75, rule.BaseHours);
        Assert.Equal(86.25, rule.Meridian.Degrees, 1e-12);
        Assert.False(rule.IsDaylightTime);
    }

    [Theory]
    [InlineData("Europe/Madird", "Europe/Madrid")]
    [InlineData("Madrid", "Europe/Madrid")]
    [InlineData("Kathmandoo", "Asia/Kathmandu")]
    [InlineData("Ushuaia", "America/Argentina/Ushuaia")]
    [InlineData("Europe/Tromso", "Europe/Rome")]
    public void AnUnknownZoneComesWithNearMatches(string typed, string among)
    {
        var unknown = Assert.IsType<ZoneAnswer.Unknown>(CivilZones.Find(typed));
        Assert.Contains(among, unknown.NearMatches);
    }

    [Fact]
    public void TheMessageSaysWhatCameWhatIsAllowedAndWhatToWrite()
    {
        var error = Assert.Throws<ArgumentException>(() => CivilZones.Get("Madird"));
        Assert.StartsWith(
            "Zone \"Madird\" is not in the time-zone database 2026f; a zone is an id such as Europe/Madrid or an offset from UTC-18 to UTC+18 such as UTC+5:45. "
            + "Did you mean Europe/Madrid?",
            error.Message,
            StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("")]
    [InlineData("+19")]
    [InlineData("+5:60")]
    [InlineData("xyzzyxyzzy")]
    public void NonsenseHasNoNearMatchAndTheMessageSaysWhereToLook(string typed)
    {
        var unknown = Assert.IsType<ZoneAnswer.Unknown>(CivilZones.Find(typed));
        Assert.Empty(unknown.NearMatches);
        Assert.EndsWith("Look the id of your zone up by its largest town.", unknown.Message, StringComparison.Ordinal);
    }
}
