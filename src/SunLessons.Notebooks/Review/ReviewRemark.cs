namespace SunLessons.Notebooks.Review;

/// <summary>Something in a lesson that breaks one of the rules of <see cref="LessonReview"/>, or a part that it still lacks.</summary>
/// <param name="CellId">The cell that it is in; empty when it concerns the whole notebook.</param>
/// <param name="Rule">The rule's short name, such as "bare-number".</param>
/// <param name="Sentence">What came, what is allowed, what to write instead.</param>
public sealed record ReviewRemark(string CellId, string Rule, string Sentence)
{
    /// <summary>The cell's place in the notebook, from 1, as a person counts them; 0 for the whole notebook.</summary>
    public int CellNumber { get; init; }

    /// <summary>What the cell is for; null when it does not say, and for the whole notebook.</summary>
    public string? Role { get; init; }

    /// <summary>The remark as one line for a report.</summary>
    public override string ToString() => CellId.Length == 0 ? $"{Rule}: {Sentence}" : $"cell {CellNumber} ({Role ?? "no role"}, \"{CellId}\"), {Rule}: {Sentence}";

    /// <summary>The same remark with the place and the role of its cell.</summary>
    public ReviewRemark In(Notebook lesson)
    {
        for (int at = 0; at < lesson.Cells.Count; at++)
        {
            if (lesson.Cells[at].Id == CellId)
            {
                return this with { CellNumber = at + 1, Role = lesson.Cells[at].Role };
            }
        }

        return this;
    }
}
