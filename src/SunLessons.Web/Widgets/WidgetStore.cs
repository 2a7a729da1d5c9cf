using System.Collections.Concurrent;
using System.Text.Json.Nodes;

namespace SunLessons.Web.Widgets;

/// <summary>
/// The controls that a running kernel has opened, by identifier, kept by the messages of the widget protocol (2.1).
/// It knows no sockets: the session hands messages in and takes them out through <see cref="Outgoing"/>.
/// </summary>
public sealed class WidgetStore
{
    /// <summary>Marks a custom message in what <see cref="WidgetModel"/> sends; no attribute has this name.</summary>
    internal const string CustomKey = "\0custom";

    private readonly ConcurrentDictionary<string, WidgetModel> _models = new();

    /// <summary>Raised with the identifier and the content of each message that must go to the kernel.</summary>
    public event Action<string, JsonObject>? Outgoing;

    /// <summary>The control with this identifier, or nothing. A reference such as <c>IPY_MODEL_id</c> will do.</summary>
    public WidgetModel? Find(string idOrReference) =>
        _models.GetValueOrDefault(idOrReference.StartsWith(ReferencePrefix, StringComparison.Ordinal) ? idOrReference[ReferencePrefix.Length..] : idOrReference);

    /// <summary>A control was opened by the kernel.</summary>
    public void Open(string id, JsonObject data)
    {
        _models[id] = new WidgetModel(id, data["state"] as JsonObject ?? [], Send);
    }

    /// <summary>A message for a control arrived; one for an unknown control is passed over.</summary>
    public void Receive(string id, JsonObject data)
    {
        if (!_models.TryGetValue(id, out var model))
        {
            return;
        }

        switch (data["method"]?.ToString())
        {
            case "update" when data["state"] is JsonObject state:
                model.Take(state);
                break;

            // An echo repeats what the learner did a moment ago; by now the control may stand elsewhere.
            case "echo_update":
                break;

            case "custom" when data["content"] is JsonObject content:
                model.TakeCustom(content);
                break;
        }
    }

    /// <summary>A control was closed by the kernel.</summary>
    public void Close(string id) => _models.TryRemove(id, out _);

    /// <summary>Forgets all controls: their kernel is gone.</summary>
    public void Clear() => _models.Clear();

    private const string ReferencePrefix = "IPY_MODEL_";

    private void Send(WidgetModel model, JsonObject changed)
    {
        var message = changed[CustomKey] is { } custom
            ? new JsonObject { ["method"] = "custom", ["content"] = custom.DeepClone() }
            : new JsonObject { ["method"] = "update", ["state"] = changed.DeepClone(), ["buffer_paths"] = new JsonArray() };
        Outgoing?.Invoke(model.Id, message);
    }
}
