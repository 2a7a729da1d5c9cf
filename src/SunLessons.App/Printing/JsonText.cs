using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using NodaTime;
using NodaTime.Text;
using SunLessons.Places;

namespace SunLessons.App.Printing;

/// <summary>How every verb writes JSON: units in the names of the fields, numbers rounded to 1e-9 of their unit, times to the millisecond.</summary>
/// <remarks>The names are listed in JSON.md beside this project and are kept from version to version; a test compares.</remarks>
internal static class JsonText
{
    private const int Decimals = 9;

    private static readonly JsonSerializerOptions Indented = new() { WriteIndented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };
    private static readonly LocalDateTimePattern ClockPattern = LocalDateTimePattern.CreateWithInvariantCulture("uuuu'-'MM'-'dd'T'HH':'mm':'ss.fff");
    private static readonly Duration HalfMillisecond = Duration.FromNanoseconds(500_000);

    /// <summary>The finished text.</summary>
    public static string Of(JsonObject answer)
    {
        Round(answer);
        return answer.ToJsonString(Indented);
    }

    /// <summary>A clock's date and time.</summary>
    public static string Clock(LocalDateTime clock) => ClockPattern.Format(clock.PlusNanoseconds(500_000));

    /// <summary>An instant in universal time.</summary>
    public static string Utc(Instant instant) => ClockPattern.Format((instant + HalfMillisecond).InUtc().LocalDateTime) + "Z";

    /// <summary>A day.</summary>
    public static string Date(LocalDate date) => LocalDatePattern.Iso.Format(date);

    /// <summary>A place; the zone is null where none was given.</summary>
    public static JsonObject Place(Place place, bool withZone = true) => new()
    {
        ["name"] = place.Name,
        ["latitude_degrees"] = place.Point.Latitude.Degrees,
        ["longitude_degrees"] = place.Point.Longitude.Degrees,
        ["height_meters"] = place.Point.HeightMeters,
        ["zone"] = withZone ? place.ZoneId : null,
    };

    /// <summary>A list.</summary>
    public static JsonArray List<T>(IEnumerable<T> items, Func<T, JsonNode?> one) => new([.. items.Select(one)]);

    // What is left of 42.24 degrees after the way to radians and back is not told to anybody.
    private static void Round(JsonNode? node)
    {
        switch (node)
        {
            case JsonObject fields:
                foreach (var (name, value) in fields.ToList())
                {
                    if (Rounded(value) is { } rounded)
                    {
                        fields[name] = rounded;
                    }
                    else
                    {
                        Round(value);
                    }
                }

                break;
            case JsonArray items:
                for (var i = 0; i < items.Count; i++)
                {
                    if (Rounded(items[i]) is { } rounded)
                    {
                        items[i] = rounded;
                    }
                    else
                    {
                        Round(items[i]);
                    }
                }

                break;
        }
    }

    private static JsonValue? Rounded(JsonNode? node) =>
        node is JsonValue value && value.TryGetValue<double>(out var number)
            ? JsonValue.Create(Math.Round(number, Decimals, MidpointRounding.AwayFromZero) + 0.0)
            : null;
}
