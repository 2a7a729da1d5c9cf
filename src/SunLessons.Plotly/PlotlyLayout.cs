using System.Text.Json.Nodes;
using SunLessons.Words;

namespace SunLessons.Figures.Layout;

/// <summary>
/// Axes, words and reference lines of a figure as plotly.js wants them. The height is fixed and the same as in the drawing, so that labels
/// in the margin stand where they were placed; the width is the page's, so labels near points are set off from their points.
/// </summary>
internal static class PlotlyLayout
{
    public static PlotFrame FrameOf(Figure figure) => new(figure, 640, 400, 16);

    public static JsonObject Of(Figure figure, PlotFrame frame)
    {
        var layout = new JsonObject
        {
            ["meta"] = new JsonObject { ["title"] = figure.Title, ["description"] = figure.Description },
            ["font"] = new JsonObject { ["family"] = "Arial, Helvetica, Liberation Sans, sans-serif", ["size"] = frame.Size, ["color"] = "#000000" },
            ["paper_bgcolor"] = "#ffffff",
            ["plot_bgcolor"] = "#ffffff",
            ["height"] = R(frame.Height),
            ["margin"] = new JsonObject { ["l"] = R(frame.Plot.Left), ["r"] = R(frame.Width - frame.Plot.Right), ["t"] = R(frame.Plot.Top), ["b"] = R(frame.Height - frame.Plot.Bottom), ["pad"] = 0 },
            ["showlegend"] = false,
            // The numbers that plotly.js itself writes: at ticks and under the pointer.
            ["separators"] = Speech.Words["culture.decimal"] + Speech.Words["culture.group"],
            ["hovermode"] = "closest",
            ["dragmode"] = false,
            ["xaxis"] = AxisTree(figure, figure.X, frame.XExtent, frame.XTicks, frame.XTickRows, frame.XTitleLines, frame.Size),
            ["yaxis"] = AxisTree(figure, figure.Y, frame.YExtent, frame.YTicks, 1, [], frame.Size),
            ["annotations"] = new JsonArray([.. Words(figure, frame)]),
            ["shapes"] = new JsonArray([.. Lines(figure, frame)]),
        };
        if (figure.EqualScales)
        {
            layout["yaxis"]!["scaleanchor"] = "x";
            layout["yaxis"]!["scaleratio"] = 1;
        }

        return layout;
    }

    /// <summary>The layout of a figure with dotted keys where an object lies inside: as plotly.js takes changes.</summary>
    public static Dictionary<string, JsonNode?> Keys(Figure figure)
    {
        var keys = new Dictionary<string, JsonNode?>(StringComparer.Ordinal);
        void Walk(JsonObject tree, string path)
        {
            foreach (var (name, value) in tree)
            {
                if (value is JsonObject inner)
                {
                    Walk(inner, path + name + ".");
                }
                else
                {
                    keys[path + name] = value;
                }
            }
        }

        Walk(Of(figure, FrameOf(figure)), "");
        return keys;
    }

    private static double R(double value) => Math.Round(value, 2) + 0.0;

    // Six figures after the point serve ranges of thousands and of thousandths.
    private static double D(double value) => Math.Round(value, 6) + 0.0;

    private static JsonObject AxisTree(Figure figure, Axis axis, Extent extent, IReadOnlyList<Tick> ticks, int rows, IReadOnlyList<string> lines, double size)
    {
        var tree = new JsonObject
        {
            ["range"] = new JsonArray(D(extent.Min), D(extent.Max)),
            ["fixedrange"] = true,
            ["visible"] = figure.ShowsAxes,
            ["showline"] = true,
            ["mirror"] = true,
            ["linecolor"] = "#595959",
            ["gridcolor"] = "#d4d4d4",
            ["showgrid"] = axis.Kind != AxisKind.Names,
            ["zeroline"] = axis.Kind == AxisKind.Number,
            ["zerolinecolor"] = "#595959",
            ["zerolinewidth"] = 1,
            ["ticks"] = "outside",
            ["ticklen"] = 6,
            ["tickcolor"] = "#595959",
        };
        if (axis.Kind == AxisKind.Number && axis.Unit != "°")
        {
            // The page's width is not known here: plotly.js chooses as many round values as fit.
            tree["nticks"] = lines.Count > 0 ? 10 : Math.Max(3, ticks.Count + 1);
        }
        else
        {
            // On a narrow page plotly.js turns these words upright; the margin then has to grow.
            tree["automargin"] = lines.Count > 0;
            tree["tickmode"] = "array";
            tree["tickvals"] = new JsonArray([.. ticks.Select(t => (JsonNode)D(t.Value))]);
            tree["ticktext"] = new JsonArray([.. ticks.Select((t, i) => (JsonNode)(string.Concat(Enumerable.Repeat("<br>", i % rows)) + PlotlyTrace.E(t.Text)))]);
        }

        if (lines.Count > 0)
        {
            tree["title"] = new JsonObject { ["text"] = string.Join("<br>", lines.Select(PlotlyTrace.E)), ["standoff"] = 6, ["font"] = new JsonObject { ["size"] = R(size) } };
        }

        return tree;
    }

