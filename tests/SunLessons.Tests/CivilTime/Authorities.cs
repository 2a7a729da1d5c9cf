namespace SunLessons.Tests.CivilTime;

/// <summary>Reads the reference numbers that lie beside the tests.</summary>
internal static class Authorities
{
    /// <summary>All lines of a file under authorities/source.</summary>
    public static string[] Lines(string source, string file) => File.ReadAllLines(Find(source, file));

    /// <summary>The whole text of a file under authorities/source.</summary>
    public static string Text(string source, string file) => File.ReadAllText(Find(source, file));

    // The test program lies some folders below its project (bin/Release/net10.0): upwards from there, the first that holds the file.
    private static string Find(string source, string file)
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            var path = Path.Combine(folder.FullName, "authorities", source, file);
            if (File.Exists(path))
            {
                return path;
            }
        }

        throw new FileNotFoundException($"authorities/{source}/{file} is not above {AppContext.BaseDirectory}.");
    }
}
