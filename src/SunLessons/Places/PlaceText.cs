using SunLessons.CivilTime;

namespace SunLessons.Places;

/// <summary>A place as it was typed, field by field: the place, or one sentence for each field that cannot be used.</summary>
/// <param name="Place">The place; null when a field cannot be used.</param>
/// <param name="LatitudeProblem">What is wrong with the latitude; null when it can be used.</param>
/// <param name="LongitudeProblem">What is wrong with the longitude; null when it can be used.</param>
/// <param name="ZoneProblem">What is wrong with the zone; null when it can be used.</param>
public sealed record PlaceText(Place? Place, string? LatitudeProblem, string? LongitudeProblem, string? ZoneProblem)
{
    /// <summary>All problems in the order of the fields; empty when there is a place.</summary>
    public IEnumerable<string> Problems => new[] { LatitudeProblem, LongitudeProblem, ZoneProblem }.OfType<string>();

    /// <summary>Reads what was typed.</summary>
    /// <param name="name">The name; any text, and "My place" when it is blank.</param>
    /// <param name="latitude">The latitude, as <see cref="CoordinateText"/> reads it.</param>
    /// <param name="longitude">The longitude, as <see cref="CoordinateText"/> reads it.</param>
    /// <param name="zone">The time zone's name in the TZ database.</param>
    public static PlaceText Read(string name, string latitude, string longitude, string zone)
    {
        ArgumentNullException.ThrowIfNull(name);
        ArgumentNullException.ThrowIfNull(zone);
        var latitudeIsGood = CoordinateText.TryReadLatitude(latitude, out var north, out var latitudeProblem);
        var longitudeIsGood = CoordinateText.TryReadLongitude(longitude, out var east, out var longitudeProblem);
        var answer = CivilZones.Find(zone.Trim());
        var place = latitudeIsGood && longitudeIsGood && answer is ZoneAnswer.Found found
            ? new Place(name.Trim().Length > 0 ? name.Trim() : "My place", new GeoPoint(north, east), found.Zone.Id)
            : null;
        return new PlaceText(place, latitudeProblem, longitudeProblem, answer is ZoneAnswer.Unknown unknown ? unknown.Message : null);
    }
}
