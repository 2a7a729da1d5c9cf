using System.Text.Json.Nodes;

namespace SunLessons.Web.Widgets;

/// <summary>
/// One control of a lesson as the page knows it: the standard model's name and its state. The kernel owns the truth;
/// what the learner does is shown here at once and sent, so that a moved control never jumps back under the finger.
/// Its members may be called from any thread.
/// </summary>
public sealed class WidgetModel
{
    private readonly Lock _lock = new();
    private readonly JsonObject _state;
    private readonly Action<WidgetModel, JsonObject> _send;

    internal WidgetModel(string id, JsonObject state, Action<WidgetModel, JsonObject> send)
    {
        Id = id;
        _state = (JsonObject)state.DeepClone();
        _send = send;
    }

    /// <summary>The identifier that other models and outputs refer to.</summary>
    public string Id { get; }

    /// <summary>The standard model name, such as <c>FloatSliderModel</c>.</summary>
    public string Name => Text("_model_name");

    /// <summary>Raised after the state changed, from any thread.</summary>
    public event Action? Changed;

    /// <summary>Raised for each custom message of the kernel.</summary>
    public event Action<JsonObject>? CustomArrived;

    /// <summary>The attribute as text, empty where it is missing.</summary>
    public string Text(string key) => Read(key, node => node.GetValueKind() == System.Text.Json.JsonValueKind.String ? node.GetValue<string>() : node.ToJsonString(), "");

    /// <summary>The attribute as a number; the fallback where it is missing or no number.</summary>
    public double Number(string key, double fallback = 0.0) =>
        Read(key, node => node.GetValueKind() == System.Text.Json.JsonValueKind.Number ? node.GetValue<double>() : fallback, fallback);

    /// <summary>The attribute as a number, or nothing where it is missing or null.</summary>
    public int? Index(string key) =>
        Read<int?>(key, node => node.GetValueKind() == System.Text.Json.JsonValueKind.Number ? (int)node.GetValue<double>() : null, null);

    /// <summary>The attribute as yes or no; no where it is missing.</summary>
    public bool Flag(string key) => Read(key, node => node.GetValueKind() == System.Text.Json.JsonValueKind.True, false);

    /// <summary>The attribute as a list of texts; empty where it is missing.</summary>
    public IReadOnlyList<string> Texts(string key) =>
        Read<IReadOnlyList<string>>(key, node => node is JsonArray list ? [.. list.Select(item => item?.ToString() ?? "")] : [], []);

    /// <summary>A copy of the attribute, or nothing.</summary>
    public JsonNode? Node(string key) => Read<JsonNode?>(key, node => node.DeepClone(), null);

    /// <summary>A copy of the whole state.</summary>
    public JsonObject Snapshot()
    {
        lock (_lock)
        {
            return (JsonObject)_state.DeepClone();
        }
    }

    /// <summary>What the learner did: shown at once, then sent to the kernel.</summary>
    public void Set(JsonObject changed)
    {
        Merge(changed);
        _send(this, changed);
    }

    /// <summary>Sends a custom message, such as a button's click.</summary>
    public void SendCustom(JsonObject content) => _send(this, new JsonObject { [WidgetStore.CustomKey] = content.DeepClone() });

    internal void Take(JsonObject changed) => Merge(changed);

    internal void TakeCustom(JsonObject content) => CustomArrived?.Invoke(content);

    private void Merge(JsonObject changed)
    {
        lock (_lock)
        {
            foreach (var (key, value) in changed)
            {
                // Read back from text: a number that was made here as a whole one can then be asked for as any number.
                _state[key] = value is null ? null : JsonNode.Parse(value.ToJsonString());
            }
        }

        Changed?.Invoke();
    }

    private T Read<T>(string key, Func<JsonNode, T> read, T fallback)
    {
        lock (_lock)
        {
            return _state[key] is { } node ? read(node) : fallback;
        }
    }
}
