using System.Text.Json.Nodes;
using SunLessons.Jupyter.Messages;
using SunLessons.Jupyter.Server;

namespace SunLessons.Jupyter.Tests;

/// <summary>A kernel's channels as lists in memory: what the kernel sent can be counted.</summary>
internal sealed class MemoryTransport(string key) : IServerTransport
{
    private readonly MessageFrames _frames = new(key);
    private readonly MessageHeaders _headers = new("test");
    private readonly List<(KernelChannel Channel, KernelMessage Message)> _sent = [];
    private Action<KernelChannel, IReadOnlyList<byte[]>> _received = (_, _) => { };

    public void Start(Action<KernelChannel, IReadOnlyList<byte[]>> received) => _received = received;

    public void Send(KernelChannel channel, List<byte[]> frames)
    {
        Assert.True(_frames.TryDecode(frames, out var message, out var reason), reason);
        lock (_sent)
        {
            _sent.Add((channel, message));
        }
    }

    public void Dispose()
    {
    }

    /// <summary>Hands the kernel a message and returns its identifier.</summary>
    public string Receive(KernelChannel channel, string type, JsonObject? content = null, Action<List<byte[]>>? spoil = null, JsonObject? parent = null)
    {
        var header = _headers.Create(type);
        var frames = _frames.Encode(new KernelMessage(["client"u8.ToArray()], header, parent ?? [], [], content ?? [], []));
        spoil?.Invoke(frames);
        _received(channel, frames);
        return header.Text("msg_id");
    }

    /// <summary>Hands over frames as they are.</summary>
    public void Receive(KernelChannel channel, List<byte[]> frames) => _received(channel, frames);

    /// <summary>Everything sent because of one message, in order.</summary>
    public IReadOnlyList<(KernelChannel Channel, KernelMessage Message)> Caused(string id)
    {
        lock (_sent)
        {
            return [.. _sent.Where(s => s.Message.ParentId == id)];
        }
    }

    /// <summary>Waits until a message has been served to its idle status; at most 10 s.</summary>
    public async Task<IReadOnlyList<(KernelChannel Channel, KernelMessage Message)>> ServedAsync(string id)
    {
        for (var tries = 0; tries < 1000; tries++)
        {
            var caused = Caused(id);
            if (caused.Any(c => c.Message.Type == "status" && c.Message.Content.Text("execution_state") == "idle"))
            {
                return caused;
            }

            await Task.Delay(10);
        }

        throw new TimeoutException($"No idle status came; this came: {string.Join(", ", Caused(id).Select(c => c.Message.Type))}");
    }
}
