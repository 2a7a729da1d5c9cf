namespace SunLessons.Notebooks;

/// <summary>A lesson on the shelf: what its notebook says about itself, and where it lies.</summary>
/// <param name="Id">The lesson's stable name: lower-case letters, digits and hyphens; also the name of the learner's copy. A translation adds its language: <c>your-own-noon-es</c>.</param>
/// <param name="Title">The title that a learner reads.</param>
/// <param name="Number">The lesson's place in the course, from 1.</param>
/// <param name="Minutes">How long it takes, in minutes.</param>
/// <param name="Summary">One sentence for the list of lessons; empty when the notebook has none.</param>
/// <param name="Folder">The name of the lesson's folder on the shelf, which is also its address. A translation adds its language: <c>06-your-own-noon.es</c>.</param>
/// <param name="FilePath">The full path of the notebook file.</param>
public sealed record Lesson(string Id, string Title, int Number, int Minutes, string Summary, string Folder, string FilePath)
{
    /// <summary>The language that the lesson is written in, by its two letters.</summary>
    public string Language { get; init; } = LessonShelf.FirstLanguage;

    /// <summary>Reads the lesson's notebook as it is now.</summary>
    /// <exception cref="NotebookFormatException">The file is gone or is no notebook; one sentence.</exception>
    public Notebook ReadNotebook() => Notebook.Read(FilePath);
}
