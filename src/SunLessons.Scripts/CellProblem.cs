namespace SunLessons.Scripts;

/// <summary>What the compiler has against a cell.</summary>
/// <param name="Line">The line in the cell, from 1.</param>
/// <param name="Column">The column in the line, from 1.</param>
/// <param name="Sentence">The compiler's own sentence.</param>
public sealed record CellProblem(int Line, int Column, string Sentence);
