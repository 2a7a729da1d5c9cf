using System.Globalization;
using System.Text;

namespace SunLessons.Logs;

/// <summary>A table as RFC 4180 has it: commas, quotes doubled inside quotes. Lines that begin with # and empty lines are passed over.</summary>
internal sealed class CsvTable
{
    private CsvTable(IReadOnlyList<(int Line, string[] Cells)> rows) => Rows = rows;

    /// <summary>Rows below the heading, in the heading's order, with the line each begins on, counted from 1.</summary>
    public IReadOnlyList<(int Line, string[] Cells)> Rows { get; }

    /// <exception cref="FormatException">One sentence with the line number.</exception>
    public static CsvTable Parse(string text, params string[] heading)
    {
        var rows = Split(text).Where(row => row.Cells is not [""] && !row.Cells[0].StartsWith('#')).ToList();
        var wanted = string.Join(',', heading);
        if (rows.Count == 0)
        {
            throw new FormatException($"The table is empty; begin it with the line {wanted} and write one line for each entry.");
        }

        if (!rows[0].Cells.Select(cell => cell.Trim()).SequenceEqual(heading))
        {
            throw new FormatException($"Line {Text(rows[0].Line)}: the heading is \"{Shortened(string.Join(',', rows[0].Cells))}\", but it must be {wanted}.");
        }

        foreach (var (line, cells) in rows)
        {
            if (cells.Length != heading.Length)
            {
                throw new FormatException(
                    $"Line {Text(line)}: there are {Text(cells.Length)} cells where {Text(heading.Length)} belong ({wanted}); put a cell that holds a comma into double quotes.");
            }
        }

        return new CsvTable([.. rows.Skip(1).Select(row => (row.Line, row.Cells.Select(cell => cell.Trim()).ToArray()))]);
    }

    public static string Cell(string value) =>
        value.AsSpan().IndexOfAny(",\"\r\n") >= 0 || value.StartsWith('#') ? $"\"{value.Replace("\"", "\"\"", StringComparison.Ordinal)}\"" : value;

    public static string Shortened(string text) => text.Length <= 60 ? text : text[..60] + "...";

    public static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);

    private static IEnumerable<(int Line, string[] Cells)> Split(string text)
    {
        var cells = new List<string>();
        var cell = new StringBuilder();
        int line = 1, begun = 1;
        var quoted = false;
        for (var i = 0; i <= text.Length; i++)
        {
            var c = i < text.Length ? text[i] : '\n';
            if (quoted && i == text.Length)
            {
                throw new FormatException($"Line {Text(begun)}: a double quote is opened and never closed; close it, or write two for one that is meant.");
            }

            if (quoted)
            {
                if (c == '"' && i + 1 < text.Length && text[i + 1] == '"')
                {
                    cell.Append('"');
                    i++;
                }
                else if (c == '"')
                {
                    quoted = false;
                }
                else
                {
                    cell.Append(c);
                    line += c == '\n' ? 1 : 0;
                }
            }
            else if (c == '"' && cell.Length == 0)
            {
                quoted = true;
            }
            else if (c is ',' or '\n')
            {
                cells.Add(cell.ToString());
                cell.Clear();
                if (c == '\n')
                {
                    yield return (begun, [.. cells]);
                    cells.Clear();
                    line++;
                    begun = line;
                }
            }
            else if (c is not ('\r' or '\uFEFF'))
            {
                cell.Append(c);
            }
        }
    }
}
