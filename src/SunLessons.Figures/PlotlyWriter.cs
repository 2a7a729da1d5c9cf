using System.Text.Json.Nodes;
using Plotly.NET;
using SunLessons.Figures.Layout;

namespace SunLessons.Figures;

/// <summary>
/// Gives a figure to plotly.js: the whole as <c>{data, layout, config}</c>, or after a change only the columns that changed.
/// Plotly.NET serialises it without its default theme, whose serialising alone costs 50 ms each time; the looks here are our own.
/// </summary>
public static class PlotlyWriter
{
    /// <summary>The MIME type under which front ends know such a figure.</summary>
    public const string MimeType = "application/vnd.plotly.v1+json";

    /// <summary>The figure as a Plotly.NET chart, for whoever wants to go on with Plotly.NET's own verbs.</summary>
    public static GenericChart Chart(Figure figure)
    {
        ArgumentNullException.ThrowIfNull(figure);
        var frame = PlotlyLayout.FrameOf(figure);
        var traces = figure.Series.Select((series, i) =>
        {
            var trace = new Trace(series.Kind == SeriesKind.Bars ? "bar" : "scatter");
            DynamicTree.Fill(trace, PlotlyTrace.Looks(figure, series, frame.Looks[i]));
            foreach (var (name, column) in PlotlyTrace.Columns(figure, series))
            {
                trace.SetProperty(name, column);
            }

            return trace;
        });
        var layout = new Plotly.NET.Layout();
        DynamicTree.Fill(layout, PlotlyLayout.Of(figure, frame));
        var config = new Config();
        DynamicTree.Fill(config, new JsonObject { ["displayModeBar"] = false, ["responsive"] = true, ["scrollZoom"] = false });
        return GenericChart.setConfig(config, GenericChart.setLayout(layout, GenericChart.ofTraceObjects(false, traces.ToArray())));
    }

    /// <summary>The whole figure as JSON text: <c>{"data":[...],"layout":{...},"config":{...}}</c>.</summary>
    public static string Write(Figure figure) => GenericChart.toJson(Chart(figure));

    /// <summary>The whole figure as a JSON tree: <c>{"data":[...],"layout":{...},"config":{...}}</c>.</summary>
    public static JsonObject WriteTree(Figure figure) => (JsonObject)JsonNode.Parse(Write(figure))!;

    /// <summary>
    /// What changed from one figure to the next, for <c>Plotly.update(element, {x, y, hovertext}, layout, traces)</c>:
    /// <c>{"traces":[0,2],"x":[[...],[...]],"y":[[...],[...]],"layout":{"annotations":[...]}}</c>. <c>x</c> and <c>y</c> hold one array for each trace
    /// named; <c>hovertext</c> is there only when the words of points changed; keys inside axes are dotted (<c>yaxis.range</c>); null takes a key away.
    /// An empty object means that nothing changed. Null means that the figures have different series: send the whole figure.
    /// </summary>
    public static JsonObject? Changes(Figure before, Figure after)
    {
        ArgumentNullException.ThrowIfNull(before);
        ArgumentNullException.ThrowIfNull(after);
        if (before.Series.Length != after.Series.Length || !before.Series.Zip(after.Series).All(pair => pair.First.SameLooks(pair.Second))
            || before.X.Kind != after.X.Kind || before.Y.Kind != after.Y.Kind || before.X.Title != after.X.Title || before.Y.Title != after.Y.Title
            || before.EqualScales != after.EqualScales || before.ShowsAxes != after.ShowsAxes)
        {
            return null;
        }

        var changes = new JsonObject();
        var moved = Enumerable.Range(0, after.Series.Length).Where(i => !before.Series[i].Equals(after.Series[i])).ToArray();
        if (moved.Length > 0)
        {
            changes["traces"] = new JsonArray([.. moved.Select(i => (JsonNode)i)]);
            foreach (var (name, columns) in moved
                .SelectMany(i => PlotlyTrace.Columns(after, after.Series[i]))
                .GroupBy(c => c.Name, c => c.Column))
            {
                changes[name] = new JsonArray([.. columns.Select(PlotlyTrace.Tree)]);
            }
        }

        var layout = PlotlyLayout.Changes(PlotlyLayout.Of(before, PlotlyLayout.FrameOf(before)), PlotlyLayout.Of(after, PlotlyLayout.FrameOf(after)));
        if (layout.Count > 0)
        {
            changes["layout"] = layout;
        }

        return changes;
    }

    private static void Deconstruct(this IGrouping<string, Array> group, out string name, out IEnumerable<Array> columns) => (name, columns) = (group.Key, group);
}
