using NodaTime;
using SunLessons.CivilTime;

namespace SunLessons.Tests.CivilTime;

/// <summary>A later time-zone database from a file.</summary>
public sealed class LaterZoneRulesTests
{
    private static readonly Instant July = Instant.FromUtc(2027, 7, 1, 12, 0);

    [Fact]
    public void LaterRulesAnswerWithTheNewLawAndNameTheirVersion()
    {
        var later = TimeZoneRules.Read(new MemoryStream(LaterZoneFile.Make()));
        Assert.Equal("2027a", later.Version);
        Assert.True(later.IsLaterThan(TimeZoneRules.BuiltIn));
        Assert.False(TimeZoneRules.BuiltIn.IsLaterThan(later));
        Assert.False(later.IsLaterThan(later));
        Assert.Equal(Offset.Zero, Found(later, "Europe/Madrid").RuleAt(July).WallOffset);
        Assert.Equal(Offset.FromHours(2), Found(TimeZoneRules.BuiltIn, "Europe/Madrid").RuleAt(July).WallOffset);

        // A zone that was not changed is as before; names are found in the same ways.
        Assert.Equal("UTC+5:45", Found(later, "asia/kathmandu").RuleAt(July).ToString());
        Assert.Equal("UTC+3:30", Found(later, "+3:30").Id);
        Assert.Contains("time-zone database 2027a", Assert.IsType<ZoneAnswer.Unknown>(later.Find("Nowhere")).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void ReadingAFileChangesNothingThatIsInUse()
    {
        TimeZoneRules.Read(new MemoryStream(LaterZoneFile.Make()));
        Assert.Same(TimeZoneRules.BuiltIn, TimeZoneRules.InUse);
        Assert.Equal(TimeZoneRules.BuiltIn.Version, CivilZones.TzdbVersion);
    }

    // The second of NodaTime's own copy, byte for byte: what the built-in rules are made of can be read as a file.
    [Fact]
    public void TheBuiltInDatabaseIsReadAsAFileToo()
    {
        var same = TimeZoneRules.Read(new MemoryStream(LaterZoneFile.BuiltIn()));
        Assert.Equal(TimeZoneRules.BuiltIn.Version, same.Version);
        Assert.Equal(TimeZoneRules.BuiltIn.Ids, same.Ids);
        Assert.False(same.IsLaterThan(TimeZoneRules.BuiltIn));
    }

    [Theory]
    [InlineData("junk", "The file is not a time-zone database in NodaTime's format, or is damaged; give one such as tzdb2026f.nzd (")]
    [InlineData("empty", "The file is not a time-zone database in NodaTime's format, or is damaged; give one such as tzdb2026f.nzd (")]
    [InlineData("cut off", "The file is not a time-zone database in NodaTime's format, or is damaged; give one such as tzdb2026f.nzd (")]
    [InlineData("large", "The file is too large for a time-zone database (more than 4 MB); give one in NodaTime's format, such as tzdb2026f.nzd.")]
    [InlineData("version", "The time-zone database calls its version \"test\", which is not a year and a letter such as 2026f; get the file anew.")]
    public void AFileThatCannotBeUsedGetsOneSentence(string what, string begins)
    {
        var good = LaterZoneFile.Make();
        var file = what switch
        {
            "junk" => [0, 1, 2, 3, 250, 251, 17, 4],
            "empty" => [],
            "cut off" => good[..(good.Length * 2 / 3)],
            "large" => new byte[5_000_000],
            _ => LaterZoneFile.Make("test"),
        };
        var error = Assert.Throws<FormatException>(() => TimeZoneRules.Read(new MemoryStream(file)));
        Assert.StartsWith(begins, error.Message, StringComparison.Ordinal);
        Assert.EndsWith(".", error.Message, StringComparison.Ordinal);
    }

    // TZDB never drops a name ("backward" keeps the old ones), so a database without one is not whole.
    [Fact]
    public void ADatabaseThatLacksAZoneIsRefused()
    {
        var error = Assert.Throws<FormatException>(() => TimeZoneRules.Read(new MemoryStream(LaterZoneFile.Make(without: "Africa/Nairobi"))));
        Assert.Contains("Nairobi", error.Message, StringComparison.Ordinal);
    }

    private static CivilZone Found(TimeZoneRules rules, string id) => Assert.IsType<ZoneAnswer.Found>(rules.Find(id)).Zone;
}
