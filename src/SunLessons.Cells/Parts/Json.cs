using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace SunLessons.Cells.Parts;

/// <summary>Reads values that a page sent, whatever kind of number it took.</summary>
internal static class Json
{
    public static double? Number(JsonNode? node) =>
        node is JsonValue value && value.GetValueKind() == JsonValueKind.Number
        && double.TryParse(value.ToJsonString(), NumberStyles.Float, CultureInfo.InvariantCulture, out var number) && double.IsFinite(number)
            ? number
            : null;

    public static string? Text(JsonNode? node) => node is JsonValue value && value.GetValueKind() == JsonValueKind.String ? value.GetValue<string>() : null;

    public static bool? Truth(JsonNode? node) => node is JsonValue value
        ? value.GetValueKind() switch { JsonValueKind.True => true, JsonValueKind.False => false, _ => null }
        : null;
}
