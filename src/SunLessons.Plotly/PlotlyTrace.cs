using System.Text.Json.Nodes;

namespace SunLessons.Figures.Layout;

/// <summary>One series as plotly.js wants it: its looks, which stay, and its columns, which move.</summary>
internal static class PlotlyTrace
{
    public static JsonObject Looks(Figure figure, Series series, Look look)
    {
        var colour = look.Ink.Hex();
        var looks = new JsonObject
        {
            ["name"] = series.Name,
            ["showlegend"] = false,
            ["hovertemplate"] = (Worded(figure) ? "%{hovertext}" : $"{E(figure.X.Label)} %{{x:.4~g}} {E(figure.X.Unit)}<br>{E(figure.Y.Label)} %{{y:.4~g}} {E(figure.Y.Unit)}") + $"<extra>{E(series.Name)}</extra>",
        };
        if (series.Kind == SeriesKind.Bars)
        {
            var place = figure.Series.Where(s => s.Kind == SeriesKind.Bars).ToList().FindIndex(s => ReferenceEquals(s, series));
            looks["marker"] = new JsonObject
            {
                ["color"] = place == 1 ? "#ffffff" : colour,
                ["opacity"] = place switch { 2 => 0.5, 3 => 0.25, _ => 1.0 },
                ["line"] = new JsonObject { ["color"] = colour, ["width"] = 2 },
            };
            return looks;
        }

        looks["mode"] = series.Kind == SeriesKind.Points ? "markers" : look.Marker == MarkerShape.None ? "lines" : "lines+markers";
        looks["line"] = new JsonObject
        {
            ["color"] = colour,
            ["width"] = look.Width,
            ["dash"] = look.Line switch { LineStyle.Dash => "dash", LineStyle.Dot => "dot", LineStyle.DashDot => "dashdot", _ => "solid" },
        };
        looks["marker"] = new JsonObject
        {
            ["symbol"] = look.Marker switch { MarkerShape.Square => "square", MarkerShape.Diamond => "diamond", MarkerShape.Triangle => "triangle-up", _ => "circle" },
            ["size"] = series.Strong ? 14 : 10,
            ["color"] = look.Marker is MarkerShape.Square or MarkerShape.Triangle ? "#ffffff" : colour,
            ["line"] = new JsonObject { ["color"] = colour, ["width"] = 2 },
        };
        if (series.Kind is SeriesKind.Line or SeriesKind.Area)
        {
            looks["marker"]!["maxdisplayed"] = 6;
        }

        if (series.Kind is SeriesKind.Area or SeriesKind.Shape)
        {
            looks["fill"] = series.Kind == SeriesKind.Area ? "tozeroy" : "toself";
            looks["fillcolor"] = Faint(look.Ink, series.Kind == SeriesKind.Area ? "0.15" : "0.06");
        }

        return looks;
    }

    /// <summary>The columns: <c>x</c>, <c>y</c>, and <c>hovertext</c> where an axis reads its numbers as times, dates or names.</summary>
    public static IEnumerable<(string Name, Array Column)> Columns(Figure figure, Series series)
    {
        var closed = series.Kind == SeriesKind.Shape && series.Count > 0;
        yield return ("x", Column(closed ? series.X.Add(series.X[0]) : series.X));
        yield return ("y", Column(closed ? series.Y.Add(series.Y[0]) : series.Y));
        if (Worded(figure))
        {
            yield return ("hovertext", Enumerable.Range(0, series.Count).Select(i => $"{figure.X.Say(series.X[i])}: {figure.Y.Say(series.Y[i])}").ToArray());
        }
    }

    public static JsonNode Tree(Array column) => column is string[] words
        ? new JsonArray([.. words.Select(w => (JsonNode)w)])
        : new JsonArray([.. ((double?[])column).Select(v => v is { } number ? (JsonNode)number : null)]);

    // Six decimals: a millionth of a minute or degree is beyond every figure, and the text is a third shorter.
    private static double?[] Column(IEnumerable<double> values) =>
        [.. values.Select(v => double.IsFinite(v) ? Math.Round(v, 6) + 0.0 : (double?)null)];

    private static bool Worded(Figure figure) => IsWorded(figure.X) || IsWorded(figure.Y);

    private static bool IsWorded(Axis axis) => axis.Kind is AxisKind.Clock or AxisKind.DayOfYear or AxisKind.Names;

    private static string Faint(Ink ink, string opacity) => ink switch
    {
        Ink.Blue => $"rgba(0,114,178,{opacity})",
        Ink.Vermilion => $"rgba(213,94,0,{opacity})",
        Ink.Green => $"rgba(0,158,115,{opacity})",
        _ => $"rgba(0,0,0,{opacity})",
    };

    // plotly.js reads a little HTML in its texts: what a person wrote must stay what they wrote.
    internal static string E(string text) => text.Replace("&", "&amp;", StringComparison.Ordinal).Replace("<", "&lt;", StringComparison.Ordinal).Replace(">", "&gt;", StringComparison.Ordinal);
}
