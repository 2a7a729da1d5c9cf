namespace SunLessons.Cells.Trials;

/// <summary>One trial: where the controls stood, and what came out.</summary>
/// <param name="Inputs">The positions of the controls in words.</param>
/// <param name="Outcomes">What came out, a few words with their numbers for each column of the table.</param>
public sealed record Trial(IReadOnlyList<string> Inputs, IReadOnlyList<string> Outcomes);
