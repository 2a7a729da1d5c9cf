using System.Diagnostics;
using SunLessons.App.Tests.Support;

namespace SunLessons.App.Tests.FrontEnds;

/// <summary>Runs a program of the system with an environment, and never waits without end.</summary>
internal static class Tool
{
    /// <summary>The system's own Python has the system's Jupyter packages; another one on the path usually has not.</summary>
    public static string Python { get; } = File.Exists("/usr/bin/python3") ? "/usr/bin/python3" : OperatingSystem.IsWindows() ? "python" : "python3";

    public static string Script(string name) => RepositoryFiles.Path("tests", "SunLessons.App.Tests", "FrontEnds", "python", name);

    public static async Task<Finished> RunAsync(string program, string[] arguments, IReadOnlyDictionary<string, string>? environment = null, string? folder = null, int minutes = 5)
    {
        using var process = Start(program, arguments, environment, folder);
        var output = process.StandardOutput.ReadToEndAsync();
        var errors = process.StandardError.ReadToEndAsync();
        using var patience = new CancellationTokenSource(TimeSpan.FromMinutes(minutes));
        try
        {
            await process.WaitForExitAsync(patience.Token);
        }
        catch (OperationCanceledException)
        {
            process.Kill(entireProcessTree: true);
            throw new TimeoutException($"{program} {string.Join(' ', arguments)} had not ended after {minutes} minutes.");
        }

        return new Finished(process.ExitCode, await output, await errors);
    }

    public static Process Start(string program, string[] arguments, IReadOnlyDictionary<string, string>? environment = null, string? folder = null)
    {
        var start = new ProcessStartInfo(program, arguments) { RedirectStandardOutput = true, RedirectStandardError = true, UseShellExecute = false, WorkingDirectory = folder ?? "" };
        start.Environment["SUNLESSONS_AHEAD"] = "off";
        start.Environment["PYTHONDONTWRITEBYTECODE"] = "1";
        foreach (var (name, value) in environment ?? new Dictionary<string, string>())
        {
            start.Environment[name] = value;
        }

        return Process.Start(start)!;
    }

    /// <summary>Our own program with a verb and an environment.</summary>
    public static Task<Finished> SunLessonsAsync(IReadOnlyDictionary<string, string>? environment, params string[] arguments) =>
        RunAsync("dotnet", ["exec", Support.Program.Assembly, .. arguments], environment);
}
