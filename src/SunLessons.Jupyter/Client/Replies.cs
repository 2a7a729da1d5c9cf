using System.Text.Json.Nodes;

namespace SunLessons.Jupyter.Client;

/// <summary>How a run ended.</summary>
/// <param name="Status">"ok", "error" or "aborted" (a cell before it failed).</param>
/// <param name="ExecutionCount">Number of the run; null when it did not start.</param>
/// <param name="ErrorName">As <see cref="ErrorOutput.Name"/>; empty when there was none.</param>
/// <param name="ErrorValue">As <see cref="ErrorOutput.Value"/>; empty when there was none.</param>
/// <param name="Content">The whole reply.</param>
public sealed record ExecuteReply(string Status, int? ExecutionCount, string ErrorName, string ErrorValue, JsonObject Content)
{
    /// <summary>True when the cell ran to its end.</summary>
    public bool Succeeded => Status == "ok";
}

/// <summary>What could stand at the cursor.</summary>
/// <param name="Matches">The texts to put in place of the range.</param>
/// <param name="CursorStart">Start of the range, in code points (not UTF-16 units) from the beginning of the code.</param>
/// <param name="CursorEnd">End of the range, in code points.</param>
/// <param name="Kinds">For each match what it is ("method", "property", ...); empty when the kernel does not say.</param>
public sealed record CompleteReply(IReadOnlyList<string> Matches, int CursorStart, int CursorEnd, IReadOnlyList<string> Kinds);

/// <summary>What the word at the cursor is.</summary>
/// <param name="Found">False when there is nothing to say.</param>
/// <param name="Data">The description by media type.</param>
public sealed record InspectReply(bool Found, JsonObject Data);

/// <summary>A remark of the compiler on code that was not run.</summary>
/// <param name="Severity">"error", "warning" or "info".</param>
/// <param name="Id">The compiler's number for it, as "CS0103".</param>
/// <param name="Message">The remark.</param>
/// <param name="StartLine">First line, from 1.</param>
/// <param name="StartColumn">First column, from 1, in UTF-16 units as editors count.</param>
/// <param name="EndLine">Last line, from 1.</param>
/// <param name="EndColumn">Column behind the last character, from 1.</param>
public sealed record DiagnosticRemark(string Severity, string Id, string Message, int StartLine, int StartColumn, int EndLine, int EndColumn);
