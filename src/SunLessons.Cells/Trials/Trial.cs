namespace SunLessons.Cells.Trials;

/// <summary>One trial: where the controls stood, and what came out.</summary>
/// <param name="Inputs">The positions of the controls in words.</param>
/// <param name="Outcome">What came out, in a few words with its numbers.</param>
public sealed record Trial(IReadOnlyList<string> Inputs, string Outcome);
