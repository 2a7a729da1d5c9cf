using SunLessons.CivilTime;

namespace SunLessons.Places;

/// <summary>
/// Towns with position and zone: the eight towns of the lessons, then the principal location of every zone that the time-zone
/// database lists (public domain; positions to a minute of arc or better, heights not given: 0 m).
/// </summary>
/// <remarks>
/// Coordinates of the eight towns: rounded to 0.01°, which is 1.1 km at most and 2.4 s of time. Heights from memory, to 100 m: 100 m of
/// height move the Sun by less than 0.0002″. For a dial that is nothing; a compass feels it no more.
/// </remarks>
public static class Gazetteer
{
    /// <summary>The eight towns of the lessons, on six continents, from north to south.</summary>
    public static IReadOnlyList<Place> Towns { get; } =
    [
        Town("Tromsø", "Norway", 69.65, 18.96, 0, "Europe/Oslo"),
        Town("St. John's", "Canada", 47.56, -52.71, 0, "America/St_Johns"),
        Town("Vigo", "Spain", 42.24, -8.72, 0, "Europe/Madrid"),
        Town("Kathmandu", "Nepal", 27.72, 85.32, 1400, "Asia/Kathmandu"),
        Town("Nairobi", "Kenya", -1.29, 36.82, 1700, "Africa/Nairobi"),
        Town("Darwin", "Australia", -12.46, 130.84, 0, "Australia/Darwin"),
        Town("Dunedin", "New Zealand", -45.87, 170.50, 0, "Pacific/Auckland"),
        Town("Ushuaia", "Argentina", -54.80, -68.30, 0, "America/Argentina/Ushuaia"),
    ];

    private static Listing? _listing;

    /// <summary>All places: the eight towns first, then the locations of the zones in use, in the alphabetical order of their ids.</summary>
    public static IReadOnlyList<Place> All
    {
        get
        {
            // Listed once for each database; whoever comes second meanwhile makes the same list.
            var (rules, listing) = (TimeZoneRules.InUse, Volatile.Read(ref _listing));
            if (listing?.Rules != rules)
            {
                listing = new Listing(rules, [.. Towns, .. ZoneLocations(rules)]);
                Volatile.Write(ref _listing, listing);
            }

            return listing.Places;
        }
    }

    /// <summary>The place of that name, whatever case, accents, spaces and punctuation (<c>tromso</c>, <c>st johns</c>).</summary>
    public static PlaceAnswer Find(string name)
    {
        ArgumentNullException.ThrowIfNull(name);
        var typed = name.Trim();
        var folded = NearMatches.Fold(typed);
        var exact = folded.Length == 0 ? null : All.FirstOrDefault(p => NearMatches.Fold(p.Name) == folded);
        return exact is not null ? new PlaceAnswer.Found(exact) : new PlaceAnswer.Unknown(typed, Search(typed));
    }

    /// <summary>
    /// Places whose name or country holds what was typed or is a few slips away from it, best first; for a field that suggests while one types.
    /// </summary>
    /// <param name="typed">Any part of a name; case and accents do not matter.</param>
    /// <param name="most">The most to give back; 1 or more.</param>
    public static IReadOnlyList<Place> Search(string typed, int most = 5)
    {
        ArgumentNullException.ThrowIfNull(typed);
        ArgumentOutOfRangeException.ThrowIfLessThan(most, 1);
        return NearMatches.Of(typed, All, p => [p.Name, p.Country], most);
    }

    private static Place Town(string name, string country, double latitude, double longitude, double height, string zone) =>
        new(name, GeoPoint.FromDegrees(latitude, longitude, height), zone) { Country = country };

    private static IEnumerable<Place> ZoneLocations(TimeZoneRules rules)
    {
        var known = Towns.Select(p => NearMatches.Fold(p.Name)).ToHashSet();
        foreach (var location in rules.Locations.OrderBy(l => l.ZoneId, StringComparer.Ordinal))
        {
            // An id's last part is the town, with underscores for spaces: America/Argentina/Buenos_Aires.
            var name = location.ZoneId[(location.ZoneId.LastIndexOf('/') + 1)..].Replace('_', ' ');
            if (!known.Contains(NearMatches.Fold(name)))
            {
                yield return new Place(name, GeoPoint.FromDegrees(location.Latitude, location.Longitude), location.ZoneId)
                {
                    Country = location.CountryName,
                };
            }
        }
    }

    private sealed record Listing(TimeZoneRules Rules, IReadOnlyList<Place> Places);
}
