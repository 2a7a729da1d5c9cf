using System.Text.Json.Nodes;

namespace SunLessons.Cells.Hosting;

/// <summary>A widget of <see cref="InMemoryHost"/>: its present state, everything sent to it, and the page's part as methods.</summary>
public sealed class InMemoryChannel : IWidgetChannel
{
    private readonly Lock _gate = new();
    private readonly JsonObject _state;
    private readonly List<JsonObject> _updates = [];
    private readonly List<JsonObject> _customs = [];

    internal InMemoryChannel(string id, string model, JsonObject state)
    {
        Id = id;
        Model = model;
        _state = (JsonObject)state.DeepClone();
    }

    /// <inheritdoc/>
    public string Id { get; }

    /// <summary>The standard's model name without package, such as <c>FloatSliderModel</c>.</summary>
    public string Model { get; }

    /// <inheritdoc/>
    public event Action<JsonObject>? Changed;

    /// <inheritdoc/>
    public event Action<JsonObject>? CustomReceived;

    /// <summary>The state as the page would show it now: a copy.</summary>
    public JsonObject State
    {
        get
        {
            lock (_gate)
            {
                return (JsonObject)_state.DeepClone();
            }
        }
    }

    /// <summary>Every update sent to the page, in order: a copy of the list.</summary>
    public IReadOnlyList<JsonObject> Updates
    {
        get
        {
            lock (_gate)
            {
                return [.. _updates];
            }
        }
    }

    /// <summary>Every custom message sent to the page, in order: a copy of the list.</summary>
    public IReadOnlyList<JsonObject> Customs
    {
        get
        {
            lock (_gate)
            {
                return [.. _customs];
            }
        }
    }

    /// <inheritdoc/>
    public void Update(JsonObject changed)
    {
        ArgumentNullException.ThrowIfNull(changed);
        lock (_gate)
        {
            _updates.Add((JsonObject)changed.DeepClone());
            Merge(changed);
        }
    }

    /// <inheritdoc/>
    public void SendCustom(JsonObject content)
    {
        ArgumentNullException.ThrowIfNull(content);
        lock (_gate)
        {
            _customs.Add((JsonObject)content.DeepClone());
        }
    }

    /// <summary>Does what a page does when the learner changed attributes.</summary>
    public void ChangeFromPage(JsonObject changed)
    {
        ArgumentNullException.ThrowIfNull(changed);
        lock (_gate)
        {
            Merge(changed);
        }

        Changed?.Invoke((JsonObject)changed.DeepClone());
    }

    /// <summary>Does what a page does when the learner changed the widget's <c>value</c>.</summary>
    public void ChangeFromPage(JsonNode value) => ChangeFromPage(new JsonObject { ["value"] = value });

    /// <summary>Does what a page does when the learner presses a button.</summary>
    public void Click() => CustomFromPage(new JsonObject { ["event"] = "click" });

    /// <summary>Does what a page does when it sends a custom message.</summary>
    public void CustomFromPage(JsonObject content) => CustomReceived?.Invoke(content);

    private void Merge(JsonObject changed)
    {
        foreach (var (name, value) in changed)
        {
            _state[name] = value?.DeepClone();
        }
    }
}
