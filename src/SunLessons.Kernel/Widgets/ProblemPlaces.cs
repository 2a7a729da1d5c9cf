using System.Net;
using System.Text.Json.Nodes;
using SunLessons.Jupyter.Messages;
using SunLessons.Jupyter.Widgets;

namespace SunLessons.Kernel.Widgets;

/// <summary>
/// Where a learner reads that code of a cell failed which a control or a button set off: a line below whatever was shown together. Such code
/// runs when its cell has long been answered, so that there is no output of a cell for it, and no front end shows any.
/// </summary>
/// <param name="widgets">Opens the line.</param>
internal sealed class ProblemPlaces(WidgetComms widgets)
{
    private const string Reference = "IPY_MODEL_";
    private readonly Dictionary<string, Widget> _all = [];
    private readonly Dictionary<string, Widget> _lines = [];
    private readonly List<Widget> _roots = [];
    private readonly Lock _gate = new();

    public void Opened(Widget widget)
    {
        lock (_gate)
        {
            _all[widget.Id] = widget;
        }
    }

    /// <summary>Model and state of a widget that was opened here.</summary>
    public (string Model, JsonObject State) Find(string id)
    {
        lock (_gate)
        {
            return _all.TryGetValue(id, out var widget) ? (widget.Model, widget.State) : ("", []);
        }
    }

    /// <summary>Something is about to be shown; returns the identifier of what to show in its place, which has room below it.</summary>
    public string Shown(string id)
    {
        lock (_gate)
        {
            if (!_all.TryGetValue(id, out var root))
            {
                return id;
            }

            if (root.Model != "VBoxModel")
            {
                root = widgets.Open("VBoxModel", new JsonObject { ["children"] = new JsonArray(Reference + id) });
                _all[root.Id] = root;
            }

            _roots.Add(root);
            return root.Id;
        }
    }

    /// <summary>Says what went wrong where a widget was shown; null takes an earlier sentence away.</summary>
    /// <param name="id">The widget that set it off.</param>
    /// <param name="sentence">What went wrong.</param>
    public void Tell(string id, string? sentence)
    {
        lock (_gate)
        {
            var value = sentence is null ? "" : $"<p role=\"alert\">{WebUtility.HtmlEncode(sentence)}</p>";
            if (_lines.TryGetValue(id, out var line))
            {
                if (line.State.Text("value") != value)
                {
                    line.Update(new JsonObject { ["value"] = value });
                }
            }
            else if (sentence is not null && _roots.FindLast(root => Holds(root, id)) is { } root)
            {
                line = _lines[id] = widgets.Open("HTMLModel", new JsonObject { ["value"] = value });
                root.Update(new JsonObject { ["children"] = new JsonArray([.. Children(root), (JsonNode)(Reference + line.Id)]) });
            }
        }
    }

    private static IEnumerable<JsonNode> Children(Widget widget) => widget.State.Texts("children").Select(child => (JsonNode)child);

    private bool Holds(Widget widget, string id) => widget.Id == id
        || widget.State.Texts("children").Any(child => _all.TryGetValue(child[Reference.Length..], out var inner) && Holds(inner, id));
}
