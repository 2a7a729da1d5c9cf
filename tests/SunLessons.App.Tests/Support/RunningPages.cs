using System.Diagnostics;

namespace SunLessons.App.Tests.Support;

/// <summary>The pages of one running program, with a learner's folder of their own.</summary>
internal sealed class RunningPages : IAsyncDisposable
{
    private readonly Process _process;

    private RunningPages(Process process, Uri address, string learnerFolder)
    {
        _process = process;
        AddressWithToken = address;
        LearnerFolder = learnerFolder;
    }

    /// <summary>The printed address.</summary>
    public Uri AddressWithToken { get; }

    public Uri Root => new(AddressWithToken.GetLeftPart(UriPartial.Authority) + "/");

    public string LearnerFolder { get; }

    public Process Process => _process;

    public static async Task<RunningPages> StartAsync(string? learnerFolder = null, params string[] more)
    {
        learnerFolder ??= Directory.CreateTempSubdirectory("sunlessons-test-").FullName;
        var process = Support.Program.Start(["--no-open", "--learner", learnerFolder, .. more]);
        var errors = process.StandardError.ReadToEndAsync();
        while (await process.StandardOutput.ReadLineAsync() is { } line)
        {
            if (line.Split(" at ", 2) is [_, var address] && Uri.TryCreate(address.Trim(), UriKind.Absolute, out var uri))
            {
                _ = process.StandardOutput.ReadToEndAsync();
                return new RunningPages(process, uri, learnerFolder);
            }
        }

        throw new InvalidOperationException("The program ended without printing an address: " + await errors);
    }

    /// <summary>Ends the program as a power cut would.</summary>
    public async Task KillAsync()
    {
        _process.Kill(entireProcessTree: true);
        await _process.WaitForExitAsync();
    }

    public async ValueTask DisposeAsync()
    {
        if (!_process.HasExited)
        {
            await KillAsync();
        }

        _process.Dispose();
    }
}
