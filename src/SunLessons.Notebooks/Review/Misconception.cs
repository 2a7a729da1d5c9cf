namespace SunLessons.Notebooks.Review;

/// <summary>An idea that learners bring and that is not so.</summary>
/// <param name="Number">Its number, by which cells name it.</param>
/// <param name="Belief">What is believed, as a sentence.</param>
/// <param name="Lessons">The numbers of the lessons of the course that meet it.</param>
/// <param name="ShownBy">What in the lessons shows that it is not so.</param>
/// <param name="Sources">Who found it among learners.</param>
public sealed record Misconception(int Number, string Belief, IReadOnlyList<int> Lessons, string ShownBy, IReadOnlyList<MisconceptionSource> Sources);

/// <summary>Who found an idea among learners.</summary>
/// <param name="Source">Authors and year, or what else it rests on.</param>
/// <param name="Basis">How the source is known: read, from memory, inferred, or observed.</param>
public sealed record MisconceptionSource(string Source, string Basis);
