namespace SunLessons.Kernel;

/// <summary>
/// The threads that run a cell's code at this moment, those that the cell started included. A cell that waits (for a lock, a thread, an event,
/// a task) passes no check; such a wait is ended from outside by interrupting the thread. What is interrupted is only a thread that
/// has been seen waiting twice, so that the short waits of everybody's code are left alone.
/// </summary>
internal static class CellThreads
{
    // Flows along with awaits, tasks and new threads, and tells each thread when it begins and ends to work for a cell.
    private static readonly AsyncLocal<object?> Mark = new(Moved);
    private static readonly List<Seat> Seats = [];

    [ThreadStatic]
    private static Seat? _seat;

    /// <summary>From here on the calling flow works for a cell.</summary>
    public static void Enter() => Mark.Value = Seats;

    /// <summary>Whether any thread works for a cell now.</summary>
    public static bool AnyInside
    {
        get
        {
            lock (Seats)
            {
                return Seats.Exists(seat => seat.IsInside);
            }
        }
    }

    /// <summary>Ends the waiting of threads that wait now and waited at the last call.</summary>
    public static void InterruptWaiting()
    {
        lock (Seats)
        {
            Seats.RemoveAll(seat => !seat.Thread.IsAlive);
            foreach (var seat in Seats)
            {
                var waits = seat.IsInside && (seat.Thread.ThreadState & ThreadState.WaitSleepJoin) != 0;
                if (waits && seat.Waited)
                {
                    seat.IsInterrupted = true;
                    seat.Thread.Interrupt();
                }

                seat.Waited = waits;
            }
        }
    }

    // Nothing may be thrown in here: the runtime ends the process for it.
    private static void Moved(AsyncLocalValueChangedArgs<object?> change)
    {
        var seat = _seat ??= Take();
        seat.IsInside = change.CurrentValue is not null;
        if (!seat.IsInside && seat.IsInterrupted)
        {
            // The interrupt may have come when the wait was over: then it would strike whatever this thread does next.
            seat.IsInterrupted = false;
            Uninterrupted(() => Thread.Sleep(0));
        }
    }

    private static Seat Take()
    {
        var seat = new Seat(Thread.CurrentThread);
        Uninterrupted(() =>
        {
            lock (Seats)
            {
                Seats.Add(seat);
            }
        });
        return seat;
    }

    private static void Uninterrupted(Action action)
    {
        for (var done = false; !done;)
        {
            try
            {
                action();
                done = true;
            }
            catch (ThreadInterruptedException)
            {
                // That was the interrupt; now without it.
            }
        }
    }

    private sealed class Seat(Thread thread)
    {
        private volatile bool _isInside;
        private volatile bool _isInterrupted;

        public Thread Thread { get; } = thread;

        public bool Waited { get; set; }

        public bool IsInside
        {
            get => _isInside;
            set => _isInside = value;
        }

        public bool IsInterrupted
        {
            get => _isInterrupted;
            set => _isInterrupted = value;
        }
    }
}
