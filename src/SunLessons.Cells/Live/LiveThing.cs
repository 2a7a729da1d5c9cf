using SunLessons.Cells.Controls;

namespace SunLessons.Cells.Live;

/// <summary>Something that is computed again whenever a control it depends on moves, or the learner's place changes. It never makes a cell run.</summary>
public abstract class LiveThing : Shown
{
    // More than three moving controls at once are too many to watch (cognitive load, Sweller); a fourth hides which one did what.
    private const int MostControls = 3;
    private readonly IReadOnlyList<Control> _controls;
    private volatile bool _retired;

    private protected LiveThing(Lesson lesson, string key, IReadOnlyList<Control> dependsOn, int mostControls = MostControls)
        : base(lesson, key)
    {
        if (dependsOn.Count > mostControls)
        {
            throw new ArgumentException($"'{key}' depends on {dependsOn.Count} controls, which is more than a reader can watch. Leave at most {mostControls}.", nameof(dependsOn));
        }

        _controls = dependsOn;
        foreach (var control in _controls)
        {
            control.Changed += Touch;
        }

        lesson.PlaceMoved += Touch;
    }

    /// <summary>What went wrong when the page was last told; null when nothing did.</summary>
    internal Exception? NotTold { get; set; }

    /// <summary>The controls that it follows, beside the learner's place.</summary>
    public IReadOnlyList<Control> DependsOn => _controls;

    internal void Touch()
    {
        if (!_retired)
        {
            Lesson.Worker.Touch(this);
        }
    }

    /// <summary>Computes and tells the page; an error becomes one sentence.</summary>
    internal void Refresh()
    {
        if (!_retired)
        {
            Compute();
            NotTold = null;
        }
    }

    internal override void Retire()
    {
        _retired = true;
        foreach (var control in _controls)
        {
            control.Changed -= Touch;
        }

        Lesson.PlaceMoved -= Touch;
        base.Retire();
    }

    private protected abstract void Compute();
}
