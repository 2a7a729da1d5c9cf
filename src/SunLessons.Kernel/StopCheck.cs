using System.ComponentModel;
using System.Runtime.CompilerServices;

namespace SunLessons.Kernel;

/// <summary>
/// What the kernel writes into loops, methods and handlers of a cell, so that a cell that runs for ever, calls itself without end
/// or fills the memory ends as an exception and keeps its variables. Learners never write these calls themselves.
/// </summary>
[EditorBrowsable(EditorBrowsableState.Never)]
public static class StopCheck
{
    private const int LooksBeforeAbandoning = 20;
    private static readonly TimeSpan Look = TimeSpan.FromMilliseconds(20);
    private static readonly TimeSpan StraysTime = TimeSpan.FromMilliseconds(200);

    // One volatile read is all that a turn of a loop pays: 616 to 627 ms for 2e8 empty turns (measured before this was written).
    private static volatile bool _wanted;
    private static volatile string? _reason;
    private static volatile bool _running;
    private static volatile CancellationTokenSource _stop = new();
    private static volatile CancellationTokenSource _abandon = new();

    /// <summary>Why the running cell is being stopped; null when it is not.</summary>
    internal static string? Reason => _reason;

    /// <summary>
    /// Cancelled when the cell was asked to stop and no thread works for it any more, yet it has not ended: it waits for something that nobody
    /// can end, and whoever waits for the cell need not.
    /// </summary>
    internal static CancellationToken Abandoned => _abandon.Token;

    /// <summary>Ends the cell when a stop was asked for.</summary>
    /// <exception cref="OperationCanceledException">A stop was asked for.</exception>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void Turn()
    {
        if (_wanted)
        {
            Throw();
        }
    }

    /// <summary>As <see cref="Turn"/>, and ends a cell that calls itself without end before the stack is full, which would end the process.</summary>
    /// <exception cref="OperationCanceledException">A stop was asked for.</exception>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void Call()
    {
        if (_wanted)
        {
            Throw();
        }

        if (!RuntimeHelpers.TryEnsureSufficientExecutionStack())
        {
            TooDeep();
        }
    }

    /// <summary>Awaits a task, but not beyond a stop.</summary>
    /// <param name="task">The task.</param>
    /// <exception cref="OperationCanceledException">A stop was asked for.</exception>
    public static Task Await(Task task) => task.IsCompleted ? task : task.WaitAsync(_stop.Token);

    /// <summary>Awaits a task, but not beyond a stop.</summary>
    /// <typeparam name="T">What the task gives.</typeparam>
    /// <param name="task">The task.</param>
    /// <exception cref="OperationCanceledException">A stop was asked for.</exception>
    public static Task<T> Await<T>(Task<T> task) => task.IsCompleted ? task : task.WaitAsync(_stop.Token);

    /// <summary>A cell begins: the calling flow works for it from here on.</summary>
    internal static void Begin()
    {
        _reason = null;
        _wanted = false;
        // Not disposed: a task that an earlier cell left behind may still hold the old one.
        _stop = new CancellationTokenSource();
        _abandon = new CancellationTokenSource();
        _running = true;
        HeapWatch.Start();
        CellThreads.Enter();
    }

    internal static void End()
    {
        _running = false;
        HeapWatch.Stop();
        if (_wanted)
        {
            // Threads that the cell left behind end at their next check; controls that are moved afterwards must not.
            RequestStrays();
        }
    }

    internal static void Request(string reason)
    {
        if (_running)
        {
            _reason ??= reason;
            _wanted = true;
            // On a thread of its own: what waits goes on inside this call, and whoever asks for a stop must not run the rest of the cell.
            var (stop, abandon) = (_stop, _abandon);
            Background("stop waiting", () =>
            {
                stop.Cancel();
                for (var looks = 0; ReferenceEquals(stop, _stop) && _running; looks++)
                {
                    CellThreads.InterruptWaiting();
                    Thread.Sleep(Look);
                    if (looks > LooksBeforeAbandoning && !CellThreads.AnyInside)
                    {
                        abandon.Cancel();
                    }
                }
            });
        }
    }

    /// <summary>
    /// Ends what cells left running (tasks, the recomputing of a live figure) when no cell runs: the flag stands for a fifth of a
    /// second, in which every loop passes a check and every wait is ended.
    /// </summary>
    internal static void RequestStrays()
    {
        if (_running)
        {
            return;
        }

        _reason = "Stopped as asked.";
        _wanted = true;
        // A cell that begins meanwhile ends this, also one that is over before the next look: what it sets off was not to be stopped.
        var stop = _stop;
        Background("stop strays", () =>
        {
            for (var passed = TimeSpan.Zero; passed < StraysTime && ReferenceEquals(stop, _stop); passed += Look)
            {
                CellThreads.InterruptWaiting();
                Thread.Sleep(Look);
            }

            if (ReferenceEquals(stop, _stop))
            {
                _wanted = false;
                _reason = null;
            }
        });
    }

    // Not part of the flow that works for a cell, which is interrupted where it waits.
    private static void Background(string name, ThreadStart work) => new Thread(work) { IsBackground = true, Name = name }.UnsafeStart();

    private static void Throw() => throw new OperationCanceledException(_reason);

    private static void TooDeep()
    {
        var sentence = "The cell called itself too often: the stack was nearly full. Look for a method that calls itself without an end.";
        throw new InsufficientExecutionStackException(sentence);
    }
}
