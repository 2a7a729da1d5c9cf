namespace SunLessons.Notebooks;

/// <summary>
/// Files that are either the old one or the new one, never a half. The new text goes to a file of a unique name in the
/// same folder, is flushed to the disk, and takes the old file's place by one rename (POSIX rename; on Windows a move
/// that replaces). A process killed at any moment leaves the previous file whole, and at worst one unfinished file whose
/// name ends in ".part" and that nothing reads.
/// </summary>
public static class SafeFile
{
    /// <summary>How the name of a file that was never finished ends; nothing reads such a file.</summary>
    public const string UnfinishedEnding = ".part";

    // A virus scanner or an indexer may hold the old file open for a moment on Windows; the rename is then refused.
    private const int Attempts = 6;
    private static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(20);

    /// <summary>Puts new content in a file's place; the folder must be there.</summary>
    /// <exception cref="IOException">It could not be written; the old file is as it was.</exception>
    public static void Replace(string path, ReadOnlySpan<byte> content)
    {
        string folder = Path.GetDirectoryName(Path.GetFullPath(path))!;
        string unfinished = Path.Combine(folder, $".{Path.GetFileName(path)}.{Guid.NewGuid():N}{UnfinishedEnding}");
        try
        {
            using (var stream = new FileStream(unfinished, FileMode.CreateNew, FileAccess.Write, FileShare.None))
            {
                stream.Write(content);
                stream.Flush(flushToDisk: true);
            }

            Move(unfinished, path);
        }
        catch
        {
            TryDelete(unfinished);
            throw;
        }
    }

    /// <summary>Reads without getting in a writer's way: the file may be replaced while it is read.</summary>
    public static byte[] ReadAllBytes(string path)
    {
        using var stream = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
        using var memory = new MemoryStream();
        stream.CopyTo(memory);
        return memory.ToArray();
    }

    /// <summary>Takes away unfinished files of this path that a killed process left longer than an hour ago.</summary>
    public static void RemoveAbandoned(string path, TimeProvider clock)
    {
        string folder = Path.GetDirectoryName(Path.GetFullPath(path))!;
        if (!Directory.Exists(folder))
        {
            return;
        }

        foreach (string file in Directory.EnumerateFiles(folder, $".{Path.GetFileName(path)}.*{UnfinishedEnding}"))
        {
            if (File.GetLastWriteTimeUtc(file) < clock.GetUtcNow().UtcDateTime - TimeSpan.FromHours(1))
            {
                TryDelete(file);
            }
        }
    }

    private static void Move(string from, string to)
    {
        for (int attempt = 1; ; attempt++)
        {
            try
            {
                File.Move(from, to, overwrite: true);
                return;
            }
            catch (Exception problem) when (OperatingSystem.IsWindows() && attempt < Attempts && problem is IOException or UnauthorizedAccessException)
            {
                Thread.Sleep(Pause);
            }
        }
    }

    private static void TryDelete(string path)
    {
        try
        {
            File.Delete(path);
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            // Nothing reads it; the next opening tries again.
        }
    }
}
