using System.Text.Json.Nodes;
using SunLessons.Cells.Parts;
using SunLessons.Cells.Predictions;

namespace SunLessons.Cells.Controls;

/// <summary>Something a learner moves. Its position is recorded at each change and comes back when the cell is run again.</summary>
public abstract class Control : Shown
{
    private readonly List<Prediction> _waitsFor = [];

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

    /// <summary>Keeps it locked until a prediction is recorded; it may wait for several.</summary>
    /// <param name="prediction">The prediction.</param>
    /// <param name="insteadOf">One that it waited for until now: its cell was run again.</param>
    internal void WaitFor(Prediction prediction, Prediction? insteadOf = null)
    {
        if (insteadOf is not null)
        {
            _waitsFor.Remove(insteadOf);
        }

        _waitsFor.Add(prediction);
        SettleLock();
    }

    /// <summary>A prediction was recorded, or another one came into its place.</summary>
    internal void SettleLock()
    {
        var wakes = IsLocked;
        IsLocked = _waitsFor.Exists(p => !p.IsRecorded);
        foreach (var part in Moving)
        {
            part.Set(("disabled", IsLocked));
        }

        if (wakes && !IsLocked)
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
