using System.Diagnostics;
using System.Globalization;
using System.Runtime.InteropServices;

namespace SunLessons.Jupyter.Client;

/// <summary>
/// A kernel in a process of its own, with a client to it. Disposing asks it to end and, when it does not, ends it with all its
/// children. The kernel itself ends when this program does (<see cref="ParentVariable"/>), however that happens.
/// </summary>
public sealed class KernelProcess : IAsyncDisposable
{
    /// <summary>Environment variable that carries the number of the process whose end the kernel must not outlive.</summary>
    public const string ParentVariable = "SUNLESSONS_PARENT_PID";

    private readonly Process _process;
    private readonly string _connectionPath;
    private readonly LogTail _tail;
    private bool _ending;

    private KernelProcess(Process process, string connectionPath, KernelClient client, LogTail tail)
    {
        _process = process;
        _connectionPath = connectionPath;
        _tail = tail;
        Client = client;
    }

    /// <summary>The client to talk to the kernel with. Its <see cref="KernelClient.Died"/> is raised when the process ends unasked.</summary>
    public KernelClient Client { get; }

    /// <summary>Number of the kernel's process.</summary>
    public int ProcessId => _process.Id;

    /// <summary>The last lines that the process wrote to its own standard error and output, for a report of what went wrong.</summary>
    public string Log => _tail.Text;

    /// <summary>Starts a kernel and waits until it answers.</summary>
    /// <param name="command">What to start.</param>
    /// <param name="log">Takes one line for each thing a maintainer should know; may be null.</param>
    /// <param name="stop">Stops waiting and ends the process.</param>
    /// <exception cref="IOException">It could not be started or ended at once; the message says what it wrote.</exception>
    public static async Task<KernelProcess> StartAsync(KernelCommand command, Action<string>? log = null, CancellationToken stop = default)
    {
        var connection = ConnectionFile.CreateNew();
        var path = connection.WritePrivate();
        var start = new ProcessStartInfo
        {
            FileName = command.Executable,
            UseShellExecute = false,
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            CreateNoWindow = true,
        };
        if (command.WorkingFolder is { } folder)
        {
            start.WorkingDirectory = folder;
        }

        foreach (var argument in command.Arguments)
        {
            start.ArgumentList.Add(argument.Replace(KernelCommand.ConnectionFile, path, StringComparison.Ordinal));
        }

        start.Environment[ParentVariable] = Environment.ProcessId.ToString(CultureInfo.InvariantCulture);
        // Measured: without tiered PGO's instrumentation and without a second collector thread a kernel starts about 0.1 s sooner.
        start.Environment.TryAdd("DOTNET_TieredPGO", "0");
        start.Environment.TryAdd("DOTNET_gcConcurrent", "0");

        Process process;
        try
        {
            process = Process.Start(start)!;
        }
        catch (System.ComponentModel.Win32Exception e)
        {
            Forget(path);
            throw new IOException($"The kernel's program \"{command.Executable}\" could not be started: {e.Message}", e);
        }

        var tail = new LogTail();
        process.OutputDataReceived += (_, e) => tail.Add(e.Data);
        process.ErrorDataReceived += (_, e) => tail.Add(e.Data);
        process.BeginOutputReadLine();
        process.BeginErrorReadLine();
        process.StandardInput.Close();

        var client = new KernelClient(connection, log);
        var kernel = new KernelProcess(process, path, client, tail);
        process.EnableRaisingEvents = true;
        process.Exited += (_, _) => kernel.Ended();
        try
        {
            // A process that ends marks the client dead, which ends this waiting.
            await client.WaitUntilReadyAsync(stop).ConfigureAwait(false);
            return kernel;
        }
        catch (KernelDiedException e)
        {
            // The end of the process can be heard before its last words: this waits for both, for what it wrote is the reason.
            using var patience = new CancellationTokenSource(TimeSpan.FromSeconds(5));
            try
            {
                await process.WaitForExitAsync(patience.Token).ConfigureAwait(false);
            }
            catch (OperationCanceledException)
            {
                // A child of it holds the pipe open: then the reason is told without its last words.
            }

            await kernel.DisposeAsync().ConfigureAwait(false);
            throw new IOException($"The kernel ended while it started. It wrote: {tail.Text}", e);
        }
        catch
        {
            await kernel.DisposeAsync().ConfigureAwait(false);
            throw;
        }
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        if (_ending)
        {
            return;
        }

        _ending = true;
        try
        {
            if (!_process.HasExited)
            {
                // One second to end by itself: it answers within milliseconds unless a cell holds every thread.
                using var patience = new CancellationTokenSource(TimeSpan.FromSeconds(1));
                try
                {
                    await Client.ShutdownAsync(stop: patience.Token).ConfigureAwait(false);
                    await _process.WaitForExitAsync(patience.Token).ConfigureAwait(false);
                }
                catch (Exception e) when (e is OperationCanceledException or KernelDiedException)
                {
                    Kill();
                    using var end = new CancellationTokenSource(TimeSpan.FromSeconds(5));
                    await _process.WaitForExitAsync(end.Token).ConfigureAwait(false);
                }
            }
        }
        finally
        {
            await Client.DisposeAsync().ConfigureAwait(false);
            Forget(_connectionPath);
            _process.Dispose();
        }
    }

