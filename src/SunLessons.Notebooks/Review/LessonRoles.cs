using System.Collections.Frozen;

namespace SunLessons.Notebooks.Review;

/// <summary>What a cell can be for in a lesson (metadata "sunlessons", "role").</summary>
public static class LessonRoles
{
    /// <summary>All roles. "title" may stand before "safety"; nothing else may.</summary>
    public static readonly FrozenSet<string> All = new[]
    {
        "title", "safety", "puzzle", "goals", "recall", "prediction", "experiment", "table", "refutation", "reasoning",
        "worked", "check", "activity", "exit", "teacher", "sources", "extension", "own-dial", "values",
    }.ToFrozenSet(StringComparer.Ordinal);

    /// <summary>The roles that every lesson must have, in the order in which they first appear.</summary>
    public static readonly IReadOnlyList<string> Needed =
        ["title", "safety", "puzzle", "goals", "recall", "prediction", "experiment", "reasoning", "check", "activity", "sources", "own-dial"];
}
