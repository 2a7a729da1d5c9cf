using SunLessons.Cells.Running;
using SunLessons.Notebooks;

namespace SunLessons.Publishing.Lessons;

/// <summary>A code cell of a lesson, compiled.</summary>
/// <param name="Cell">The cell.</param>
/// <param name="Number">Which submission it is, from 1.</param>
/// <param name="Script">Its C#: the cell's own text, or for HTML and SVG the expressions in it.</param>
/// <param name="Markup">The cell as HTML or SVG; null for C#.</param>
/// <param name="Assembly">The compiled cell.</param>
internal sealed record BuiltCell(NotebookCell Cell, int Number, string Script, MarkupCell? Markup, byte[] Assembly);
