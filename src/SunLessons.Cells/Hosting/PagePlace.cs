using System.Globalization;
using System.Text.Json.Nodes;

namespace SunLessons.Cells.Hosting;

/// <summary>The place a learner stands at, as a page tells it.</summary>
/// <param name="Name">What to call it in a sentence, such as <c>Vigo</c>.</param>
/// <param name="Point">Latitude (north positive) and longitude (east positive).</param>
/// <param name="ZoneId">The time zone's name in the TZ database, such as <c>Europe/Madrid</c>.</param>
public sealed record PagePlace(string Name, GeoPoint Point, string ZoneId)
{
    /// <summary>Degrees, north positive, −90 to +90.</summary>
    public double LatitudeDegrees => Point.Latitude.Degrees;

    /// <summary>Degrees, east positive, −180 to +180.</summary>
    public double LongitudeDegrees => Point.Longitude.Degrees;

    /// <summary>Makes a place from degrees.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its range; the message says what is allowed.</exception>
    public static PagePlace FromDegrees(string name, double latitudeDegrees, double longitudeDegrees, string zoneId) =>
        new(name, GeoPoint.FromDegrees(latitudeDegrees, longitudeDegrees), zoneId);

    /// <summary>
    /// Reads <c>{"name","latitude_degrees","longitude_degrees","zone"}</c>; null when a member is missing or of another kind.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its range.</exception>
    public static PagePlace? FromJson(JsonNode? node)
    {
        if (node is not JsonObject place
            || place["name"] is not JsonValue name || !name.TryGetValue<string>(out var text)
            || place["zone"] is not JsonValue zone || !zone.TryGetValue<string>(out var zoneId)
            || Number(place["latitude_degrees"]) is not { } latitude
            || Number(place["longitude_degrees"]) is not { } longitude)
        {
            return null;
        }

        return FromDegrees(text, latitude, longitude, zoneId);
    }

    /// <summary>Writes what <see cref="FromJson"/> reads.</summary>
    public JsonObject ToJson() => new()
    {
        ["name"] = Name,
        ["latitude_degrees"] = Rounded(LatitudeDegrees),
        ["longitude_degrees"] = Rounded(LongitudeDegrees),
        ["zone"] = ZoneId,
    };

    // Radians inside an angle cost the last digits of a typed 42.24; nine decimals are 0.1 mm on the ground.
    private static double Rounded(double degrees) => Math.Round(degrees, 9);

    private static double? Number(JsonNode? node) =>
        node is JsonValue value && double.TryParse(value.ToJsonString(), NumberStyles.Float, CultureInfo.InvariantCulture, out var number) && double.IsFinite(number)
            ? number
            : null;
}
