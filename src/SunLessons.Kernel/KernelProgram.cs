using System.Runtime.ExceptionServices;
using System.Runtime.InteropServices;
using SunLessons.Jupyter;
using SunLessons.Jupyter.Client;
using SunLessons.Jupyter.Server;
using SunLessons.Kernel.Engine;
using SunLessons.Kernel.Session;

namespace SunLessons.Kernel;

/// <summary>The kernel as a program: a process runs one kernel and ends with it.</summary>
public static class KernelProgram
{
    /// <summary>Environment variable that chooses the script engine: "interactive" for Microsoft.DotNet.Interactive; anything else, or nothing, for the usual one.</summary>
    public const string EngineVariable = "SUNLESSONS_ENGINE";

    /// <summary>
    /// Serves the kernel that a connection file describes until it is asked to shut down, or until the process that started it
    /// has ended (<see cref="KernelProcess.ParentVariable"/>, or JPY_PARENT_PID as Jupyter's clients set it).
    /// Takes the process's console: from here on it belongs to the cells, and the kernel's own remarks go to the standard error stream.
    /// </summary>
    /// <param name="connectionFile">Path of the connection file.</param>
    /// <returns>Exit code: 0 after a shutdown, 75 (<see cref="KernelProcess.StuckExitCode"/>) when a cell could not be stopped, 2 when the connection file is wrong or a port is taken.</returns>
    public static async Task<int> RunAsync(string connectionFile)
    {
        // Not Console.Error: that is the cells' from now on, and a remark of ours must not land in a lesson.
        var errors = new StreamWriter(Console.OpenStandardError()) { AutoFlush = true };
        var log = (string line) =>
        {
            lock (errors)
            {
                errors.WriteLine(line.ReplaceLineEndings(" | "));
            }
        };

        // The compiler's first work takes longer than all else and runs beside it. Not disposed: the process ends with it, and waits for
        // nothing that a cell left behind.
        IScriptEngine engine = Environment.GetEnvironmentVariable(EngineVariable) == "interactive" ? new InteractiveEngine(log) : new RoslynEngine(log);
        _ = engine.WarmUpAsync();
        ConnectionFile connection;
        try
        {
            connection = ConnectionFile.Read(connectionFile);
        }
        catch (Exception e) when (e is FormatException or IOException or UnauthorizedAccessException)
        {
            log(e.Message);
            return 2;
        }

        ParentWatch.Start(log);
        KeepThreadsForSockets();
        KeepAFolder();
        using var transport = new SocketTransport(connection);
        using var server = new KernelServer(transport, connection.Key, log);
        using var session = new KernelSession(server, engine, log);
        Verbs.Showing.Session = session;
        // A learner's thread that ends in an error would take the process and every variable with it.
        ExceptionHandling.SetUnhandledExceptionHandler(exception =>
        {
            log($"Uncaught: {exception}");
            session.TellUncaught(exception);
            return true;
        });
        var exitCode = 0;
        session.GaveUp += () =>
        {
            exitCode = KernelProcess.StuckExitCode;
            server.Stop();
        };
        try
        {
            server.Start();
        }
        catch (IOException e)
        {
            log(e.Message);
            return 2;
        }

        // The sockets are open: from here on this thread has time.
        session.BeginLesson();
        // Terminals and some clients interrupt by signal; that means the cell, not the kernel.
        using var signal = PosixSignalRegistration.Create(PosixSignal.SIGINT, context =>
        {
            context.Cancel = true;
            session.Interrupt();
        });
        using var end = PosixSignalRegistration.Create(PosixSignal.SIGTERM, context =>
        {
            context.Cancel = true;
            server.Stop();
        });

        await server.Completion.ConfigureAwait(false);
        // Threads that a cell left behind must not keep the process: after the sockets have sent the last reply, it ends.
        server.Dispose();
        ParentWatch.EndProcess(exitCode);
        return exitCode;
    }

    /// <summary>
    /// A cell with parallel loops fills the thread pool, and then the sockets hear nothing: not even the interrupt (measured: no answer
    /// in 8 s to 50 endless tasks). On Unix the runtime can hand on what arrives on its own socket thread instead, which is safe here because
    /// the sockets' library only puts it into a queue. Windows has no such switch; there, and for completion and the like, the pool gets
    /// more threads that start without delay.
    /// </summary>
    private static void KeepThreadsForSockets()
    {
        if (!OperatingSystem.IsWindows())
        {
            Environment.SetEnvironmentVariable("DOTNET_SYSTEM_NET_SOCKETS_INLINE_COMPLETIONS", "1");
        }

        ThreadPool.SetMinThreads(64, 64);
    }

    /// <summary>A working folder that has been deleted makes every cell fail: then the temporary folder takes its place.</summary>
    private static void KeepAFolder()
    {
        try
        {
            _ = Directory.GetCurrentDirectory();
        }
        catch (IOException)
        {
            Directory.SetCurrentDirectory(Path.GetTempPath());
        }
    }
}
