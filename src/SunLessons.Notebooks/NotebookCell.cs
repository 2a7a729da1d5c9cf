using System.Text.Json.Nodes;

namespace SunLessons.Notebooks;

/// <summary>What the notebook format says a cell is.</summary>
public enum CellType
{
    /// <summary>Program text with stored outputs.</summary>
    Code,

    /// <summary>Prose in markdown.</summary>
    Markdown,

    /// <summary>Text that nothing renders or runs.</summary>
    Raw,
}

/// <summary>
/// One cell of a notebook (nbformat 4.5). Immutable: a change makes a new notebook (<see cref="Notebook.WithSource"/>,
/// <see cref="Notebook.WithOutputs"/>).
/// </summary>
public sealed class NotebookCell
{
    private readonly JsonObject _json;
    private string? _source;
    private IReadOnlyList<NotebookOutput>? _outputs;

    internal NotebookCell(JsonObject json, CellType type)
    {
        _json = json;
        Type = type;
        Id = json["id"]!.GetValue<string>();
    }

    /// <summary>The cell's stable name, 1 to 64 letters, digits, hyphens or underscores, unique in its notebook.</summary>
    public string Id { get; }

    /// <summary>What the notebook format says the cell is.</summary>
    public CellType Type { get; }

    /// <summary>The cell's text, lines joined, as a person sees it.</summary>
    public string Source => _source ??= MultilineText.Read(_json["source"]);

    /// <summary>
    /// The language that the cell is written in: "csharp", "markdown", "html" or "svg". It is read from the cell's
    /// metadata ("sunlessons", "language"); a cell without it is markdown when the format says so, HTML or SVG when it is
    /// a code cell whose first sign is "&lt;", plain text when raw ("raw"), otherwise C#.
    /// </summary>
    public string Language => SunLessonsText("language") ?? Type switch
    {
        CellType.Markdown => "markdown",
        CellType.Raw => "raw",
        _ when Source.AsSpan().TrimStart().StartsWith("<svg", StringComparison.OrdinalIgnoreCase) => "svg",
        _ when Source.AsSpan().TrimStart().StartsWith("<") => "html",
        _ => "csharp",
    };

    /// <summary>What the cell is for in the lesson, such as "safety", "prediction" or "check" (metadata "sunlessons", "role"); null when it says nothing.</summary>
    public string? Role => SunLessonsText("role");

    /// <summary>The stored outputs in order; empty for cells that are not code.</summary>
    public IReadOnlyList<NotebookOutput> Outputs => _outputs ??= _json["outputs"] is JsonArray list
        ? [.. list.OfType<JsonObject>().Select(NotebookOutput.FromJson)]
        : [];

    /// <summary>The counter of the run that made the outputs; null when the cell has not run.</summary>
    public int? ExecutionCount => _json["execution_count"] is JsonValue value && value.TryGetValue(out int count) ? count : null;

    /// <summary>A copy of the cell's metadata.</summary>
    public JsonObject Metadata => _json["metadata"] is JsonObject metadata ? (JsonObject)metadata.DeepClone() : [];

    /// <summary>A text field of the cell's metadata under "sunlessons"; null when it is not there.</summary>
    public string? SunLessonsText(string field) =>
        _json["metadata"] is JsonObject metadata && metadata["sunlessons"] is JsonObject ours
        && ours[field] is JsonValue value && value.TryGetValue(out string? text)
            ? text
            : null;

    internal JsonObject Json => _json;
}
