using System.Text.Json.Nodes;

namespace SunLessons.Notebooks;

/// <summary>What kind of output a code cell has stored.</summary>
public enum OutputKind
{
    /// <summary>Text written while the cell ran ("stream").</summary>
    Stream,

    /// <summary>Something shown while the cell ran ("display_data").</summary>
    Display,

    /// <summary>The value of the cell's last expression ("execute_result").</summary>
    Result,

    /// <summary>The cell ended with an error ("error").</summary>
    Error,

    /// <summary>An output type that nbformat 4.5 does not know; it is kept as it came.</summary>
    Other,
}

/// <summary>
/// One stored output of a code cell (nbformat 4.5, "output"). Immutable: every JSON value that goes in or comes out is
/// a copy. Fields that we do not know survive reading and writing.
/// </summary>
public sealed class NotebookOutput
{
    private readonly JsonObject _json;

    private NotebookOutput(JsonObject json) => _json = json;

    /// <summary>The kind of output.</summary>
    public OutputKind Kind => Text("output_type") switch
    {
        "stream" => OutputKind.Stream,
        "display_data" => OutputKind.Display,
        "execute_result" => OutputKind.Result,
        "error" => OutputKind.Error,
        _ => OutputKind.Other,
    };

    /// <summary>For a stream: "stdout" or "stderr"; otherwise empty.</summary>
    public string StreamName => Text("name");

    /// <summary>For a stream: the text, lines joined; otherwise empty.</summary>
    public string StreamText => MultilineText.Read(_json["text"]);

    /// <summary>For an error: the name of its kind; otherwise empty.</summary>
    public string ErrorName => Text("ename");

    /// <summary>For an error: its sentence; otherwise empty.</summary>
    public string ErrorMessage => Text("evalue");

    /// <summary>For an error: where it happened, line by line; otherwise empty.</summary>
    public IReadOnlyList<string> Traceback => _json["traceback"] is JsonArray lines
        ? [.. lines.Select(line => line is JsonValue value && value.TryGetValue(out string? text) ? text : "")]
        : [];

    /// <summary>The media types that a display or a result carries, in the file's order; otherwise empty.</summary>
    public IReadOnlyList<string> MediaTypes => _json["data"] is JsonObject data ? [.. data.Select(pair => pair.Key)] : [];

    /// <summary>The text of one media type (lines joined), or null when the output has none of that type.</summary>
    public string? MediaText(string mediaType) =>
        _json["data"] is JsonObject data && data.TryGetPropertyValue(mediaType, out JsonNode? node) && MultilineText.IsOne(node)
            ? MultilineText.Read(node)
            : null;

    /// <summary>A copy of the value of one media type as JSON, or null when the output has none of that type.</summary>
    public JsonNode? MediaJson(string mediaType) =>
        _json["data"] is JsonObject data && data.TryGetPropertyValue(mediaType, out JsonNode? node) ? node?.DeepClone() : null;

    /// <summary>A copy of the output as it stands in the file.</summary>
    public JsonObject ToJson() => (JsonObject)_json.DeepClone();

    /// <summary>Text written to "stdout" or "stderr" while the cell ran.</summary>
    public static NotebookOutput Stream(string name, string text) => new(new JsonObject
    {
        ["output_type"] = "stream",
        ["name"] = name,
        ["text"] = MultilineText.Write(text),
    });

    /// <summary>Something shown while the cell ran: media type to value (a string for text types, JSON for JSON types).</summary>
    public static NotebookOutput Display(IReadOnlyDictionary<string, JsonNode> data, JsonObject? metadata = null) => new(new JsonObject
    {
        ["output_type"] = "display_data",
        ["data"] = DataObject(data),
        ["metadata"] = metadata?.DeepClone() ?? new JsonObject(),
    });

    /// <summary>The value of the cell's last expression: media type to value, and the run's counter (null when there is none).</summary>
    public static NotebookOutput Result(IReadOnlyDictionary<string, JsonNode> data, int? executionCount, JsonObject? metadata = null) => new(new JsonObject
    {
        ["output_type"] = "execute_result",
        ["execution_count"] = executionCount,
        ["data"] = DataObject(data),
        ["metadata"] = metadata?.DeepClone() ?? new JsonObject(),
    });

    /// <summary>The error that ended the cell.</summary>
    public static NotebookOutput Error(string name, string message, IEnumerable<string> traceback)
    {
        var lines = new JsonArray();
        foreach (string line in traceback)
        {
            lines.Add((JsonNode)line);
        }

        return new(new JsonObject { ["output_type"] = "error", ["ename"] = name, ["evalue"] = message, ["traceback"] = lines });
    }

    /// <summary>An output as it stands in a notebook file or in the content of an "iopub" message with its "output_type" added.</summary>
    public static NotebookOutput FromJson(JsonObject json) => new((JsonObject)json.DeepClone());

    private static JsonObject DataObject(IReadOnlyDictionary<string, JsonNode> data)
    {
        var copy = new JsonObject();
        foreach ((string mediaType, JsonNode value) in data)
        {
            copy[mediaType] = value.DeepClone();
        }

        return copy;
    }

    private string Text(string field) => _json[field] is JsonValue value && value.TryGetValue(out string? text) ? text : "";
}
