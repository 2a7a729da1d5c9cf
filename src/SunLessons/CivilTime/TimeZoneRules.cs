using System.Text.RegularExpressions;
using NodaTime;
using NodaTime.TimeZones;

namespace SunLessons.CivilTime;

/// <summary>
/// One version of the time-zone database (TZDB). Immutable; <see cref="InUse"/> is the one that every answer here comes from.
/// </summary>
public sealed partial class TimeZoneRules
{
    // The whole database is some 130 kB.
    private const int MostBytes = 4_000_000;

    private static TimeZoneRules? _inUse;

    private readonly TzdbDateTimeZoneSource _source;
    private readonly IDateTimeZoneProvider _zones;
    private readonly HashSet<string> _ids;
    private readonly Lazy<IReadOnlyDictionary<string, string>> _byFoldedId;

    private TimeZoneRules(TzdbDateTimeZoneSource source, IDateTimeZoneProvider zones)
    {
        _source = source;
        _zones = zones;
        _ids = [.. source.GetIds()];
        Ids = [.. _ids.Order(StringComparer.Ordinal)];

        // Folding joins Etc/GMT-1 with Etc/GMT+1: such ids are found by their exact spelling only.
        _byFoldedId = new(() => Ids.GroupBy(NearMatches.Fold).Where(g => g.Count() == 1).ToDictionary(g => g.Key, g => g.Single()));
    }

    /// <summary>The database that travels inside NodaTime.</summary>
    public static TimeZoneRules BuiltIn { get; } = new(TzdbDateTimeZoneSource.Default, DateTimeZoneProviders.Tzdb);

    /// <summary>The database that answers in this process: <see cref="BuiltIn"/>, unless a program began with <see cref="Use"/>.</summary>
    public static TimeZoneRules InUse => Volatile.Read(ref _inUse) ?? BuiltIn;

    /// <summary>The version of the rules, such as <c>2026f</c>: the year and a letter that counts on within it.</summary>
    public string Version => _source.TzdbVersion;

    /// <summary>All ids of the database in alphabetical order, old names included.</summary>
    public IReadOnlyList<string> Ids { get; }

    internal IEnumerable<TzdbZoneLocation> Locations => _source.ZoneLocations ?? [];

    /// <summary>Takes a database into use in this process. For a program's start, before any zone was asked for.</summary>
    public static void Use(TimeZoneRules rules)
    {
        ArgumentNullException.ThrowIfNull(rules);
        Volatile.Write(ref _inUse, rules);
    }

    /// <summary>Reads a database from a file in NodaTime's format (NZD), as the NodaTime project makes one of each version of TZDB. Every zone in it is tried.</summary>
    /// <exception cref="FormatException">It is no such file, or lacks zones of <see cref="BuiltIn"/>; one sentence says which.</exception>
    public static TimeZoneRules Read(Stream file)
    {
        ArgumentNullException.ThrowIfNull(file);
        var bytes = new MemoryStream();
        var buffer = new byte[81920];
        for (var read = file.Read(buffer); read > 0; read = file.Read(buffer))
        {
            bytes.Write(buffer, 0, read);
            if (bytes.Length > MostBytes)
            {
                throw new FormatException("The file is too large for a time-zone database (more than 4 MB); give one in NodaTime's format, such as tzdb2026f.nzd.");
            }
        }

        TimeZoneRules rules;
        try
        {
            bytes.Position = 0;
            var source = TzdbDateTimeZoneSource.FromStream(bytes);
            source.Validate();
            rules = new TimeZoneRules(source, new DateTimeZoneCache(source));
            foreach (var id in rules.Ids)
            {
                _ = rules._zones[id];
            }
        }
        catch (Exception e) when (e is not OutOfMemoryException)
        {
            // NodaTime tells a wrong file by whatever its bytes happen to break first.
            throw new FormatException($"The file is not a time-zone database in NodaTime's format, or is damaged; give one such as tzdb2026f.nzd ({e.Message.TrimEnd('.')}).", e);
        }

        return !VersionPattern().IsMatch(rules.Version)
            ? throw new FormatException($"The time-zone database calls its version \"{rules.Version}\", which is not a year and a letter such as 2026f; get the file anew.")
            : BuiltIn.Ids.FirstOrDefault(id => !rules._ids.Contains(id)) is { } lacking
                ? throw new FormatException($"The time-zone database {rules.Version} lacks the zone {lacking}, which {BuiltIn.Version} has; get the file anew.")
                : rules;
    }

    /// <summary>Whether these rules are of a later version than others.</summary>
    public bool IsLaterThan(TimeZoneRules other)
    {
        ArgumentNullException.ThrowIfNull(other);

        // 2026za comes after 2026z (TZDB's own rule, from memory), which is the order of the letters too.
        return string.CompareOrdinal(Version, other.Version) > 0;
    }

    /// <summary>As <see cref="CivilZones.Find"/>.</summary>
    public ZoneAnswer Find(string id)
    {
        ArgumentNullException.ThrowIfNull(id);
        var typed = id.Trim();
        if (_ids.Contains(typed))
        {
            return new ZoneAnswer.Found(new CivilZone(typed, _zones[typed]));
        }

        if (OffsetText.TryRead(typed, out var offset))
        {
            return new ZoneAnswer.Found(new CivilZone(OffsetText.Utc(offset), DateTimeZone.ForOffset(offset)));
        }

        return _byFoldedId.Value.TryGetValue(NearMatches.Fold(typed), out var known)
            ? new ZoneAnswer.Found(new CivilZone(known, _zones[known]))
            : new ZoneAnswer.Unknown(typed, NearMatches.Of(typed, Ids, Spellings)) { TzdbVersion = Version };
    }

    // A person types the town alone as often as the whole id.
    private static IEnumerable<string> Spellings(string id) => [id, id[(id.LastIndexOf('/') + 1)..]];

    [GeneratedRegex("^[0-9]{4}[a-z]{1,2}$", RegexOptions.CultureInvariant)]
    private static partial Regex VersionPattern();
}
