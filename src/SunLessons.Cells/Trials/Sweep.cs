using SunLessons.Cells.Controls;

namespace SunLessons.Cells.Trials;

/// <summary>Stored trials in which one control alone was moved.</summary>
/// <param name="Moved">The control.</param>
/// <param name="Held">The other controls with the positions that they kept, in words: <c>Town Vigo, Wedge 0.0°</c>; empty when there is no other.</param>
/// <param name="Headings">What came out, a heading a column.</param>
/// <param name="Rows">The trials, from the lowest position to the highest; each has one input, the position of the moved control.</param>
public sealed record Sweep(Control Moved, string Held, IReadOnlyList<string> Headings, IReadOnlyList<Trial> Rows)
{
    /// <summary>What the table shows, naming what was held.</summary>
    public string Caption => Worded($"{Moved.Label}, moved alone") + (Held.Length == 0 ? "" : Worded($". Held: {Held}"));
}
