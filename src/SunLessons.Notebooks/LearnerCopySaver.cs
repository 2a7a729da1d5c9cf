namespace SunLessons.Notebooks;

/// <summary>
/// Saves a learner's copy shortly after every change, in the background: changes that come while the delay runs go into
/// one save. Nothing polls. Disposing saves what is left.
/// </summary>
public sealed class LearnerCopySaver : IDisposable
{
    private readonly LearnerCopy _copy;
    private readonly TimeSpan _delay;
    private readonly ITimer _timer;
    private readonly Lock _lock = new();
    private bool _waiting;
    private bool _ended;

    /// <summary>Starts to watch a copy.</summary>
    /// <param name="copy">The copy to save.</param>
    /// <param name="delay">How long after a change to save; null means 0.25 s, well inside the second that a learner may lose.</param>
    /// <param name="clock">Runs the delay; null means the system's clock.</param>
    public LearnerCopySaver(LearnerCopy copy, TimeSpan? delay = null, TimeProvider? clock = null)
    {
        _copy = copy;
        _delay = delay ?? TimeSpan.FromMilliseconds(250);
        _timer = (clock ?? TimeProvider.System).CreateTimer(_ => SaveNow(), null, Timeout.InfiniteTimeSpan, Timeout.InfiniteTimeSpan);
        _copy.Changed += Later;
        if (_copy.HasUnsavedChanges)
        {
            Later();
        }
    }

    /// <summary>Raised with one sentence when a save failed; the next change or the next attempt (after ten delays) tries again.</summary>
    public event Action<string>? Failed;

    /// <summary>Raised after a completed save.</summary>
    public event Action? Saved;

    /// <summary>Stops watching and saves what is left.</summary>
    public void Dispose()
    {
        lock (_lock)
        {
            if (_ended)
            {
                return;
            }

            _ended = true;
        }

        _copy.Changed -= Later;
        _timer.Dispose();
        SaveNow();
    }

    private void Later()
    {
        lock (_lock)
        {
            if (!_waiting && !_ended)
            {
                _waiting = true;
                _timer.Change(_delay, Timeout.InfiniteTimeSpan);
            }
        }
    }

    private void SaveNow()
    {
        lock (_lock)
        {
            _waiting = false;
        }

        try
        {
            _copy.Save();
        }
        catch (NotebookFormatException problem)
        {
            lock (_lock)
            {
                if (!_ended)
                {
                    _waiting = true;
                    _timer.Change(10 * _delay, Timeout.InfiniteTimeSpan);
                }
            }

            Failed?.Invoke(problem.Message);
            return;
        }

        Saved?.Invoke();
    }
}
