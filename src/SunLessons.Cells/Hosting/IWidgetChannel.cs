using System.Text.Json.Nodes;

namespace SunLessons.Cells.Hosting;

/// <summary>
/// One open widget between the cells and whatever page shows it (Jupyter widget protocol 2.1: one comm).
/// Safe to call from any thread; the events may arrive on any thread, one at a time for one channel.
/// </summary>
public interface IWidgetChannel
{
    /// <summary>Names the widget for ever; <c>"IPY_MODEL_" + Id</c> refers to it in the <c>children</c> list of another.</summary>
    string Id { get; }

    /// <summary>Sends attributes that changed to the page (method <c>update</c>). The object belongs to the channel afterwards.</summary>
    void Update(JsonObject changed);

    /// <summary>Sends a message of our own to the page (method <c>custom</c>). The object belongs to the channel afterwards.</summary>
    void SendCustom(JsonObject content);

    /// <summary>The page changed attributes (method <c>update</c>): the state it sent, only what changed.</summary>
    event Action<JsonObject>? Changed;

    /// <summary>The page sent a custom message, for example <c>{"event":"click"}</c> of a button.</summary>
    event Action<JsonObject>? CustomReceived;
}
