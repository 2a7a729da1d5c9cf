namespace SunLessons.Cells.Live;

/// <summary>Chains that fit a reading, and a sentence where there is not exactly one of them.</summary>
/// <param name="Sentence">Says why there is none, or how to tell several apart; empty for exactly one.</param>
/// <param name="Chains">The rows of each chain.</param>
internal sealed record StepsAnswer(string Sentence, IReadOnlyList<IReadOnlyList<StepRow>> Chains);
