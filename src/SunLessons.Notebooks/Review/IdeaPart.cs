namespace SunLessons.Notebooks.Review;

/// <summary>Where a lesson meets an idea that is not so.</summary>
public enum IdeaPart
{
    /// <summary>A prediction offers it, before anything is seen.</summary>
    Prediction,

    /// <summary>An answer to choose is it, with a reply of its own.</summary>
    WrongAnswer,

    /// <summary>The text says why it cannot be so, after the experiment.</summary>
    Refutation,
}
