using System.Text.RegularExpressions;
using NodaTime;
using NodaTime.Text;
using SunLessons.CivilTime;

namespace SunLessons.Tests.CivilTime;

/// <summary>Every line of authorities/time/nodatime_zone_facts_output.txt that tells of a zone's history or odd offset.</summary>
public sealed partial class ZoneFactsTests
{
    private static readonly string[] Lines = Authorities.Lines("time", "nodatime_zone_facts_output.txt");

    [Fact]
    public void EveryHistoricChangeShowsTheWallClockOfTheFacts()
    {
        var zone = default(CivilZone);
        var checks = 0;
        foreach (var line in Lines)
        {
            if (line.StartsWith("--", StringComparison.Ordinal))
            {
                zone = CivilZones.Get(line[2..]);
            }
            else if (HistoryLine().Match(line) is { Success: true } m && zone is not null)
            {
                var at = InstantPattern.General.Parse(m.Groups["start"].Value).Value;
                var rule = zone.RuleAt(at);
                Assert.Equal(OffsetPattern.GeneralInvariant.Parse(m.Groups["wall"].Value).Value, rule.WallOffset);
                Assert.Equal(OffsetPattern.GeneralInvariant.Parse(m.Groups["std"].Value).Value, rule.BaseOffset);
                Assert.Equal(m.Groups["name"].Value, rule.Abbreviation);
                checks++;
            }
        }

        Assert.True(checks > 80, $"only {checks} lines were read");
    }

    [Fact]
    public void EveryOddOffsetIsTheBaseOffsetOfItsZones()
    {
        var checks = 0;
        foreach (var line in Lines.Where(l => l.StartsWith("odd ", StringComparison.Ordinal)))
        {
            var m = OddLine().Match(line);
            var offset = OffsetPattern.GeneralInvariant.Parse(m.Groups["offset"].Value).Value;
            foreach (var id in m.Groups["ids"].Value.Split(", "))
            {
                Assert.Equal(offset, CivilZones.Get(id).RuleAt(Instant.FromUtc(2026, 1, 15, 12, 0)).BaseOffset);
                checks++;
            }
        }

        Assert.Equal(23, checks); // the zones named in the eleven "odd" lines
    }

    [GeneratedRegex(@"^  (?<start>\d{4}-\S+Z) (?<name>\S+) wall (?<wall>\S+) std (?<std>\S+) sav (?<sav>\S+)$")]
    private static partial Regex HistoryLine();

    [GeneratedRegex(@"^odd (?<offset>[+-][\d:]+): (?<ids>.+)$")]
    private static partial Regex OddLine();
}
