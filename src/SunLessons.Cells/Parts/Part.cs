using System.Text.Json.Nodes;
using SunLessons.Cells.Hosting;

namespace SunLessons.Cells.Parts;

/// <summary>
/// One standard widget: its state here, and its channel once somebody shows it. Opened late, so that a control locked right after it was made
/// is born locked, and a control that nobody shows costs the page nothing.
/// </summary>
internal sealed class Part(IWidgetHost host, string model, JsonObject state, Action<JsonObject>? changed = null, Action<JsonObject>? custom = null)
{
    private readonly Lock _gate = new();
    private IWidgetChannel? _channel;
    private bool _retired;

    public IWidgetChannel Channel
    {
        get
        {
            lock (_gate)
            {
                if (_channel is null)
                {
                    _channel = host.Open(model, (JsonObject)state.DeepClone());
                    _channel.Changed += OnChanged;
                    _channel.CustomReceived += OnCustom;
                }

                return _channel;
            }
        }
    }

    /// <summary>How a box names this part among its children.</summary>
    public string Reference => "IPY_MODEL_" + Channel.Id;

    /// <summary>Sets attributes; those that differ go to the page.</summary>
    public void Set(params ReadOnlySpan<(string Name, JsonNode? Value)> attributes)
    {
        lock (_gate)
        {
            var news = new JsonObject();
            foreach (var (name, value) in attributes)
            {
                if (!JsonNode.DeepEquals(state[name], value) || !state.ContainsKey(name))
                {
                    state[name] = value?.DeepClone();
                    news[name] = value?.DeepClone();
                }
            }

            if (news.Count > 0 && !_retired)
            {
                _channel?.Update(news);
            }
        }
    }

    /// <summary>An attribute as it stands: ours, or what the page last sent.</summary>
    public JsonNode? Get(string name)
    {
        lock (_gate)
        {
            return state[name]?.DeepClone();
        }
    }

    /// <summary>Sends an attribute again although it did not change: the page holds another value.</summary>
    public void Insist(string name, JsonNode? value)
    {
        lock (_gate)
        {
            state[name] = value?.DeepClone();
            _channel?.Update(new JsonObject { [name] = value?.DeepClone() });
        }
    }

    public void SendCustom(JsonObject content)
    {
        lock (_gate)
        {
            if (!_retired)
            {
                _channel?.SendCustom(content);
            }
        }
    }

    /// <summary>Listens and speaks no more: another cell's run has made a successor.</summary>
    public void Retire()
    {
        lock (_gate)
        {
            _retired = true;
            if (_channel is not null)
            {
                _channel.Changed -= OnChanged;
                _channel.CustomReceived -= OnCustom;
            }
        }
    }

    private void OnChanged(JsonObject change)
    {
        lock (_gate)
        {
            if (_retired)
            {
                return;
            }

            foreach (var (name, value) in change)
            {
                state[name] = value?.DeepClone();
            }
        }

        changed?.Invoke(change);
    }

    private void OnCustom(JsonObject content) => custom?.Invoke(content);
}
