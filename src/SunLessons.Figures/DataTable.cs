using System.Collections.Immutable;
using System.Globalization;
using System.Net;
using System.Text;

namespace SunLessons.Figures;

/// <summary>The numbers of a figure as a table: one row a position when all series stand at the same positions, otherwise one row a point.</summary>
/// <param name="Caption">What the table holds.</param>
/// <param name="Headings">Heads of the columns, with units.</param>
/// <param name="Rows">Cells as a reader reads them: clock times, dates, numbers with a real minus.</param>
/// <param name="PlainRows">The same cells for programs: numbers with a point and a hyphen, empty where there is none.</param>
public sealed record DataTable(string Caption, ImmutableArray<string> Headings, ImmutableArray<ImmutableArray<string>> Rows, ImmutableArray<ImmutableArray<string>> PlainRows)
{
    // More rows than this tire a reader; the CSV always holds all of them.
    private const int MostRowsShown = 49;

    /// <summary>Makes the table of a figure.</summary>
    public static DataTable Of(Figure figure)
    {
        ArgumentNullException.ThrowIfNull(figure);
        var series = figure.Series.Where(s => s.Kind != SeriesKind.Shape && s.Count > 0).ToArray();
        return series.Length > 0 && series.All(s => s.X.AsSpan().SequenceEqual(series[0].X.AsSpan())) ? Wide(figure, series) : Long(figure, series);
    }

    /// <summary>The table as comma separated values (RFC 4180), a head line first, lines ended by CR LF.</summary>
    public string ToCsv()
    {
        var text = new StringBuilder();
        foreach (var row in PlainRows.Prepend(Headings))
        {
            text.AppendJoin(',', row.Select(Quoted)).Append("\r\n");
        }

        return text.ToString();
    }

    /// <summary>
    /// The table as HTML with a caption and heads tied to columns and rows. Long tables show evenly chosen rows and say so. It can take the focus, so that one
    /// that is wider than its page can be scrolled with keys.
    /// </summary>
    public string ToHtml()
    {
        var step = (Rows.Length + MostRowsShown - 1) / MostRowsShown;
        var shown = step <= 1 ? Rows : [.. Rows.Where((_, i) => i % step == 0 || i == Rows.Length - 1)];
        var caption = shown.Length == Rows.Length
            ? Caption
            : Worded($"{Caption} ({shown.Length.ToString(CultureInfo.InvariantCulture)} of {Rows.Length.ToString(CultureInfo.InvariantCulture)} rows)");
        var text = new StringBuilder("<table class=\"sunlessons-table\" tabindex=\"0\"><caption>").Append(WebUtility.HtmlEncode(caption)).Append("</caption><thead><tr>");
        foreach (var heading in Headings)
        {
            text.Append("<th scope=\"col\">").Append(WebUtility.HtmlEncode(heading)).Append("</th>");
        }

        text.Append("</tr></thead><tbody>");
        foreach (var row in shown)
        {
            text.Append("<tr><th scope=\"row\">").Append(WebUtility.HtmlEncode(row[0])).Append("</th>");
            foreach (var cell in row.Skip(1))
            {
                text.Append("<td>").Append(WebUtility.HtmlEncode(cell)).Append("</td>");
            }

            text.Append("</tr>");
        }

        return text.Append("</tbody></table>").ToString();
    }

    private static DataTable Wide(Figure figure, Series[] series)
    {
        var x = series[0].X;
        var xDecimals = Decimals(x);
        var yDecimals = series.Select(s => Decimals(s.Y)).ToArray();
        var headings = series.Select(s => figure.Y.Unit.Length == 0 ? s.Name : $"{s.Name} ({figure.Y.Unit})").Prepend(figure.X.Heading);
        return new DataTable(
            figure.Title,
            [.. headings],
            [.. Enumerable.Range(0, x.Length).Select(i => series.Select((s, k) => figure.Y.Write(s.Y[i], yDecimals[k])).Prepend(figure.X.Write(x[i], xDecimals)).ToImmutableArray())],
            [.. Enumerable.Range(0, x.Length).Select(i => series.Select(s => Plain(s.Y[i])).Prepend(Plain(x[i])).ToImmutableArray())]);
    }

    private static DataTable Long(Figure figure, Series[] series)
    {
        var points = series
            .SelectMany(s => Enumerable.Range(0, s.Count).Select(i => (s.Name, X: s.X[i], Y: s.Y[i])))
            .Where(p => !double.IsNaN(p.X) && !double.IsNaN(p.Y))
            .ToArray();
        var xDecimals = Decimals(points.Select(p => p.X));
        var yDecimals = Decimals(points.Select(p => p.Y));
        return new DataTable(
            figure.Title,
            [Worded($"Series"), figure.X.Heading, figure.Y.Heading],
            [.. points.Select(p => ImmutableArray.Create(p.Name, figure.X.Write(p.X, xDecimals), figure.Y.Write(p.Y, yDecimals)))],
            [.. points.Select(p => ImmutableArray.Create(p.Name, Plain(p.X), Plain(p.Y)))]);
    }

    // Enough decimals for some four digits of the largest number, and none that are all zero.
    private static int Decimals(IEnumerable<double> values)
    {
        var finite = values.Where(double.IsFinite).ToArray();
        var largest = finite.Length == 0 ? 0.0 : finite.Max(Math.Abs);
        var most = largest >= 1000 ? 0 : largest >= 100 ? 1 : largest >= 10 ? 2 : 3;
        while (most > 0 && finite.All(v => Math.Abs(Math.Round(v, most - 1) - v) < 0.5e-9))
        {
            most--;
        }

        return most;
    }

    private static string Plain(double value) => double.IsNaN(value) ? "" : Math.Round(value, 9).ToString("R", CultureInfo.InvariantCulture);

    private static string Quoted(string cell) => cell.AsSpan().IndexOfAny(",\"\r\n") < 0 ? cell : $"\"{cell.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";
}
