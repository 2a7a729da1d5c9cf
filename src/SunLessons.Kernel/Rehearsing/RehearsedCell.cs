using System.Text.Json.Nodes;

namespace SunLessons.Kernel.Rehearsing;

/// <summary>What one cell did in a <see cref="Rehearsal"/>.</summary>
/// <param name="Id">The cell's id.</param>
/// <param name="Problem">Why it did not run to its end, in one sentence; null when it did.</param>
/// <param name="Shown">What it showed, in order: controls, figures, predictions, checks, tables, sentences.</param>
/// <param name="Outputs">The same as outputs: MIME type to content.</param>
public sealed record RehearsedCell(string Id, string? Problem, IReadOnlyList<object> Shown, IReadOnlyList<IReadOnlyDictionary<string, JsonNode>> Outputs);
