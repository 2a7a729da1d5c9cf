using System.Globalization;

namespace SunLessons.Tests.Dials;

/// <summary>Finds and reads a reference table of tests/SunLessons.Tests/authorities, wherever the tests were built to.</summary>
internal static class AuthorityFile
{
    public static string Path(params string[] parts)
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            var path = System.IO.Path.Combine([folder.FullName, "tests", "SunLessons.Tests", "authorities", .. parts]);
            if (File.Exists(path))
            {
                return path;
            }
        }

        throw new FileNotFoundException("No folder above the test program holds tests/SunLessons.Tests/authorities/" + string.Join('/', parts));
    }

    /// <summary>Rows below the heading, comment lines left out.</summary>
    public static IEnumerable<string[]> Rows(params string[] parts) =>
        File.ReadLines(Path(parts)).Where(line => line.Length > 0 && line[0] != '#').Skip(1).Select(line => line.Split(','));

    public static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);
}
