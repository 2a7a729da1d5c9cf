using System.Text.Json.Nodes;
using SunLessons.Figures.Layout;

namespace SunLessons.Figures;

/// <summary>
/// What a page must change after it drew a whole figure, figure after figure. Each message holds everything that ever changed since the whole
/// figure, with its newest values: a page that is busy may pass over all messages but the last. Not safe for several threads at once.
/// </summary>
public sealed class PlotlyColumns : IFigureChanges
{
    private readonly SortedSet<int> _movedTraces = [];
    private readonly SortedSet<string> _movedKeys = new(StringComparer.Ordinal);
    private Figure _last;
    private Dictionary<string, JsonNode?> _lastLayout;

    /// <summary>Begins after a page was given a whole figure.</summary>
    public PlotlyColumns(Figure sent)
    {
        ArgumentNullException.ThrowIfNull(sent);
        _last = sent;
        _lastLayout = PlotlyLayout.Keys(sent);
    }

    /// <summary>
    /// The message for <c>Plotly.update(element, {x, y, hovertext}, layout, traces)</c>:
    /// <c>{"traces":[0,2],"x":[[...],[...]],"y":[[...],[...]],"layout":{"annotations":[...]}}</c>. <c>x</c> and <c>y</c> hold one array for each trace
    /// named; <c>hovertext</c> is there only where an axis reads its numbers as times, dates or names; keys inside axes are dotted
    /// (<c>yaxis.range</c>); null takes a key away. An empty object means that nothing changed since the last figure. Null means that the
    /// figures have different series or axes: send the whole figure and begin anew.
    /// </summary>
    public JsonObject? Next(Figure figure)
    {
        ArgumentNullException.ThrowIfNull(figure);
        if (!SameBuild(_last, figure))
        {
            return null;
        }

        var moved = Enumerable.Range(0, figure.Series.Length).Where(i => !_last.Series[i].Equals(figure.Series[i])).ToArray();
        var layout = PlotlyLayout.Keys(figure);
        var keys = layout.Keys.Union(_lastLayout.Keys)
            .Where(key => layout.ContainsKey(key) != _lastLayout.ContainsKey(key) || !JsonNode.DeepEquals(layout.GetValueOrDefault(key), _lastLayout.GetValueOrDefault(key)))
            .ToArray();
        (_last, _lastLayout) = (figure, layout);
        _movedTraces.UnionWith(moved);
        _movedKeys.UnionWith(keys);
        return moved.Length == 0 && keys.Length == 0 ? [] : Message(figure, layout);
    }

    private static bool SameBuild(Figure before, Figure after) =>
        before.Series.Length == after.Series.Length && before.Series.Zip(after.Series).All(pair => pair.First.SameLooks(pair.Second))
        && before.X.Kind == after.X.Kind && before.Y.Kind == after.Y.Kind && before.X.Title == after.X.Title && before.Y.Title == after.Y.Title
        && before.EqualScales == after.EqualScales && before.ShowsAxes == after.ShowsAxes;

    private JsonObject Message(Figure figure, Dictionary<string, JsonNode?> layout)
    {
        var message = new JsonObject();
        if (_movedTraces.Count > 0)
        {
            message["traces"] = new JsonArray([.. _movedTraces.Select(i => (JsonNode)i)]);
            foreach (var columns in _movedTraces.SelectMany(i => PlotlyTrace.Columns(figure, figure.Series[i])).GroupBy(c => c.Name, c => c.Column))
            {
                message[columns.Key] = new JsonArray([.. columns.Select(PlotlyTrace.Tree)]);
            }
        }

        if (_movedKeys.Count > 0)
        {
            message["layout"] = new JsonObject(_movedKeys.Select(key => KeyValuePair.Create(key, layout.GetValueOrDefault(key)?.DeepClone())));
        }

        return message;
    }
}
