namespace SunLessons.Scripts;

/// <summary>A cell after compiling: an assembly to run, or what is wrong with it.</summary>
/// <param name="Number">Which submission of its chain it is, from 1; the assembly's entry is named after it.</param>
/// <param name="Assembly">The compiled cell; empty when there are problems.</param>
/// <param name="Problems">What the compiler has against it; empty for a cell that can run.</param>
public sealed record CellBuild(int Number, byte[] Assembly, IReadOnlyList<CellProblem> Problems);
