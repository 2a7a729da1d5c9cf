namespace SunLessons.Kernel;

/// <summary>
/// Looks ten times a second at the memory of a running cell and stops the cell before the machine has none left: a cell may use
/// 1000 MB more than there was before it, or half of what the machine (or its container) has, whichever is less.
/// </summary>
internal sealed class HeapWatch
{
    private const long Megabyte = 1024 * 1024;
    private static readonly TimeSpan Interval = TimeSpan.FromMilliseconds(100);

    private readonly long _limit;
    private readonly long _allowance;
    private readonly ManualResetEventSlim _ended = new();

    private HeapWatch()
    {
        _allowance = Math.Min(1000 * Megabyte, GC.GetGCMemoryInfo().TotalAvailableMemoryBytes / 2);
        _limit = GC.GetTotalMemory(false) + _allowance;
        // A thread of its own, not a timer: a cell may fill the pool.
        new Thread(Watch) { IsBackground = true, Name = "memory watch" }.UnsafeStart();
    }

    public static HeapWatch Start() => new();

    public void Stop() => _ended.Set();

    private void Watch()
    {
        while (!_ended.Wait(Interval))
        {
            Look();
        }
    }

    private void Look()
    {
        // The first number counts what nobody holds any more, too; only a collection tells what is really in use.
        if (GC.GetTotalMemory(false) > _limit && GC.GetTotalMemory(true) > _limit)
        {
            StopCheck.Request($"The cell used more than {_allowance / Megabyte} MB of memory, so it was stopped. Variables that were set before this moment are kept; set those that hold much to null.");
        }
    }
}
