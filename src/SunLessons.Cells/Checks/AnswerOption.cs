namespace SunLessons.Cells.Checks;

/// <summary>One answer to choose, with its own reply.</summary>
/// <param name="Text">The answer.</param>
/// <param name="Reply">Two or three sentences: why it holds, or what speaks against it.</param>
/// <param name="State"><see cref="CheckState.Right"/>, <see cref="CheckState.Nearly"/> or <see cref="CheckState.NotYet"/>.</param>
public sealed record AnswerOption(string Text, string Reply, CheckState State);
