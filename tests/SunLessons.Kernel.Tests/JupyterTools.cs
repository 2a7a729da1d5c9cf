using System.Diagnostics;
using System.Text.Json;

namespace SunLessons.Kernel.Tests;

/// <summary>
/// Runs Python programs that use Jupyter's own client packages. Those come with the system (Debian: python3-nbclient,
/// python3-jupyter-kernel-test), so a machine may lack them: then tests/run sets SUNLESSONS_WITHOUT=jupyter, says what was left out, and
/// these tests are left out by name. Where nothing may be left out (CI=true, or SUNLESSONS_REQUIRE_JUPYTER=1) they fail instead.
/// </summary>
internal static class JupyterTools
{
    private const string Packages = "python3-nbclient python3-jupyter-kernel-test";

    public static async Task<(int ExitCode, string Output, string Errors)> RunAsync(string script)
    {
        var required = Environment.GetEnvironmentVariable("CI") == "true" || Environment.GetEnvironmentVariable("SUNLESSONS_REQUIRE_JUPYTER") == "1";
        var without = (Environment.GetEnvironmentVariable("SUNLESSONS_WITHOUT") ?? "").Split([',', ' '], StringSplitOptions.TrimEntries).Contains("jupyter");
        Assert.SkipWhen(without && !required, $"Left out: this machine lacks {Packages}.");

        // The system's own Python has the system's packages; another one on the path usually has not.
        var python = File.Exists("/usr/bin/python3") ? "/usr/bin/python3" : OperatingSystem.IsWindows() ? "python" : "python3";
        var probe = await StartAsync(python, ["-c", "import nbclient, jupyter_kernel_test"]);
        Assert.True(probe.ExitCode == 0, $"Missing on this machine: {Packages} (apt-get install {Packages}).");
        return await StartAsync(python, [Path.Combine(AppContext.BaseDirectory, "jupyter", script)]);
    }

    private static async Task<(int ExitCode, string Output, string Errors)> StartAsync(string program, string[] arguments)
    {
        var start = new ProcessStartInfo(program, arguments) { RedirectStandardOutput = true, RedirectStandardError = true, UseShellExecute = false };
        start.Environment["SUNLESSONS_TEST_KERNEL"] = JsonSerializer.Serialize<string[]>([Kernels.Command.Executable, .. Kernels.Command.Arguments]);
        start.Environment["PYTHONDONTWRITEBYTECODE"] = "1";
        using var process = Process.Start(start)!;
        var output = process.StandardOutput.ReadToEndAsync();
        var errors = process.StandardError.ReadToEndAsync();
        using var patience = new CancellationTokenSource(TimeSpan.FromMinutes(3));
        try
        {
            await process.WaitForExitAsync(patience.Token);
        }
        catch (OperationCanceledException)
        {
            process.Kill(entireProcessTree: true);
            throw new TimeoutException($"{arguments[^1]} had not ended after 3 minutes.");
        }

        return (process.ExitCode, await output, await errors);
    }
}
