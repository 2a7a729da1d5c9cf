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

    /// <summary>What changed from one figure to the next; see <see cref="PlotlyColumns.Next"/>, which goes on for many figures.</summary>
    public static JsonObject? Changes(Figure before, Figure after) => new PlotlyColumns(before).Next(after);
}
