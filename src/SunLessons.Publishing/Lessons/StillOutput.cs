using System.Text.Json.Nodes;
using SunLessons.Cells.Hosting;

namespace SunLessons.Publishing.Lessons;

/// <summary>Something that a cell showed while the lesson was run for publishing.</summary>
/// <param name="Bundle">The output by MIME type.</param>
/// <param name="Root">The widget that it shows; null for any other output.</param>
internal sealed record StillOutput(IReadOnlyDictionary<string, JsonNode> Bundle, InMemoryChannel? Root);
