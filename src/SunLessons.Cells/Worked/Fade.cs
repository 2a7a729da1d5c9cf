namespace SunLessons.Cells.Worked;

/// <summary>How much of a worked example is left to the learner. Each calculation comes in all three, in this order.</summary>
public enum Fade
{
    /// <summary>Every step is shown.</summary>
    NoStep,

    /// <summary>The step that carries the idea is blank, and those after it.</summary>
    LastSteps,

    /// <summary>Every step is blank.</summary>
    EveryStep,
}
