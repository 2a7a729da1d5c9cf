namespace SunLessons.Kernel;

/// <summary>
/// Looks ten times a second at the memory of a running cell and stops the cell before the machine has none left: a cell may use
/// 1000 MB more than there was before it, or half of what the machine (or its container) has, whichever is less.
/// </summary>
internal static class HeapWatch
{
    private const long Megabyte = 1024 * 1024;
    private const int LooksBeforeRest = 20;
    private static readonly TimeSpan Interval = TimeSpan.FromMilliseconds(100);
    private static readonly AutoResetEvent Begun = new(false);
    private static long _limit;
    private static long _allowance;
    private static volatile bool _running;
    private static volatile bool _rests;
    private static bool _exists;

    /// <summary>A cell begins.</summary>
    public static void Start()
    {
        Volatile.Write(ref _allowance, Math.Min(1000 * Megabyte, GC.GetGCMemoryInfo().TotalAvailableMemoryBytes / 2));
        Volatile.Write(ref _limit, GC.GetTotalMemory(false) + _allowance);
        _running = true;
        // Each side writes its own flag before it reads the other's.
        Interlocked.MemoryBarrier();
        if (!_exists)
        {
            // A thread of its own, not a timer: a cell may fill the pool. One for all cells: a new one took an eighth of a short cell's time.
            _exists = true;
            new Thread(Watch) { IsBackground = true, Name = "memory watch" }.UnsafeStart();
        }
        else if (_rests)
        {
            Begun.Set();
        }
    }

    /// <summary>The cell has ended.</summary>
    public static void Stop() => _running = false;

    private static void Watch()
    {
        for (var idle = 0; ; idle = _running ? 0 : idle + 1)
        {
            if (idle >= LooksBeforeRest)
            {
                // Not woken ten times a second while the learner reads.
                _rests = true;
                Interlocked.MemoryBarrier();
                if (!_running)
                {
                    Begun.WaitOne();
                }

                _rests = false;
            }

            Thread.Sleep(Interval);
            if (_running)
            {
                Look();
            }
        }
    }

    private static void Look()
    {
        // The first number counts what nobody holds any more, too; only a collection tells what is really in use.
        var limit = Volatile.Read(ref _limit);
        if (GC.GetTotalMemory(false) > limit && GC.GetTotalMemory(true) > limit && limit == Volatile.Read(ref _limit))
        {
            StopCheck.Request($"The cell used more than {Volatile.Read(ref _allowance) / Megabyte} MB of memory, so it was stopped. Variables that were set before this moment are kept; set those that hold much to null.");
        }
    }
}
