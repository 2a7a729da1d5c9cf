using SunLessons.Cells.Parts;
using SunLessons.Figures;

namespace SunLessons.Cells.Predictions;

/// <summary>How a prediction is given: chosen, typed, or sketched.</summary>
internal abstract class PredictionField
{
    /// <summary>What stands between the question and the button.</summary>
    public abstract IReadOnlyList<Part> Parts { get; }

    /// <summary>The answers to choose from; none where it is not chosen.</summary>
    public virtual IReadOnlyList<string> Options => [];

    /// <summary>The grid to sketch on, empty; null where nothing is sketched.</summary>
    public virtual Figure? Grid => null;

    /// <summary>What waits for the recording to be locked; often the same as <see cref="Parts"/>.</summary>
    public virtual IReadOnlyList<Part> Inputs => Parts;

    /// <summary>An answer that can be recorded.</summary>
    public abstract string Example { get; }

    /// <summary>Raised when the learner asks for the recording from within the field.</summary>
    public event Action? Submitted;

    /// <summary>What stands there now.</summary>
    public abstract PredictionAnswer Read();

    /// <summary>Puts an answer of an earlier visit back; false when it is none of this field's.</summary>
    public abstract bool Restore(string answer);

    /// <summary>The prediction is recorded: nothing can be changed, and what came out may be shown.</summary>
    public virtual void Close()
    {
        foreach (var part in Inputs)
        {
            part.Set(("disabled", true));
        }
    }

    /// <summary>A page was loaded again.</summary>
    public virtual void TellAgain()
    {
    }

    public virtual void Retire()
    {
        foreach (var part in Parts.Concat(Inputs).Distinct())
        {
            part.Retire();
        }
    }

    protected void Submit() => Submitted?.Invoke();
}

/// <summary>A prediction as it was read.</summary>
/// <param name="Text">As the learner gave it; empty when it could not be read.</param>
/// <param name="Numbers">Its numbers, in the unit asked for; none for a choice.</param>
/// <param name="Problem">Why it could not be read; null when it could.</param>
internal readonly record struct PredictionAnswer(string Text, IReadOnlyList<double> Numbers, string? Problem = null)
{
    public static PredictionAnswer Not(string problem) => new("", [], problem);
}
