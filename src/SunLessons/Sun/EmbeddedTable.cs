using System.Globalization;

namespace SunLessons.Sun;

/// <summary>Reads a comma-separated table that travels inside the assembly.</summary>
internal static class EmbeddedTable
{
    /// <summary>The rows below the comment and the heading of Tables/Sun/name, each cut at its commas.</summary>
    public static IReadOnlyList<string[]> Rows(string name)
    {
        using var stream = typeof(EmbeddedTable).Assembly.GetManifestResourceStream("SunLessons.Tables.Sun." + name)
            ?? throw new InvalidOperationException($"The table {name} is not in the assembly.");
        using var reader = new StreamReader(stream);
        var rows = new List<string[]>();
        var headingSeen = false;
        while (reader.ReadLine() is { } line)
        {
            if (line.Length == 0 || line[0] == '#')
            {
                continue;
            }

            if (headingSeen)
            {
                rows.Add(line.Split(','));
            }

            headingSeen = true;
        }

        return rows;
    }

    /// <summary>A number of the table.</summary>
    public static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);
}
