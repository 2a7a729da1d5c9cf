namespace SunLessons.Cells.Checks;

/// <summary>What became of an answer.</summary>
/// <param name="State">How near it came; null when it could not be judged, and the reply says why.</param>
/// <param name="Reply">The sentence for the learner.</param>
/// <param name="Wrong">The wrong path in words; null for none that is known.</param>
/// <param name="WrongId">Its name in the record.</param>
internal readonly record struct Judgement(CheckState? State, string Reply, string? Wrong = null, string? WrongId = null)
{
    public static Judgement Unread(string why) => new(null, why);
}