    /// <summary>Ends the process and all its children at once; <see cref="KernelClient.Died"/> follows.</summary>
    public void Kill()
    {
        try
        {
            _process.Kill(entireProcessTree: true);
        }
        catch (InvalidOperationException)
        {
            // It has ended meanwhile: that is what was wanted.
        }
    }

    private static void Forget(string path)
    {
        try
        {
            File.Delete(path);
        }
        catch (IOException)
        {
            // The kernel deletes it too when it ends; whoever comes second has nothing to do.
        }
    }

    private void Ended()
    {
        Forget(_connectionPath);
        var code = 0;
        try
        {
            code = _process.ExitCode;
        }
        catch (InvalidOperationException)
        {
            // Disposed while ending: nobody asks for the code any more.
        }

        Client.MarkDead(code == StuckExitCode
            ? "The cell waited where it could not be stopped, so the kernel was ended; its variables are gone."
            : $"The kernel's process ended by itself (exit code {code}); its variables are gone.");
    }

    /// <summary>Exit code by which a kernel says that it gave itself up because a cell could not be stopped otherwise.</summary>
    public const int StuckExitCode = 75;
}

/// <summary>What starts a kernel.</summary>
/// <param name="Executable">The program.</param>
/// <param name="Arguments">Its arguments; <see cref="ConnectionFile"/> in them is replaced by the connection file's path.</param>
/// <param name="WorkingFolder">Where it starts; null for the folder of this program.</param>
public sealed record KernelCommand(string Executable, IReadOnlyList<string> Arguments, string? WorkingFolder = null)
{
    /// <summary>What stands for the connection file's path, as the Jupyter kernelspec has it.</summary>
    public const string ConnectionFile = "{connection_file}";

    /// <summary>A .NET assembly, started by the dotnet host whose runtime runs this program.</summary>
    /// <param name="assembly">Path of the dll.</param>
    /// <param name="arguments">Arguments behind it.</param>
    public static KernelCommand DotNet(string assembly, params string[] arguments) => new(Host(), ["exec", assembly, .. arguments]);

    /// <summary>
    /// A program's own small executable looks for a runtime in fixed places only, and the host on the path may be another one;
    /// the host beside the runtime that runs this is certain. Where the program brings its own runtime there is none: then the path decides.
    /// </summary>
    private static string Host()
    {
        var name = OperatingSystem.IsWindows() ? "dotnet.exe" : "dotnet";
        var beside = Path.GetFullPath(Path.Combine(RuntimeEnvironment.GetRuntimeDirectory(), "..", "..", "..", name));
        return File.Exists(beside) ? beside : name;
    }
}
