using NodaTime;
using NodaTime.TimeZones;
using SunLessons.CivilTime;

namespace SunLessons.Tests.CivilTime;

/// <summary>Local mean time from the longitude.</summary>
public sealed class LocalMeanTimeTests
{
    // The time-zone database keeps each zone's local mean time from before there were zones, and where the zone's town lies: two facts of one source
    // that were gathered apart. A minute of arc is 4 s; towns' own observatories and rounding make the rest, so most agree within 10 s and nearly all within a minute.
    [Fact]
    public void ItIsTheTimeThatTownsKeptBeforeThereWereZones()
    {
        var off = new List<double>();
        foreach (var location in TzdbDateTimeZoneSource.Default.ZoneLocations!)
        {
            var first = DateTimeZoneProviders.Tzdb[location.ZoneId].GetZoneInterval(Instant.FromUtc(1800, 1, 1, 0, 0));

            // A zone that is another's alias today has that one's old time too.
            if (first.Name == "LMT" && TzdbDateTimeZoneSource.Default.CanonicalIdMap[location.ZoneId] == location.ZoneId)
            {
                off.Add((LocalMeanTime.AheadOfUtc(Longitude.FromDegrees(location.Longitude)).TotalSeconds - first.WallOffset.Seconds + 43200.0) % 86400.0 - 43200.0);
            }
        }

        off = [.. off.Select(Math.Abs).Order()];
        Assert.True(off.Count > 250, $"{off.Count} zones");
        Assert.InRange(off[off.Count / 2], 0.0, 10.0);
        Assert.InRange(off[off.Count * 9 / 10], 0.0, 60.0);
    }

    // 4 minutes to the degree (common practice, no source): Vigo, 8.72 degrees west, is 34.88 minutes behind universal time.
    [Fact]
    public void ThereAndBackAgain()
    {
        var vigo = Longitude.FromDegrees(-8.72);
        var instant = Instant.FromUtc(2026, 6, 21, 12, 34, 52) + Duration.FromMilliseconds(800);
        var clock = LocalMeanTime.ClockAt(vigo, instant);
        Assert.Equal(new LocalDateTime(2026, 6, 21, 12, 0), clock);
        Assert.Equal(instant, LocalMeanTime.InstantOf(vigo, clock));

        // Over midnight and the date line.
        Assert.Equal(new LocalDateTime(2026, 6, 22, 0, 0), LocalMeanTime.ClockAt(Longitude.FromDegrees(180.0), Instant.FromUtc(2026, 6, 21, 12, 0)));
        Assert.Equal(new LocalDateTime(2026, 6, 21, 0, 0), LocalMeanTime.ClockAt(Longitude.FromDegrees(-180.0), Instant.FromUtc(2026, 6, 21, 12, 0)));
    }
}
