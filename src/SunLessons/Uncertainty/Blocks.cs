using System.Runtime.ExceptionServices;

namespace SunLessons.Uncertainty;

/// <summary>Runs numbered blocks of work, several at once where the platform has threads.</summary>
internal static class Blocks
{
    public static void Each(int count, int? threads, Action<int> work)
    {
        // A published lesson in a browser has one thread, and waiting for another is refused there.
        if (threads == 1 || OperatingSystem.IsBrowser())
        {
            for (var k = 0; k < count; k++)
            {
                work(k);
            }

            return;
        }

        try
        {
            Parallel.For(0, count, new ParallelOptions { MaxDegreeOfParallelism = threads ?? -1 }, work);
        }
        catch (AggregateException several)
        {
            // What a model throws, a stopped cell among it, reaches the caller as it was thrown.
            ExceptionDispatchInfo.Throw(several.InnerExceptions[0]);
        }
    }
}
