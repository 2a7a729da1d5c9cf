namespace SunLessons.CivilTime;

/// <summary>
/// The zones of the time-zone database in use (<see cref="TimeZoneRules.InUse"/>): no file and no network is asked.
/// Fixed offsets from UTC such as <c>UTC+5:45</c> are accepted too, for a place typed by its offset alone.
/// </summary>
public static class CivilZones
{
    /// <summary>The version of the rules, such as <c>2026f</c>: laws of clocks change, so a printed result names it.</summary>
    public static string TzdbVersion => TimeZoneRules.InUse.Version;

    /// <summary>All ids of the database in alphabetical order, old names included.</summary>
    public static IReadOnlyList<string> Ids => TimeZoneRules.InUse.Ids;

    /// <summary>
    /// Looks a zone up by its id, whatever the case (<c>europe/madrid</c>), or by a fixed offset (<c>+5:45</c>, <c>UTC-3:30</c>, <c>UTC</c>).
    /// </summary>
    public static ZoneAnswer Find(string id) => TimeZoneRules.InUse.Find(id);

    /// <summary>The zone of an id that must be there; as <see cref="Find"/>.</summary>
    /// <exception cref="ArgumentException">No such zone; the message is one sentence with the nearest ids.</exception>
    public static CivilZone Get(string id) => Find(id) switch
    {
        ZoneAnswer.Found found => found.Zone,
        ZoneAnswer.Unknown unknown => throw new ArgumentException(unknown.Message, nameof(id)),
        _ => throw new InvalidOperationException("A zone is found or unknown."),
    };
}
