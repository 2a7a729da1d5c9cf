using System.Diagnostics;

namespace SunLessons.App.Tests.Support;

/// <summary>The program as the README's command builds it, run as a process of its own.</summary>
internal static class Program
{
    public static string Assembly { get; } = RepositoryFiles.Path("src", "SunLessons.App", "bin", Configuration, "net10.0", "SunLessons.App.dll");

    /// <summary>Release, or Debug if these tests were built so.</summary>
    public static string Configuration => AppContext.BaseDirectory.Contains($"{Path.DirectorySeparatorChar}Debug{Path.DirectorySeparatorChar}", StringComparison.Ordinal) ? "Debug" : "Release";

    /// <summary>Runs a verb to its end.</summary>
    public static async Task<Finished> RunAsync(params string[] arguments)
    {
        using var process = Start(arguments);
        var output = process.StandardOutput.ReadToEndAsync();
        var errors = process.StandardError.ReadToEndAsync();
        await process.WaitForExitAsync();
        return new Finished(process.ExitCode, await output, await errors);
    }

    public static Process Start(params string[] arguments)
    {
        var start = new ProcessStartInfo("dotnet") { RedirectStandardOutput = true, RedirectStandardError = true, UseShellExecute = false };
        start.ArgumentList.Add("exec");
        start.ArgumentList.Add(Assembly);
        foreach (var argument in arguments)
        {
            start.ArgumentList.Add(argument);
        }

        start.Environment["SUNLESSONS_AHEAD"] = "off";
        return Process.Start(start)!;
    }
}

internal sealed record Finished(int ExitCode, string Output, string Errors);
