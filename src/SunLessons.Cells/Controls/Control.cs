using System.Text.Json.Nodes;
using SunLessons.Cells.Parts;

namespace SunLessons.Cells.Controls;

/// <summary>Something a learner moves. Its position is recorded at each change and comes back when the cell is run again.</summary>
public abstract class Control : Shown
{
    private protected Control(Lesson lesson, string key, string label)
        : base(lesson, key) => Label = label;

    /// <summary>Its words.</summary>
    public string Label { get; }

    /// <summary>Whether it cannot be moved yet, because a prediction is still to be recorded.</summary>
    public bool IsLocked { get; private set; }

    /// <summary>Raised after the learner moved it, or woke it by recording a prediction, on the thread that brought the news.</summary>
    public event Action? Changed;

    /// <summary>Where it stands, in words.</summary>
    public abstract string Position { get; }

    /// <inheritdoc/>
    public override string PlainText => $"{Label}: {Position}";

    /// <summary>Where it stands at first: a number's value, the index of a choice, 1 or 0 for a switch.</summary>
    internal abstract double Start { get; }

    /// <summary>Positions, from low to high, that show what it does when it alone is moved: 5 to 9 where it has as many, <see cref="Start"/> among them.</summary>
    internal abstract IReadOnlyList<double> Stations { get; }

    internal string RecordKey => "control:" + Key;

    /// <summary>The widget that is locked and unlocked; for a control of several, the first.</summary>
    internal abstract IEnumerable<Part> Moving { get; }

    internal void Lock(bool locked)
    {
        var wakes = IsLocked && !locked;
        IsLocked = locked;
        foreach (var part in Moving)
        {
            part.Set(("disabled", locked));
        }

        if (wakes)
        {
            // A figure may show nothing of the outcome before the prediction: now it has to.
            Changed?.Invoke();
        }
    }

    internal override void Retire()
    {
        base.Retire();
        foreach (var part in Moving)
        {
            part.Retire();
        }
    }

    /// <summary>
    /// A cell was run again and made a new control of this name. Figures of other cells, which were not run again, still ask this one:
    /// it takes over whatever the new one does.
    /// </summary>
    internal void FollowedBy(Control successor)
    {
        if (successor.GetType() != GetType())
        {
            return;
        }

        void Take()
        {
            CopyFrom(successor);
            Changed?.Invoke();
        }

        successor.Changed += Take;
        Take();
    }

    private protected abstract void CopyFrom(Control successor);

    private protected void Moved(JsonNode position)
    {
        Host.Record(RecordKey, position);
        Changed?.Invoke();
    }
}
