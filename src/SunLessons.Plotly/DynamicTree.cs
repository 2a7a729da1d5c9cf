using System.Text.Json;
using System.Text.Json.Nodes;

namespace SunLessons.Figures.Layout;

/// <summary>Copies a JSON tree into the dynamic objects that Plotly.NET serialises.</summary>
internal static class DynamicTree
{
    public static void Fill(DynamicObj.DynamicObj target, JsonObject tree)
    {
        foreach (var (name, value) in tree)
        {
            target.SetProperty(name, Value(value));
        }
    }

    private static object? Value(JsonNode? node)
    {
        switch (node)
        {
            case JsonObject tree:
                var inner = new DynamicObj.DynamicObj();
                Fill(inner, tree);
                return inner;
            case JsonArray list:
                return list.Select(Value).ToArray();
            case JsonValue value:
                return value.GetValueKind() switch
                {
                    JsonValueKind.Number when value.TryGetValue<int>(out var whole) => whole,
                    JsonValueKind.Number => value.GetValue<double>(),
                    JsonValueKind.True => true,
                    JsonValueKind.False => false,
                    _ => value.GetValue<string>(),
                };
            default:
                return null;
        }
    }
}
