using System.Text.Json.Nodes;
using SunLessons.Cells.Hosting;
using SunLessons.Figures;

namespace SunLessons.Player;

/// <summary>The cells' host in a published page: widgets are told to the page's script as they would be told to any front end, one message each.</summary>
/// <param name="tell">Tells the page a message.</param>
/// <param name="draw">Tells it a message that brings a drawing: the drawing goes beside it, for writing it as part of the message takes longer than drawing.</param>
internal sealed class PageHost(Action<JsonObject> tell, Action<JsonObject, string> draw) : IWidgetHost
{
    private readonly Dictionary<string, Channel> _channels = [];
    private int _opened;

    /// <summary>Which cell runs: its outputs belong to it.</summary>
    public string Cell { get; set; } = "";

    public FrontEnd FrontEnd { get; } = new();

    public IFigurePen Pen { get; } = new SvgPen();

    public IWidgetChannel Open(string model, JsonObject state)
    {
        var channel = new Channel($"w{++_opened}", tell, draw);
        _channels[channel.Id] = channel;
        tell(new JsonObject { ["kind"] = "open", ["id"] = channel.Id, ["model"] = model, ["state"] = state });
        return channel;
    }

    public void Display(IWidgetChannel root, string plainText) =>
        tell(new JsonObject { ["kind"] = "display", ["cell"] = Cell, ["widget"] = root.Id, ["text"] = plainText });

    public void Display(IReadOnlyDictionary<string, JsonNode> mimeBundle)
    {
        var data = new JsonObject(mimeBundle.Select(pair => KeyValuePair.Create(pair.Key, (JsonNode?)pair.Value.DeepClone())));
        tell(new JsonObject { ["kind"] = "display", ["cell"] = Cell, ["data"] = data });
    }

    public void Record(string key, JsonNode? value)
    {
        FrontEnd.Remember(key, value);
        tell(new JsonObject { ["kind"] = "record", ["key"] = key, ["value"] = value?.DeepClone() });
    }

    /// <summary>Hands a message of the page to the widget it is for; a widget of an earlier run may be gone.</summary>
    public void Receive(string id, JsonObject message)
    {
        if (_channels.TryGetValue(id, out var channel))
        {
            channel.Receive(message);
        }
    }

    private sealed class Channel(string id, Action<JsonObject> tell, Action<JsonObject, string> draw) : IWidgetChannel
    {
        public string Id => id;

        public event Action<JsonObject>? Changed;

        public event Action<JsonObject>? CustomReceived;

        public void Update(JsonObject changed) => tell(new JsonObject { ["kind"] = "update", ["id"] = id, ["state"] = changed });

        public void SendCustom(JsonObject content)
        {
            var message = new JsonObject { ["kind"] = "custom", ["id"] = id, ["content"] = content };
            if ((content["figure"] ?? content["columns"]) is JsonObject figure && figure.Remove("svg", out var drawing) && drawing is not null)
            {
                draw(message, drawing.GetValue<string>());
            }
            else
            {
                tell(message);
            }
        }

        public void Receive(JsonObject message)
        {
            if (message["state"] is JsonObject state)
            {
                Changed?.Invoke(state);
            }

            if (message["content"] is JsonObject content)
            {
                CustomReceived?.Invoke(content);
            }
        }
    }
}
