using System.Collections.Concurrent;
using System.Text.Json.Nodes;
using SunLessons.Jupyter.Messages;
using SunLessons.Jupyter.Server;

namespace SunLessons.Jupyter.Widgets;

/// <summary>
/// The kernel's widgets over comms (Jupyter widget messaging protocol 2.1): opens them with layout and style, echoes what a page
/// changed, answers a page that asks for the state, and hands on changes and custom messages.
/// </summary>
/// <param name="comms">The kernel's table of comms.</param>
public sealed class WidgetComms(KernelComms comms)
{
    private readonly ConcurrentDictionary<string, Widget> _shared = [];

    /// <summary>Opens a widget.</summary>
    /// <param name="model">Model name without package, as "FloatSliderModel".</param>
    /// <param name="state">
    /// Its attributes; the object belongs to the widget afterwards. "layout" and "style" may be objects: each becomes a model of its own;
    /// when absent, widgets of a kind share one, in which words and what is moved beside them have room.
    /// </param>
    public Widget Open(string model, JsonObject state)
    {
        var style = WidgetModels.StyleOf(model);
        Attach(state, "layout", model is "LayoutModel" || model.EndsWith("StyleModel", StringComparison.Ordinal) ? null : "LayoutModel", Room(model));
        Attach(state, "style", style, style is "ButtonStyleModel" ? [] : new JsonObject { ["description_width"] = "initial" });
        var whole = WidgetModels.Describe(model);
        foreach (var (name, value) in state)
        {
            whole[name] = value?.DeepClone();
        }

        var comm = comms.Open(
            WidgetModels.Target,
            new JsonObject { ["state"] = whole.Copy(), ["buffer_paths"] = new JsonArray() },
            new JsonObject { ["version"] = WidgetModels.ProtocolVersion });
        return new Widget(comm, model, whole);
    }

    /// <summary>
    /// A front end gives every control 300 px where nothing else is said: a description of several words then leaves a slider no track, and the words
    /// on a button are cut off.
    /// </summary>
    private static JsonObject Room(string model) => model switch
    {
        "FloatSliderModel" or "IntSliderModel" => new JsonObject { ["width"] = "100%", ["max_width"] = "48em" },
        "ButtonModel" => new JsonObject { ["width"] = "max-content" },
        _ => [],
    };

    private void Attach(JsonObject state, string name, string? model, JsonObject usual)
    {
        if (model is null)
        {
            return;
        }

        switch (state[name])
        {
            case JsonObject own:
                state[name] = "IPY_MODEL_" + Open(model, own.Copy()).Id;
                break;
            case null:
                state[name] = "IPY_MODEL_" + _shared.GetOrAdd(model + usual.ToJsonString(), _ => Open(model, usual)).Id;
                break;
        }
    }
}

/// <summary>One widget of the kernel. Safe to call from any thread.</summary>
public sealed class Widget
{
    private readonly KernelComm _comm;
    private readonly JsonObject _state;
    private readonly Lock _gate = new();

    internal Widget(KernelComm comm, string model, JsonObject state)
    {
        _comm = comm;
        _state = state;
        Model = model;
        comm.Received += Receive;
    }

    /// <summary>Identifier of its comm; "IPY_MODEL_" before it refers to the widget in a list of children.</summary>
    public string Id => _comm.Id;

    /// <summary>Model name, as "FloatSliderModel".</summary>
    public string Model { get; }

    /// <summary>The page changed attributes: only those that it sent.</summary>
    public event Action<JsonObject>? Changed;

    /// <summary>The page sent a custom message.</summary>
    public event Action<JsonObject>? CustomReceived;

    /// <summary>The attributes as they are now: a copy.</summary>
    public JsonObject State
    {
        get
        {
            lock (_gate)
            {
                return _state.Copy();
            }
        }
    }

    /// <summary>Changes attributes and tells the page.</summary>
    /// <param name="changed">The attributes; the object belongs to the widget afterwards.</param>
    public void Update(JsonObject changed)
    {
        Merge(changed);
        Send("update", changed);
    }

    /// <summary>Sends a custom message to the page.</summary>
    /// <param name="content">The message; the object belongs to the widget afterwards.</param>
    public void SendCustom(JsonObject content) => _comm.Send(new JsonObject { ["method"] = "custom", ["content"] = content });

    private void Receive(JsonObject data)
    {
        switch (data.Text("method"))
        {
            case "update":
                var changed = data.Object("state");
                Merge(changed);
                // First the echo, by which every open page of this kernel agrees on the state; only then what the change leads to.
                Send("echo_update", changed.Copy());
                Changed?.Invoke(changed);
                break;
            case "request_state":
                Send("update", State);
                break;
            case "custom":
                CustomReceived?.Invoke(data.Object("content"));
                break;
        }
    }

    private void Merge(JsonObject changed)
    {
        lock (_gate)
        {
            foreach (var (name, value) in changed)
            {
                _state[name] = value?.DeepClone();
            }
        }
    }

    private void Send(string method, JsonObject state) =>
        _comm.Send(new JsonObject { ["method"] = method, ["state"] = state, ["buffer_paths"] = new JsonArray() });
}
