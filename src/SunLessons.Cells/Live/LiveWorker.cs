namespace SunLessons.Cells.Live;

/// <summary>
/// Recomputes what a moved control touched: one thing after another, on one worker, never two at a time. Whatever is touched again while it
/// waits or computes is computed once more with the newest values, not once for each move. Nothing polls: the worker lives while there is work.
/// </summary>
internal sealed class LiveWorker
{
    private readonly Lock _gate = new();
    private readonly List<LiveThing> _waiting = [];
    private TaskCompletionSource _settled = Done();
    private bool _running;

    /// <summary>Completes when nothing waits and nothing computes.</summary>
    public Task Settled
    {
        get
        {
            lock (_gate)
            {
                return _settled.Task;
            }
        }
    }

    public void Touch(LiveThing thing)
    {
        lock (_gate)
        {
            if (!_waiting.Contains(thing))
            {
                _waiting.Add(thing);
            }

            if (_running)
            {
                return;
            }

            _running = true;
            _settled = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
        }

        _ = Task.Run(Drain);
    }

    private static TaskCompletionSource Done()
    {
        var done = new TaskCompletionSource();
        done.SetResult();
        return done;
    }

    private void Drain()
    {
        while (true)
        {
            LiveThing next;
            lock (_gate)
            {
                if (_waiting.Count == 0)
                {
                    _running = false;
                    _settled.SetResult();
                    return;
                }

                next = _waiting[0];
                _waiting.RemoveAt(0);
            }

            try
            {
                next.Refresh();
            }
            catch (Exception error) when (error is not OutOfMemoryException)
            {
                // A page that went away must not leave everything else standing; what could not be told is told when a page comes back.
                next.NotTold = error;
            }
        }
    }
}
