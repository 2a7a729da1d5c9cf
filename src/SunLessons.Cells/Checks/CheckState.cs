namespace SunLessons.Cells.Checks;

/// <summary>How far a learner got with a check.</summary>
public enum CheckState
{
    /// <summary>Nothing was answered.</summary>
    NotStarted,

    /// <summary>Answered, not right; a named wrong path or a hint was given.</summary>
    NotYet,

    /// <summary>Close: the way is right, the number is not close enough.</summary>
    Nearly,

    /// <summary>Right.</summary>
    Right,
}
