using System.Collections.Concurrent;
using System.Text.Json.Nodes;
using SunLessons.Jupyter.Messages;

namespace SunLessons.Jupyter.Server;

/// <summary>The kernel's table of comms: named channels between objects here and objects in a front end (Jupyter messaging 5.4, "Custom Messages").</summary>
public sealed class KernelComms
{
    private readonly KernelServer _server;
    private readonly ConcurrentDictionary<string, KernelComm> _comms = [];
    private readonly Dictionary<string, Action<KernelComm, JsonObject>> _targets = [];

    /// <summary>A table that serves comm_open, comm_msg, comm_close and comm_info_request of a server.</summary>
    /// <param name="server">The server.</param>
    public KernelComms(KernelServer server)
    {
        _server = server;
        server.Handle("comm_open", Lane.Ordered, OpenedAsync);
        server.Handle("comm_msg", Lane.Ordered, ReceivedAsync);
        server.Handle("comm_close", Lane.Ordered, ClosedAsync);
        server.Handle("comm_info_request", Lane.Immediate, InfoAsync);
    }

    /// <summary>Says what takes comms that a front end opens for a target. A comm for any other target is closed again, as the protocol wants.</summary>
    /// <param name="target">The target's name.</param>
    /// <param name="opened">Takes the comm and its first data.</param>
    public void Register(string target, Action<KernelComm, JsonObject> opened) => _targets[target] = opened;

    /// <summary>Opens a comm to the front ends.</summary>
    /// <param name="target">The target's name.</param>
    /// <param name="data">First data.</param>
    /// <param name="metadata">What is said about it.</param>
    public KernelComm Open(string target, JsonObject data, JsonObject? metadata = null)
    {
        var comm = new KernelComm(this, Guid.NewGuid().ToString("N"), target);
        _comms[comm.Id] = comm;
        Publish("comm_open", new JsonObject { ["comm_id"] = comm.Id, ["target_name"] = target, ["data"] = data }, metadata, null);
        return comm;
    }

    internal void Publish(string type, JsonObject content, JsonObject? metadata, IReadOnlyList<byte[]>? buffers) =>
        _server.Publish(type, content, _server.Current?.Message.Header ?? [], metadata, buffers);

    internal void Close(KernelComm comm)
    {
        if (_comms.TryRemove(comm.Id, out _))
        {
            Publish("comm_close", new JsonObject { ["comm_id"] = comm.Id, ["data"] = new JsonObject() }, null, null);
        }
    }

    private Task<JsonObject?> OpenedAsync(KernelRequest request)
    {
        var id = request.Content.Text("comm_id");
        var target = request.Content.Text("target_name");
        if (id.Length == 0 || !_targets.TryGetValue(target, out var opened))
        {
            request.Publish("comm_close", new JsonObject { ["comm_id"] = id, ["data"] = new JsonObject() });
            return Task.FromResult<JsonObject?>(null);
        }

        var comm = new KernelComm(this, id, target);
        _comms[id] = comm;
        opened(comm, request.Content.Object("data"));
        return Task.FromResult<JsonObject?>(null);
    }

    private Task<JsonObject?> ReceivedAsync(KernelRequest request)
    {
        if (_comms.TryGetValue(request.Content.Text("comm_id"), out var comm))
        {
            comm.RaiseReceived(request.Content.Object("data"));
        }

        return Task.FromResult<JsonObject?>(null);
    }

    private Task<JsonObject?> ClosedAsync(KernelRequest request)
    {
        if (_comms.TryRemove(request.Content.Text("comm_id"), out var comm))
        {
            comm.RaiseClosed();
        }

        return Task.FromResult<JsonObject?>(null);
    }

    private Task<JsonObject?> InfoAsync(KernelRequest request)
    {
        var target = request.Content.Text("target_name");
        var comms = new JsonObject();
        foreach (var comm in _comms.Values.Where(c => target.Length == 0 || c.Target == target))
        {
            comms[comm.Id] = new JsonObject { ["target_name"] = comm.Target };
        }

        return Task.FromResult<JsonObject?>(new JsonObject { ["comms"] = comms });
    }
}

/// <summary>The kernel's end of a comm. Safe to call from any thread.</summary>
public sealed class KernelComm
{
    private readonly KernelComms _table;

    internal KernelComm(KernelComms table, string id, string target)
    {
        _table = table;
        Id = id;
        Target = target;
    }

    /// <summary>The comm's identifier.</summary>
    public string Id { get; }

    /// <summary>What kind of object it belongs to.</summary>
    public string Target { get; }

    /// <summary>A front end sent something. Comm messages come one after the other, in their order among cells.</summary>
    public event Action<JsonObject>? Received;

    /// <summary>A front end closed the comm.</summary>
    public event Action? Closed;

    /// <summary>Sends something to the front ends.</summary>
    /// <param name="data">What.</param>
    /// <param name="metadata">What is said about it.</param>
    /// <param name="buffers">Binary parts.</param>
    public void Send(JsonObject data, JsonObject? metadata = null, IReadOnlyList<byte[]>? buffers = null) =>
        _table.Publish("comm_msg", new JsonObject { ["comm_id"] = Id, ["data"] = data }, metadata, buffers);

    /// <summary>Closes the comm at both ends.</summary>
    public void Close() => _table.Close(this);

    internal void RaiseReceived(JsonObject data) => Received?.Invoke(data);

    internal void RaiseClosed() => Closed?.Invoke();
}
