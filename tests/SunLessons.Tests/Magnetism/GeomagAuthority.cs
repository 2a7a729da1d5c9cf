using System.Globalization;

namespace SunLessons.Tests.Magnetism;

/// <summary>Reads the tables in authorities/geomag; see the README there.</summary>
internal static class GeomagAuthority
{
    public static IEnumerable<Row> Rows(string fileName)
    {
        var lines = File.ReadAllLines(Path.Combine(Folder(), fileName)).Where(line => line.Length > 0 && line[0] != '#').ToArray();
        var header = lines[0].Split(',');
        return lines.Skip(1).Select(line => new Row(header.Zip(line.Split(',')).ToDictionary(p => p.First, p => p.Second)));
    }

    // The tests run from the build's output folder; the authorities stay in the source tree.
    private static string Folder()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            var candidate = Path.Combine(folder.FullName, "tests", "SunLessons.Tests", "authorities", "geomag");
            if (Directory.Exists(candidate))
            {
                return candidate;
            }
        }

        throw new DirectoryNotFoundException("tests/SunLessons.Tests/authorities/geomag was not found above the tests' folder.");
    }

    internal sealed record Row(IReadOnlyDictionary<string, string> Cells)
    {
        public string this[string column] => Cells[column];

        public double Number(string column) => double.Parse(Cells[column], CultureInfo.InvariantCulture);
    }
}
