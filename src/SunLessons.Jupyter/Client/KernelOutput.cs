using System.Text.Json.Nodes;

namespace SunLessons.Jupyter.Client;

/// <summary>One thing that a running cell sent out. The kinds are the messages of the output channel (Jupyter messaging 5.4).</summary>
public abstract record KernelOutput
{
    private protected KernelOutput()
    {
    }

    /// <summary>The output as a notebook file keeps it (nbformat 4.5); null for what a file does not keep.</summary>
    public virtual JsonObject? ToNotebook() => null;
}

/// <summary>Text written by the cell.</summary>
/// <param name="Name">"stdout" or "stderr".</param>
/// <param name="Text">What was written; a part, not always a whole line.</param>
public sealed record StreamOutput(string Name, string Text) : KernelOutput
{
    /// <inheritdoc/>
    public override JsonObject ToNotebook() => new() { ["output_type"] = "stream", ["name"] = Name, ["text"] = Text };
}

/// <summary>Something shown by the cell.</summary>
/// <param name="Data">The same thing by media type, as "text/plain".</param>
/// <param name="Metadata">What is said about it.</param>
/// <param name="DisplayId">Name by which it can be replaced later; null when it has none.</param>
/// <param name="IsUpdate">True when every output shown with this DisplayId is to be replaced, false when a new one is shown.</param>
public sealed record DisplayOutput(JsonObject Data, JsonObject Metadata, string? DisplayId, bool IsUpdate) : KernelOutput
{
    /// <inheritdoc/>
    public override JsonObject? ToNotebook() => IsUpdate ? null : new()
    {
        ["output_type"] = "display_data",
        ["data"] = Data.DeepClone(),
        ["metadata"] = Metadata.DeepClone(),
    };
}

/// <summary>The value of the cell's last expression.</summary>
/// <param name="ExecutionCount">Number of the run.</param>
/// <param name="Data">The value by media type; "text/plain" is always there.</param>
/// <param name="Metadata">What is said about it.</param>
public sealed record ResultOutput(int ExecutionCount, JsonObject Data, JsonObject Metadata) : KernelOutput
{
    /// <inheritdoc/>
    public override JsonObject ToNotebook() => new()
    {
        ["output_type"] = "execute_result",
        ["execution_count"] = ExecutionCount,
        ["data"] = Data.DeepClone(),
        ["metadata"] = Metadata.DeepClone(),
    };
}

/// <summary>The cell failed.</summary>
/// <param name="Name">The exception's type, or "CompilationError", or "Stopped".</param>
/// <param name="Value">Its message.</param>
/// <param name="Traceback">Lines that lead to the learner's own line.</param>
public sealed record ErrorOutput(string Name, string Value, IReadOnlyList<string> Traceback) : KernelOutput
{
    /// <inheritdoc/>
    public override JsonObject ToNotebook() => new()
    {
        ["output_type"] = "error",
        ["ename"] = Name,
        ["evalue"] = Value,
        ["traceback"] = new JsonArray([.. Traceback.Select(t => (JsonNode)t)]),
    };
}

/// <summary>What the cell has shown so far is to be taken away.</summary>
/// <param name="Wait">True: only when the next output comes, so that nothing flickers.</param>
public sealed record ClearedOutput(bool Wait) : KernelOutput;
