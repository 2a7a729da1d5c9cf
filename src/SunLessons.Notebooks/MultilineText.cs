using System.Text.Json.Nodes;

namespace SunLessons.Notebooks;

/// <summary>
/// The notebook format's "multiline string": one string, or a list of strings that are simply joined (each line keeps
/// its own line end). Both forms are read; what we write is the list, one line an element, because it compares line by
/// line in a version history.
/// </summary>
internal static class MultilineText
{
    public static bool IsOne(JsonNode? node) => node is JsonArray list
        ? list.All(line => line is JsonValue value && value.TryGetValue(out string? _))
        : node is JsonValue single && single.TryGetValue(out string? _);

    public static string Read(JsonNode? node) => node switch
    {
        JsonArray list => string.Concat(list.Select(line => line!.GetValue<string>())),
        JsonValue single when single.TryGetValue(out string? text) => text,
        _ => "",
    };

    public static JsonArray Write(string text)
    {
        var list = new JsonArray();
        int start = 0;
        while (start < text.Length)
        {
            int end = text.IndexOf('\n', start);
            int next = end < 0 ? text.Length : end + 1;
            list.Add((JsonNode)text[start..next]);
            start = next;
        }

        return list;
    }
}
