namespace SunLessons.Cells.Checks;

/// <summary>A slip that a question expects, with what to tell somebody who made it.</summary>
/// <param name="Kind">Which slip.</param>
/// <param name="Reply">Two or three sentences that lead back.</param>
public sealed record Slip(SlipKind Kind, string Reply);
