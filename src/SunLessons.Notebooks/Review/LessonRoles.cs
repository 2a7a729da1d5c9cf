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

    /// <summary>The roles that a finished lesson has, in the order in which they first appear: what is wrong with an idea is said only after its experiment.</summary>
    public static readonly IReadOnlyList<string> Needed =
    [
        "title", "safety", "puzzle", "goals", "recall", "prediction", "experiment", "table", "refutation", "reasoning",
        "worked", "check", "activity", "exit", "teacher", "extension", "sources", "own-dial",
    ];
}
