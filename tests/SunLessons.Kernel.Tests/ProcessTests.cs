using System.Diagnostics;
using System.Globalization;
using SunLessons.Jupyter.Client;

namespace SunLessons.Kernel.Tests;

/// <summary>The kernel as a process: what it listens on, how it ends, what stays behind.</summary>
public sealed class ProcessTests
{
    [Fact]
    public async Task No_kernel_is_left_five_seconds_after_its_parent_was_killed()
    {
        var host = Kernels.Command.Executable;
        using var parent = Process.Start(new ProcessStartInfo(host, [typeof(ProcessTests).Assembly.Location, "parent-host"]) { RedirectStandardOutput = true })!;
        var number = int.Parse((await parent.StandardOutput.ReadLineAsync())!, CultureInfo.InvariantCulture);
        using var kernel = Process.GetProcessById(number);
        Assert.False(kernel.HasExited);
        // Only the parent, not its children: as when it crashes or is killed by the system.
        parent.Kill(entireProcessTree: false);
        await parent.WaitForExitAsync();
        using var patience = new CancellationTokenSource(TimeSpan.FromSeconds(5));
        await kernel.WaitForExitAsync(patience.Token);
        Assert.True(kernel.HasExited);
    }

    [Fact]
    public async Task A_shutdown_ends_the_process_and_its_connection_file_and_is_no_death()
    {
        var deaths = 0;
        var kernel = await Kernels.StartAsync();
        kernel.Client.Died += _ => deaths++;
        using var process = Process.GetProcessById(kernel.ProcessId);
        await kernel.DisposeAsync();
        Assert.True(process.HasExited);
        Assert.Equal(0, deaths);
    }

    [Fact]
    public async Task A_kernel_that_ends_by_itself_is_reported_and_fails_what_waits_for_it()
    {
        await using var kernel = await Kernels.StartAsync();
        var died = new TaskCompletionSource<string>(TaskCreationOptions.RunContinuationsAsynchronously);
        kernel.Client.Died += died.SetResult;
        await Assert.ThrowsAsync<KernelDiedException>(() => kernel.Client.RunAsync("Environment.Exit(3);"));
        Assert.Equal("The kernel's process ended by itself (exit code 3); its variables are gone.", await died.Task.WaitAsync(TimeSpan.FromSeconds(5)));
        Assert.True(kernel.Client.IsDead);
    }

    [Fact]
    public async Task A_kernel_listens_on_five_loopback_ports_and_nothing_else()
    {
        // /proc is Linux's; elsewhere the connection file's own check (loopback only) and the code's five binds are all there is.
        Assert.SkipUnless(OperatingSystem.IsLinux(), "Reads /proc/PID/net/tcp.");
        await using var kernel = await Kernels.StartAsync();
        await kernel.Client.RunAsync("1");
        var own = Directory.EnumerateFiles($"/proc/{kernel.ProcessId}/fd")
            .Select(f => new FileInfo(f).LinkTarget).OfType<string>()
            .Where(t => t.StartsWith("socket:[", StringComparison.Ordinal)).Select(t => t[8..^1]).ToHashSet();
        var listening = new List<string>();
        foreach (var table in new[] { "tcp", "tcp6", "udp", "udp6" })
        {
            foreach (var row in File.ReadLines($"/proc/{kernel.ProcessId}/net/{table}").Skip(1))
            {
                var cells = row.Split(' ', StringSplitOptions.RemoveEmptyEntries);
                // State 0A is "listen"; a UDP socket listens in any state.
                if (own.Contains(cells[9]) && (cells[3] == "0A" || table[0] == 'u'))
                {
                    listening.Add(table + " " + cells[1].Split(':')[0]);
                }
            }
        }

        // 0100007F is 127.0.0.1 in the byte order of the table.
        Assert.Equal(Enumerable.Repeat("tcp 0100007F", 5), listening);
    }

    [Fact]
    public async Task A_wrong_connection_file_ends_the_kernel_with_one_sentence()
    {
        var command = KernelCommand.DotNet(typeof(ProcessTests).Assembly.Location, "kernel-host", "/no/such/file.json");
        var error = await Assert.ThrowsAsync<IOException>(() => KernelProcess.StartAsync(command));
        Assert.StartsWith("The kernel ended while it started. It wrote: Could not find", error.Message);
    }
}
