namespace SunLessons.Notebooks.Review;

/// <summary>Something in a lesson that breaks one of the rules of <see cref="LessonReview"/>.</summary>
/// <param name="CellId">The cell that it is in; empty when it concerns the whole notebook.</param>
/// <param name="Rule">The rule's short name, such as "bare-number".</param>
/// <param name="Sentence">What came, what is allowed, what to write instead.</param>
public sealed record ReviewRemark(string CellId, string Rule, string Sentence)
{
    /// <summary>The remark as one line for a report.</summary>
    public override string ToString() => CellId.Length == 0 ? $"{Rule}: {Sentence}" : $"cell {CellId}, {Rule}: {Sentence}";
}
