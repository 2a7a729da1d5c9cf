namespace SunLessons.Notebooks;

/// <summary>
/// A file that was meant to be a notebook is none, or asks for something that a notebook cannot hold. The message is
/// one sentence for a person: what came, what is allowed, what to do instead.
/// </summary>
public sealed class NotebookFormatException : Exception
{
    /// <summary>Makes the exception with the sentence that a person will read.</summary>
    public NotebookFormatException(string sentence)
        : base(sentence)
    {
    }

    /// <summary>Makes the exception with the sentence that a person will read and the failure behind it.</summary>
    public NotebookFormatException(string sentence, Exception inner)
        : base(sentence, inner)
    {
    }
}
