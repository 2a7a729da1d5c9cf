namespace SunLessons.Cells.Checks;

/// <summary>A usual slip, followed to its end: the number that somebody gets who makes it, and what to tell them.</summary>
/// <param name="Name">What went wrong, such as <c>west taken as positive</c>.</param>
/// <param name="Value">The number it leads to, computed, in the unit of the check.</param>
/// <param name="Reply">Two or three sentences that lead back.</param>
public sealed record WrongPath(string Name, double Value, string Reply);
