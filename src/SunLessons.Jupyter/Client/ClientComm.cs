using System.Text.Json.Nodes;

namespace SunLessons.Jupyter.Client;

/// <summary>The page's end of a comm: a named channel between an object in the page and one in the kernel.</summary>
public sealed class ClientComm
{
    private readonly KernelClient _client;

    internal ClientComm(KernelClient client, string id, string target)
    {
        _client = client;
        Id = id;
        Target = target;
    }

    /// <summary>The comm's identifier.</summary>
    public string Id { get; }

    /// <summary>What kind of object it belongs to, as "jupyter.widget".</summary>
    public string Target { get; }

    /// <summary>The kernel sent something. Called on the client's dispatch thread, one after the other.</summary>
    public event Action<CommMessage>? Received;

    /// <summary>The kernel closed the comm.</summary>
    public event Action? Closed;

    /// <summary>Sends something to the kernel's end.</summary>
    /// <param name="data">What.</param>
    /// <param name="metadata">What is said about it.</param>
    /// <param name="buffers">Binary parts.</param>
    public void Send(JsonObject data, JsonObject? metadata = null, IReadOnlyList<byte[]>? buffers = null) =>
        _client.SendComm("comm_msg", new JsonObject { ["comm_id"] = Id, ["data"] = data }, metadata, buffers);

    /// <summary>Closes the comm at both ends.</summary>
    public void Close() => _client.CloseComm(this);

    internal void RaiseReceived(CommMessage message) => Received?.Invoke(message);

    internal void RaiseClosed() => Closed?.Invoke();
}

/// <summary>What came through a comm.</summary>
/// <param name="Data">The data.</param>
/// <param name="Metadata">What is said about it.</param>
/// <param name="Buffers">Binary parts.</param>
/// <param name="ParentId">Identifier of the message that caused it: of the execute request when a running cell sent it.</param>
public sealed record CommMessage(JsonObject Data, JsonObject Metadata, IReadOnlyList<byte[]> Buffers, string ParentId);
