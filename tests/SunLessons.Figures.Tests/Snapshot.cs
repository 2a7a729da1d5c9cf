namespace SunLessons.Figures.Tests;

/// <summary>
/// Compares a text with the file of that name under <c>Snapshots</c>. A text that differs is written beside it as <c>.received</c>, for the eye;
/// run the tests with the variable SUNLESSONS_ACCEPT=1 to take all of them as the new snapshots.
/// </summary>
internal static class Snapshot
{
    public static void Matches(string name, string actual)
    {
        actual = Plain(actual);
        var file = Path.Combine(SourceFolder(), "Snapshots", name);
        if (Environment.GetEnvironmentVariable("SUNLESSONS_ACCEPT") == "1")
        {
            Directory.CreateDirectory(Path.GetDirectoryName(file)!);
            File.WriteAllText(file, actual);
            return;
        }

        var expected = File.Exists(file) ? Plain(File.ReadAllText(file)) : "";
        if (expected != actual)
        {
            File.WriteAllText(file + ".received", actual);
        }

        Assert.Equal(expected, actual);
    }

    // A checkout may turn line ends; they carry no meaning here.
    private static string Plain(string text) => text.Replace("\r\n", "\n", StringComparison.Ordinal);

    // From the folder of the built tests upwards to the one that holds the project: no path of a machine is written down.
    private static string SourceFolder()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "SunLessons.Figures.Tests.csproj")))
        {
            folder = folder.Parent;
        }

        return folder?.FullName ?? AppContext.BaseDirectory;
    }
}
