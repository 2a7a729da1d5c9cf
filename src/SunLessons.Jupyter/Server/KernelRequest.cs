using System.Text.Json.Nodes;
using SunLessons.Jupyter.Messages;

namespace SunLessons.Jupyter.Server;

/// <summary>One accepted message while it is being served: what it says, and the ways to answer it.</summary>
public sealed class KernelRequest
{
    private readonly KernelServer _server;
    private int _replied;
    private int _finished;

    internal KernelRequest(KernelServer server, KernelChannel channel, KernelMessage message, long sequence)
    {
        _server = server;
        Channel = channel;
        Message = message;
        Sequence = sequence;
    }

    /// <summary>Where the message came in.</summary>
    public KernelChannel Channel { get; }

    /// <summary>The message.</summary>
    public KernelMessage Message { get; }

    /// <summary>The message's content.</summary>
    public JsonObject Content => Message.Content;

    /// <summary>Runs after the reply and the idle status went out, for what ends the kernel.</summary>
    public Action? Afterwards { get; set; }

    /// <summary>Metadata for the reply.</summary>
    public JsonObject? ReplyMetadata { get; set; }

    internal long Sequence { get; }

    /// <summary>True for a type that must be answered by exactly one reply: those that end in "_request".</summary>
    internal bool WantsReply => Message.Type.EndsWith("_request", StringComparison.Ordinal);

    internal bool HasReplied => Volatile.Read(ref _replied) != 0;

    /// <summary>True for the first who ends the request: its idle status is sent once.</summary>
    internal bool Finish() => Interlocked.Exchange(ref _finished, 1) == 0;

    /// <summary>Sends an output or status to every client, as caused by this request.</summary>
    /// <param name="messageType">The output's type, as "stream".</param>
    /// <param name="content">What it says.</param>
    /// <param name="metadata">What is said about it.</param>
    /// <param name="buffers">Binary parts.</param>
    public void Publish(string messageType, JsonObject content, JsonObject? metadata = null, IReadOnlyList<byte[]>? buffers = null) =>
        _server.Publish(messageType, content, Message.Header, metadata, buffers);

    /// <summary>Asks the client that sent this request for a line of text, on the stdin channel.</summary>
    /// <param name="prompt">What to ask.</param>
    /// <param name="password">True when the answer must not be shown.</param>
    /// <param name="stop">Ends the waiting, as an interrupt does.</param>
    public Task<string> AskAsync(string prompt, bool password, CancellationToken stop) => _server.AskAsync(this, prompt, password, stop);

    /// <summary>Aborts the execute requests that were already waiting when this is called (stop_on_error); those that come later run.</summary>
    public void AbortWaiting() => _server.AbortWaiting();

    /// <summary>Sends the reply. Only the first one is sent: a request has exactly one.</summary>
    /// <param name="content">What it says; "status" is filled in as "ok" when absent.</param>
    /// <returns>False when a reply was sent before.</returns>
    public bool Reply(JsonObject content)
    {
        if (Interlocked.Exchange(ref _replied, 1) != 0)
        {
            return false;
        }

        _server.SendReply(this, content);
        return true;
    }
}
