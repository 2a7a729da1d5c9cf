using System.Diagnostics;
using System.Globalization;
using System.Runtime.InteropServices;
using SunLessons.Jupyter.Client;

namespace SunLessons.Kernel;

/// <summary>
/// Ends this process when the one that started it has ended, however that happened. On Unix a parent that ends leaves its
/// children to another process, so the parent's number changes: looked at twice a second, on a thread of its own that no cell can
/// hold up. (A death signal would be quicker but follows the starting thread, not the process: a pool thread that retires would
/// kill the kernel.) On Windows the parent's process is opened and waited for.
/// </summary>
internal static partial class ParentWatch
{
    private static readonly TimeSpan Interval = TimeSpan.FromMilliseconds(500);

    public static void Start(Action<string> log)
    {
        var ours = Environment.GetEnvironmentVariable(KernelProcess.ParentVariable);
        var jupyters = Environment.GetEnvironmentVariable("JPY_PARENT_PID");
        Func<bool>? isGone = null;
        if (int.TryParse(ours, NumberStyles.None, CultureInfo.InvariantCulture, out var parent))
        {
            isGone = OperatingSystem.IsWindows() ? WindowsProcess(parent) : UnixParent(parent);
        }
        else if (long.TryParse(jupyters, NumberStyles.None, CultureInfo.InvariantCulture, out var number))
        {
            // Jupyter's clients give a process number on Unix, and on Windows a handle that this process has inherited.
            isGone = OperatingSystem.IsWindows() ? WindowsHandle((nint)number) : UnixParent((int)number);
        }

        if (isGone is null)
        {
            return;
        }

        new Thread(() =>
        {
            while (!isGone())
            {
                Thread.Sleep(Interval);
            }

            log("The program that started this kernel has ended, so the kernel ends too.");
            EndProcess(0);
        })
        { IsBackground = true, Name = "parent watch" }.Start();
    }

    /// <summary>Ends this process now: in order where that works within half a second, else the hard way.</summary>
    public static void EndProcess(int code)
    {
        new Thread(() =>
        {
            Thread.Sleep(500);
            Process.GetCurrentProcess().Kill();
        })
        { IsBackground = true }.Start();
        Environment.Exit(code);
    }

    private static Func<bool> UnixParent(int parent)
    {
        // Where something stands between (a shell, "dotnet run"), the number given is no parent of ours: then it is only asked whether it lives.
        if (GetParentProcessId() == parent)
        {
            return () => GetParentProcessId() != parent;
        }

        return WindowsProcess(parent);
    }

    private static Func<bool> WindowsProcess(int number)
    {
        try
        {
            // Held open, so that a later process with the same number is not taken for it.
            var process = Process.GetProcessById(number);
            return () => process.HasExited;
        }
        catch (ArgumentException)
        {
            return () => true;
        }
    }

    private static Func<bool> WindowsHandle(nint handle)
    {
        var waitable = new EventWaitHandle(false, EventResetMode.ManualReset)
        {
            SafeWaitHandle = new Microsoft.Win32.SafeHandles.SafeWaitHandle(handle, ownsHandle: false),
        };
        return () => waitable.WaitOne(0);
    }

    [LibraryImport("libc", EntryPoint = "getppid")]
    private static partial int GetParentProcessId();
}
