namespace SunLessons.Cells.Checks;

/// <summary>A wrong turning that many people take, whatever the question. Those of the lessons stand in <see cref="UsualSlips"/>.</summary>
/// <param name="Id">Short and lasting, such as <c>W6</c>: records and counts go by it.</param>
/// <param name="Name">What went wrong in a few words that can follow "Not yet:", such as <c>west taken as plus</c>.</param>
public sealed record SlipKind(string Id, string Name);
