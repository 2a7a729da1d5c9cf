using NodaTime;
using NodaTime.TimeZones;

namespace SunLessons.CivilTime;

/// <summary>
/// The zones of the time-zone database (TZDB) that travels inside NodaTime: no file and no network is asked.
/// Fixed offsets from UTC such as <c>UTC+5:45</c> are accepted too, for a place typed by its offset alone.
/// </summary>
public static class CivilZones
{
    private static readonly TzdbDateTimeZoneSource Source = TzdbDateTimeZoneSource.Default;

    private static readonly Lazy<IReadOnlyDictionary<string, string>> ByFoldedId = new(() =>
    {
        // Folding joins Etc/GMT-1 with Etc/GMT+1: such ids are found by their exact spelling only.
        return Source.GetIds()
            .GroupBy(NearMatches.Fold)
            .Where(g => g.Count() == 1)
            .ToDictionary(g => g.Key, g => g.Single());
    });

    /// <summary>The version of the rules, such as <c>2026f</c>: laws of clocks change, so a printed result names it.</summary>
    public static string TzdbVersion => Source.TzdbVersion;

    /// <summary>All ids of the database in alphabetical order, old names included.</summary>
    public static IReadOnlyList<string> Ids { get; } = [.. TzdbDateTimeZoneSource.Default.GetIds().Order(StringComparer.Ordinal)];

    /// <summary>
    /// Looks a zone up by its id, whatever the case (<c>europe/madrid</c>), or by a fixed offset (<c>+5:45</c>, <c>UTC-3:30</c>, <c>UTC</c>).
    /// </summary>
    public static ZoneAnswer Find(string id)
    {
        ArgumentNullException.ThrowIfNull(id);
        var typed = id.Trim();
        var exact = DateTimeZoneProviders.Tzdb.GetZoneOrNull(typed);
        if (Source.GetIds().Contains(typed) && exact is not null)
        {
            return new ZoneAnswer.Found(new CivilZone(typed, exact));
        }

        if (OffsetText.TryRead(typed, out var offset))
        {
            return new ZoneAnswer.Found(new CivilZone(OffsetText.Utc(offset), DateTimeZone.ForOffset(offset)));
        }

        if (ByFoldedId.Value.TryGetValue(NearMatches.Fold(typed), out var known))
        {
            return new ZoneAnswer.Found(new CivilZone(known, DateTimeZoneProviders.Tzdb[known]));
        }

        return new ZoneAnswer.Unknown(typed, NearMatches.Of(typed, Ids, Spellings));
    }

    /// <summary>The zone of an id that must be there; as <see cref="Find"/>.</summary>
    /// <exception cref="ArgumentException">No such zone; the message is one sentence with the nearest ids.</exception>
    public static CivilZone Get(string id) => Find(id) switch
    {
        ZoneAnswer.Found found => found.Zone,
        ZoneAnswer.Unknown unknown => throw new ArgumentException(unknown.Message, nameof(id)),
        _ => throw new InvalidOperationException("A zone is found or unknown."),
    };

    // A person types the town alone as often as the whole id.
    private static IEnumerable<string> Spellings(string id) => [id, id[(id.LastIndexOf('/') + 1)..]];
}