    private static IEnumerable<JsonNode> Words(Figure figure, PlotFrame frame)
    {
        var plot = frame.Plot;

        // The heading too is a word of our own: plotly.js cuts the first line of a title that has two.
        yield return Heading("<b>" + string.Join("<br>", frame.TitleLines.Select(PlotlyTrace.E)) + "</b>", frame, plot.Top - 6 - frame.TitleLines.Count * frame.TitleSize * 1.3, frame.TitleSize);
        if (frame.YTitleLines.Count > 0)
        {
            // Above the axis and level, as in the drawing; set off to the left by the width of the tick words.
            yield return Heading(string.Join("<br>", frame.YTitleLines.Select(PlotlyTrace.E)), frame, frame.LineHeight * 0.3, frame.Size);
        }

        foreach (var label in frame.Labels)
        {
            var word = new JsonObject
            {
                ["text"] = string.Join("<br>", label.Lines.Select(PlotlyTrace.E)),
                ["showarrow"] = false,
                ["font"] = new JsonObject { ["color"] = "#000000" },
                ["align"] = label.Anchor switch { "middle" => "center", "end" => "right", _ => "left" },
                ["xanchor"] = label.Anchor switch { "middle" => "center", "end" => "right", _ => "left" },
                ["yanchor"] = "middle",
                ["borderpad"] = 0,
            };
            if (label.InMargin)
            {
                word["xref"] = "paper";
                word["x"] = 1;
                word["xshift"] = R(label.X - plot.Right);
                word["yref"] = "paper";
                word["y"] = D((plot.Bottom - label.Y) / plot.Height);
            }
            else
            {
                word["x"] = D(frame.XExtent.Min + (label.FromX - plot.Left) / plot.Width * frame.XExtent.Length);
                word["xshift"] = R(label.X - label.FromX);
                word["y"] = D(frame.YExtent.Min + (plot.Bottom - label.FromY) / plot.Height * frame.YExtent.Length);
                word["yshift"] = R(label.FromY - label.Y);
                word["bgcolor"] = "rgba(255,255,255,0.7)";
            }

            yield return word;
        }
    }

    private static JsonObject Heading(string text, PlotFrame frame, double above, double size) => new()
    {
        ["text"] = text,
        ["showarrow"] = false,
        ["font"] = new JsonObject { ["size"] = R(size) },
        ["align"] = "left",
        ["xref"] = "paper",
        ["x"] = 0,
        ["xanchor"] = "left",
        ["xshift"] = R(12 - frame.Plot.Left),
        ["yref"] = "paper",
        ["y"] = 1,
        ["yanchor"] = "bottom",
        ["yshift"] = R(above),
    };

    private static IEnumerable<JsonNode> Lines(Figure figure, PlotFrame frame)
    {
        foreach (var mark in figure.Marks)
        {
            yield return new JsonObject
            {
                ["type"] = "line",
                ["layer"] = "below",
                ["xref"] = mark.Across ? "paper" : "x",
                ["x0"] = mark.Across ? 0 : D(mark.At),
                ["x1"] = mark.Across ? 1 : D(mark.At),
                ["yref"] = mark.Across ? "y" : "paper",
                ["y0"] = mark.Across ? D(mark.At) : 0,
                ["y1"] = mark.Across ? D(mark.At) : 1,
                ["line"] = new JsonObject { ["color"] = "#000000", ["width"] = 1.5, ["dash"] = "2px,4px" },
            };
        }

        foreach (var label in frame.Labels.Where(l => l.InMargin))
        {
            yield return new JsonObject
            {
                ["type"] = "line",
                ["xref"] = "paper",
                ["xsizemode"] = "pixel",
                ["xanchor"] = 1,
                ["x0"] = 3,
                ["x1"] = R(label.X - 4 - frame.Plot.Right),
                ["yref"] = "paper",
                ["y0"] = D((frame.Plot.Bottom - label.FromY) / frame.Plot.Height),
                ["y1"] = D((frame.Plot.Bottom - label.Y) / frame.Plot.Height),
                ["line"] = new JsonObject { ["color"] = label.Ink.Hex(), ["width"] = 1 },
            };
        }
    }
}
