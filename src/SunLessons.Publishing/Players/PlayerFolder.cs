using System.Diagnostics;
using System.Security.Cryptography;

namespace SunLessons.Publishing.Players;

/// <summary>
/// The packed player: shipped beside the program, or built once from the source beside it. It belongs to one build of the library and to one state of its own
/// source: a changed library brings another player, so that pages and program compute the same.
/// </summary>
public static class PlayerFolder
{
    private const string Stamp = "made-from.txt";

    /// <summary>Finds the packed player, or builds it, which takes about a minute.</summary>
    /// <param name="program">The folder of the running program.</param>
    /// <param name="say">Is told what takes long.</param>
    /// <returns>The folder with player.js, compiler.js and refs.</returns>
    /// <exception cref="PublishProblemException">There is none and it cannot be built; says why.</exception>
    public static async Task<string> FindAsync(string program, Action<string> say)
    {
        ArgumentNullException.ThrowIfNull(say);
        var folder = Path.Combine(program, "player");
        var source = SourceAbove(program);
        // A program that is shipped has no source above it, and takes the player that came with it.
        var stamp = StampOf(program) + (source is null ? "" : "\n" + StampOfSource(source));
        if (IsMadeFrom(folder, stamp))
        {
            return folder;
        }

        if (source is null)
        {
            throw new PublishProblemException($"The player for published pages is not beside the program ({folder}); install SunLessons again, or run it from its source.");
        }

        say("Building the player for published pages; this takes about a minute, once.");
        var work = Directory.CreateTempSubdirectory("sunlessons-player-").FullName;
        try
        {
            await BuildAsync(source, Path.Combine(work, "published"));
            var made = Path.Combine(work, "player");
            Directory.CreateDirectory(made);
            PlayerPack.Write(Path.Combine(work, "published", "wwwroot", "_framework"), made);
            await File.WriteAllTextAsync(Path.Combine(made, Stamp), stamp);
            Replace(made, folder);
        }
        finally
        {
            Directory.Delete(work, recursive: true);
        }

        return folder;
    }

    private static bool IsMadeFrom(string folder, string stamp) =>
        File.Exists(Path.Combine(folder, Stamp)) && (File.ReadAllText(Path.Combine(folder, Stamp)) + "\n").StartsWith(stamp + "\n", StringComparison.Ordinal);

    private static string StampOf(string program) => string.Join('\n', ((string[])["SunLessons.dll", "SunLessons.Words.dll", "SunLessons.Figures.dll", "SunLessons.Cells.dll", "SunLessons.Scripts.dll"])
        .Select(name => $"{name} {Convert.ToHexStringLower(SHA256.HashData(File.ReadAllBytes(Path.Combine(program, name))))}"));

    // The player's own files are compiled into no assembly of the program.
    private static string StampOfSource(string project)
    {
        using var all = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        foreach (var file in Directory.EnumerateFiles(Path.GetDirectoryName(project)!).Order(StringComparer.Ordinal))
        {
            all.AppendData(File.ReadAllBytes(file));
        }

        return $"{Path.GetFileName(project)} {Convert.ToHexStringLower(all.GetHashAndReset())}";
    }

    private static string? SourceAbove(string program)
    {
        for (var folder = new DirectoryInfo(program); folder is not null; folder = folder.Parent)
        {
            var project = Path.Combine(folder.FullName, "src", "SunLessons.Player", "SunLessons.Player.csproj");
            if (File.Exists(project))
            {
                return project;
            }
        }

        return null;
    }

    private static async Task BuildAsync(string project, string output)
    {
        var dotnet = Environment.GetEnvironmentVariable("DOTNET_HOST_PATH") is { Length: > 0 } host ? host : "dotnet";
        var start = new ProcessStartInfo(dotnet) { RedirectStandardOutput = true, RedirectStandardError = true, WorkingDirectory = Path.GetDirectoryName(project)! };
        foreach (var word in (string[])["publish", project, "-c", "Release", "-o", output, "-nologo", "-v", "quiet"])
        {
            start.ArgumentList.Add(word);
        }

        using var process = Process.Start(start) ?? throw new PublishProblemException("The .NET SDK could not be started; publishing from source needs the command dotnet.");
        var said = await Task.WhenAll(process.StandardOutput.ReadToEndAsync(), process.StandardError.ReadToEndAsync());
        await process.WaitForExitAsync();
        if (process.ExitCode != 0)
        {
            throw new PublishProblemException($"The player for published pages could not be built: {string.Join('\n', said).Trim()}");
        }
    }

    // Moved in whole: a publishing that is stopped half-way leaves the old player or none, never half a one.
    private static void Replace(string made, string folder)
    {
        var aside = folder + "." + Path.GetRandomFileName();
        Copy(made, aside);
        if (Directory.Exists(folder))
        {
            Directory.Delete(folder, recursive: true);
        }

        Directory.Move(aside, folder);
    }

    private static void Copy(string from, string to)
    {
        Directory.CreateDirectory(to);
        foreach (var file in Directory.EnumerateFiles(from))
        {
            File.Copy(file, Path.Combine(to, Path.GetFileName(file)));
        }

        foreach (var inner in Directory.EnumerateDirectories(from))
        {
            Copy(inner, Path.Combine(to, Path.GetFileName(inner)));
        }
    }
}
