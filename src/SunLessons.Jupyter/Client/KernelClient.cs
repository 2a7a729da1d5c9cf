using System.Collections.Concurrent;
using System.Text;
using System.Text.Json.Nodes;
using System.Threading.Channels;
using NetMQ;
using NetMQ.Sockets;
using SunLessons.Jupyter.Messages;

namespace SunLessons.Jupyter.Client;

/// <summary>
/// A client of one kernel. All callbacks and events come from one dispatch thread, in the order in which the kernel sent the
/// messages; a callback that takes long delays the next, and one that throws is logged and does not stop the others.
/// </summary>
public sealed class KernelClient : IAsyncDisposable
{
    private readonly MessageFrames _frames;
    private readonly MessageHeaders _headers = new("page");
    private readonly Action<string> _log;
    private readonly DealerSocket _shell = new();
    private readonly DealerSocket _control = new();
    private readonly DealerSocket _stdin = new();
    private readonly SubscriberSocket _ioPub = new();
    private readonly NetMQQueue<(KernelChannel Channel, List<byte[]> Frames)> _outgoing = new();
    private readonly NetMQPoller _poller;
    private readonly Channel<(KernelChannel Channel, KernelMessage Message)> _incoming =
        System.Threading.Channels.Channel.CreateUnbounded<(KernelChannel, KernelMessage)>(new() { SingleReader = true });
    private readonly ConcurrentDictionary<string, Pending> _pending = [];
    private readonly ConcurrentDictionary<string, ClientComm> _comms = [];
    private readonly TaskCompletionSource _heard = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private readonly Task _dispatching;
    private int _dead;
    private bool _disposed;

    /// <summary>Connects to a kernel's channels; call <see cref="WaitUntilReadyAsync"/> before anything else.</summary>
    /// <param name="connection">Address, ports and key.</param>
    /// <param name="log">Takes one line for each message that was dropped and each callback that threw; may be null.</param>
    public KernelClient(ConnectionFile connection, Action<string>? log = null)
    {
        _frames = new MessageFrames(connection.Key);
        _log = log ?? (_ => { });
        // Router sockets answer to this name; input requests come to the stdin socket under the same one.
        var identity = Encoding.ASCII.GetBytes(_headers.Session);
        foreach (var socket in new NetMQSocket[] { _shell, _control, _stdin })
        {
            socket.Options.Identity = identity;
        }

        foreach (var socket in new NetMQSocket[] { _shell, _control, _stdin, _ioPub })
        {
            // The kernel binds within some tens of milliseconds: looking again only after the usual 100 ms would cost half the start.
            socket.Options.ReconnectInterval = TimeSpan.FromMilliseconds(10);
            socket.Options.Linger = TimeSpan.FromMilliseconds(200);
        }

        _ioPub.Options.ReceiveHighWatermark = 0;
        _ioPub.SubscribeToAnyTopic();
        _shell.Connect(connection.Endpoint(KernelChannel.Shell));
        _control.Connect(connection.Endpoint(KernelChannel.Control));
        _stdin.Connect(connection.Endpoint(KernelChannel.Stdin));
        _ioPub.Connect(connection.Endpoint(KernelChannel.IoPub));
        _shell.ReceiveReady += (_, _) => Take(_shell, KernelChannel.Shell);
        _control.ReceiveReady += (_, _) => Take(_control, KernelChannel.Control);
        _stdin.ReceiveReady += (_, _) => Take(_stdin, KernelChannel.Stdin);
        _ioPub.ReceiveReady += (_, _) => Take(_ioPub, KernelChannel.IoPub);
        _outgoing.ReceiveReady += (_, _) => SendWaiting();
        _poller = new NetMQPoller { _shell, _control, _stdin, _ioPub, _outgoing };
        _poller.RunAsync("kernel client");
        _dispatching = Task.Run(DispatchAsync);
    }

    /// <summary>The kernel's process ended without being asked to; the text says what is known. Raised once.</summary>
    public event Action<string>? Died;

    /// <summary>The kernel opened a comm. Subscribe to the comm's own events inside the handler: nothing is lost then.</summary>
    public event Action<ClientComm, CommMessage>? CommOpened;

    /// <summary>The kernel is busy (true) or idle (false).</summary>
    public event Action<bool>? BusyChanged;

    /// <summary>
    /// An output came that belongs to no run this client waits for: a figure or a print set off by a control, or another client's run.
    /// The text is the identifier of the message that caused it.
    /// </summary>
    public event Action<KernelOutput, string>? OtherOutput;

    /// <summary>
    /// The kernel asks for a line of input: prompt and whether it is a password. Without a handler a run is started with allow_stdin=false,
    /// so that a cell that reads gets a plain error. Null as answer stands for an empty line.
    /// </summary>
    public Func<string, bool, Task<string?>>? InputRequested { get; set; }

    /// <summary>True after <see cref="Died"/>.</summary>
    public bool IsDead => Volatile.Read(ref _dead) != 0;

    /// <summary>Waits until the kernel answers and its outputs arrive here.</summary>
    /// <param name="stop">Ends the waiting.</param>
    /// <returns>The content of its kernel_info_reply.</returns>
    public async Task<JsonObject> WaitUntilReadyAsync(CancellationToken stop = default)
    {
        while (true)
        {
            var reply = await RequestAsync("kernel_info_request", [], stop: stop).ConfigureAwait(false);
            // The subscription travels on its own: a kernel can answer before its outputs reach us. Then ask once more.
            var first = await Task.WhenAny(_heard.Task, Task.Delay(20, stop)).ConfigureAwait(false);
            if (first == _heard.Task)
            {
                return reply;
            }

            stop.ThrowIfCancellationRequested();
        }
    }

    /// <summary>Runs a cell. Outputs are handed on as they come; the task ends after the reply and the last output.</summary>
    /// <param name="code">The cell's source.</param>
    /// <param name="metadata">Message metadata: <c>{"sunlessons":{"language":"csharp"|"html"|"svg","cell":"..."}}</c>; null for none.</param>
    /// <param name="onOutput">Takes each output.</param>
    /// <param name="options">Members of the request that differ from the usual: "silent", "store_history", "user_expressions", "stop_on_error".</param>
    /// <param name="stop">Stops waiting; it does not stop the cell (<see cref="InterruptAsync"/> does).</param>
    /// <exception cref="KernelDiedException">The process ended meanwhile.</exception>
    public async Task<ExecuteReply> ExecuteAsync(
        string code,
        JsonObject? metadata = null,
        Action<KernelOutput>? onOutput = null,
        JsonObject? options = null,
        CancellationToken stop = default)
    {
        var content = new JsonObject
        {
            ["code"] = code,
            ["silent"] = false,
            ["store_history"] = true,
            ["user_expressions"] = new JsonObject(),
            ["allow_stdin"] = InputRequested is not null,
            ["stop_on_error"] = true,
        };
        foreach (var (name, value) in options ?? [])
        {
            content[name] = value?.DeepClone();
        }

        var reply = await RequestAsync("execute_request", content, metadata, onOutput, KernelChannel.Shell, stop).ConfigureAwait(false);
        return new ExecuteReply(
            reply.Text("status", "error"),
            reply["execution_count"] is JsonValue count && count.TryGetValue<int>(out var number) ? number : null,
            reply.Text("ename"),
            reply.Text("evalue"),
            reply);
    }

    /// <summary>Asks what could stand at a place in code.</summary>
    /// <param name="code">The cell's source.</param>
    /// <param name="cursor">The place, in code points from the beginning; <see cref="CodePoints.FromUtf16"/> converts an editor's offset.</param>
    /// <param name="stop">Stops waiting.</param>
    public async Task<CompleteReply> CompleteAsync(string code, int cursor, CancellationToken stop = default)
    {
        var reply = await RequestAsync("complete_request", new JsonObject { ["code"] = code, ["cursor_pos"] = cursor }, stop: stop).ConfigureAwait(false);
        var types = reply.Object("metadata")["_jupyter_types_experimental"] as JsonArray ?? [];
        return new CompleteReply(
            reply.Texts("matches"),
            reply.Integer("cursor_start"),
            reply.Integer("cursor_end"),
            [.. types.OfType<JsonObject>().Select(t => t.Text("type"))]);
    }

    /// <summary>Asks what the word at a place in code is.</summary>
    /// <param name="code">The cell's source.</param>
    /// <param name="cursor">The place, in code points from the beginning.</param>
    /// <param name="stop">Stops waiting.</param>
    public async Task<InspectReply> InspectAsync(string code, int cursor, CancellationToken stop = default)
    {
        var reply = await RequestAsync("inspect_request", new JsonObject { ["code"] = code, ["cursor_pos"] = cursor, ["detail_level"] = 0 }, stop: stop).ConfigureAwait(false);
        return new InspectReply(reply.Flag("found"), reply.Object("data"));
    }

    /// <summary>Asks the compiler about code without running it. A request of our own kernel ("sunlessons_diagnose_request"): another kernel gives no remarks.</summary>
    /// <param name="code">The cell's source.</param>
    /// <param name="stop">Stops waiting.</param>
    public async Task<IReadOnlyList<DiagnosticRemark>> DiagnoseAsync(string code, CancellationToken stop = default)
    {
        var reply = await RequestAsync("sunlessons_diagnose_request", new JsonObject { ["code"] = code }, stop: stop).ConfigureAwait(false);
        return
        [
            .. (reply["diagnostics"] as JsonArray ?? []).OfType<JsonObject>().Select(d => new DiagnosticRemark(
                d.Text("severity"),
                d.Text("id"),
                d.Text("message"),
                d.Integer("start_line"),
                d.Integer("start_column"),
                d.Integer("end_line"),
                d.Integer("end_column"))),
        ];
    }

    /// <summary>Asks the kernel to stop the running cell; the cell's own reply says how it ended.</summary>
    /// <param name="stop">Stops waiting.</param>
    public Task InterruptAsync(CancellationToken stop = default) =>
        RequestAsync("interrupt_request", [], channel: KernelChannel.Control, stop: stop);

    /// <summary>Asks the kernel to end itself. <see cref="Died"/> is not raised then.</summary>
    /// <param name="restart">True when another one is to be started in its place.</param>
    /// <param name="stop">Stops waiting.</param>
    public async Task ShutdownAsync(bool restart = false, CancellationToken stop = default)
    {
        Interlocked.Exchange(ref _dead, 1);
        await RequestAsync("shutdown_request", new JsonObject { ["restart"] = restart }, channel: KernelChannel.Control, stop: stop).ConfigureAwait(false);
    }

    /// <summary>Sends any request and waits for its reply and its idle status.</summary>
    /// <param name="messageType">The type, as "history_request".</param>
    /// <param name="content">What it says.</param>
    /// <param name="metadata">What is said about it.</param>
    /// <param name="onOutput">Takes each output that the request causes.</param>
    /// <param name="channel">Shell or control.</param>
    /// <param name="stop">Stops waiting.</param>
    /// <returns>The reply's content.</returns>
    /// <exception cref="KernelDiedException">The process ended meanwhile.</exception>
    public async Task<JsonObject> RequestAsync(
        string messageType,
        JsonObject content,
        JsonObject? metadata = null,
        Action<KernelOutput>? onOutput = null,
        KernelChannel channel = KernelChannel.Shell,
        CancellationToken stop = default)
    {
        var message = Message(messageType, content, metadata, null, null);
        // Before the first output has come, an idle status may never come: the subscription can be too late for it.
        var pending = new Pending(onOutput, needsIdle: _heard.Task.IsCompleted);
        _pending[message.Id] = pending;
        try
        {
            if (IsDead && messageType != "shutdown_request")
            {
                throw new KernelDiedException();
            }

            Send(channel, message);
            return await pending.Done.Task.WaitAsync(stop).ConfigureAwait(false);
        }
        finally
        {
            _pending.TryRemove(message.Id, out _);
        }
    }

    /// <summary>Opens a comm to the kernel.</summary>
    /// <param name="target">What kind of object is to answer, as "sunlessons.page".</param>
    /// <param name="data">First data.</param>
    /// <param name="metadata">What is said about it.</param>
    public ClientComm OpenComm(string target, JsonObject data, JsonObject? metadata = null)
    {
        var comm = new ClientComm(this, Guid.NewGuid().ToString("N"), target);
        _comms[comm.Id] = comm;
        SendComm("comm_open", new JsonObject { ["comm_id"] = comm.Id, ["target_name"] = target, ["data"] = data }, metadata, null);
        return comm;
    }

    /// <summary>Says that the process has ended; everything that waits for it ends with <see cref="KernelDiedException"/>.</summary>
    /// <param name="what">What is known about it, in one sentence.</param>
    public void MarkDead(string what)
    {
        if (Interlocked.Exchange(ref _dead, 1) == 0)
        {
            Guard(() => Died?.Invoke(what));
        }

        foreach (var pending in _pending.Values)
        {
            pending.Done.TrySetException(new KernelDiedException());
        }
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        if (_disposed)
        {
            return;
        }

        _disposed = true;
        Interlocked.Exchange(ref _dead, 1);
        _incoming.Writer.TryComplete();
        // The poller's thread may be just inside a callback of ours: stopping waits for it, so not on that thread.
        await Task.Run(() =>
        {
            _poller.Stop();
            _poller.Dispose();
            foreach (var socket in new NetMQSocket[] { _shell, _control, _stdin, _ioPub })
            {
                socket.Dispose();
            }

            _outgoing.Dispose();
        }).ConfigureAwait(false);
        await _dispatching.ConfigureAwait(false);
        foreach (var pending in _pending.Values)
        {
            pending.Done.TrySetException(new KernelDiedException());
        }
    }

    internal void SendComm(string messageType, JsonObject content, JsonObject? metadata, IReadOnlyList<byte[]>? buffers) =>
        Send(KernelChannel.Shell, Message(messageType, content, metadata, null, buffers));

    internal void CloseComm(ClientComm comm)
    {
        if (_comms.TryRemove(comm.Id, out _))
        {
            SendComm("comm_close", new JsonObject { ["comm_id"] = comm.Id, ["data"] = new JsonObject() }, null, null);
        }
    }

    private static KernelOutput? ToOutput(KernelMessage message)
    {
        var content = message.Content;
        return message.Type switch
        {
            "stream" => new StreamOutput(content.Text("name", "stdout"), content.Text("text")),
            "display_data" or "update_display_data" => new DisplayOutput(
                content.Object("data"),
                content.Object("metadata"),
                content.Object("transient").Text("display_id") is { Length: > 0 } id ? id : null,
                message.Type == "update_display_data"),
            "execute_result" => new ResultOutput(content.Integer("execution_count"), content.Object("data"), content.Object("metadata")),
            "error" => new ErrorOutput(content.Text("ename"), content.Text("evalue"), content.Texts("traceback")),
            "clear_output" => new ClearedOutput(content.Flag("wait")),
            _ => null,
        };
    }

    private KernelMessage Message(string type, JsonObject content, JsonObject? metadata, JsonObject? parent, IReadOnlyList<byte[]>? buffers) => new(
        KernelMessage.NoFrames,
        _headers.Create(type),
        parent?.Copy() ?? [],
        metadata?.Copy() ?? [],
        content,
        buffers ?? KernelMessage.NoFrames);

    private void Send(KernelChannel channel, KernelMessage message)
    {
        if (!_disposed)
        {
            _outgoing.Enqueue((channel, _frames.Encode(message)));
        }
    }

    private void SendWaiting()
    {
        while (_outgoing.TryDequeue(out var next, TimeSpan.Zero))
        {
            NetMQSocket socket = next.Channel switch
            {
                KernelChannel.Control => _control,
                KernelChannel.Stdin => _stdin,
                _ => _shell,
            };
            if (!socket.TrySendMultipartBytes(TimeSpan.FromMilliseconds(50), next.Frames))
            {
                _log($"A message could not be sent on the {next.Channel} channel: the kernel does not take any.");
            }
        }
    }

    private void Take(NetMQSocket socket, KernelChannel channel)
    {
        for (var taken = 0; taken < 200; taken++)
        {
            List<byte[]>? frames = [];
            if (!socket.TryReceiveMultipartBytes(ref frames!))
            {
                return;
            }

            if (_frames.TryDecode(frames!, out var message, out var reason))
            {
                _incoming.Writer.TryWrite((channel, message));
            }
            else
            {
                _log(reason);
            }
        }
    }

    private async Task DispatchAsync()
    {
        await foreach (var (channel, message) in _incoming.Reader.ReadAllAsync().ConfigureAwait(false))
        {
            Guard(() => Dispatch(channel, message));
        }
    }

    private void Dispatch(KernelChannel channel, KernelMessage message)
    {
        switch (channel)
        {
            case KernelChannel.IoPub:
                _heard.TrySetResult();
                DispatchOutput(message);
                break;
            case KernelChannel.Stdin:
                _ = AnswerAsync(message);
                break;
            default:
                if (_pending.TryGetValue(message.ParentId, out var pending))
                {
                    pending.TakeReply(message.Content);
                }

                break;
        }
    }

    private void DispatchOutput(KernelMessage message)
    {
        switch (message.Type)
        {
            case "status":
                var state = message.Content.Text("execution_state");
                if (state is "busy" or "idle")
                {
                    Guard(() => BusyChanged?.Invoke(state == "busy"));
                }

                if (state == "idle" && _pending.TryGetValue(message.ParentId, out var finished))
                {
                    finished.TakeIdle();
                }

                break;
            case "comm_open":
                var comm = new ClientComm(this, message.Content.Text("comm_id"), message.Content.Text("target_name"));
                _comms[comm.Id] = comm;
                CommOpened?.Invoke(comm, ToComm(message));
                break;
            case "comm_msg":
                if (_comms.TryGetValue(message.Content.Text("comm_id"), out var known))
                {
                    known.RaiseReceived(ToComm(message));
                }

                break;
            case "comm_close":
                if (_comms.TryRemove(message.Content.Text("comm_id"), out var closed))
                {
                    closed.RaiseClosed();
                }

                break;
            default:
                if (ToOutput(message) is { } output)
                {
                    if (_pending.TryGetValue(message.ParentId, out var waiting) && waiting.OnOutput is { } take)
                    {
                        take(output);
                    }
                    else
                    {
                        OtherOutput?.Invoke(output, message.ParentId);
                    }
                }

                break;
        }
    }

    private static CommMessage ToComm(KernelMessage message) =>
        new(message.Content.Object("data"), message.Metadata, message.Buffers, message.ParentId);

    private async Task AnswerAsync(KernelMessage question)
    {
        var answer = "";
        try
        {
            if (InputRequested is { } ask)
            {
                answer = await ask(question.Content.Text("prompt"), question.Content.Flag("password")).ConfigureAwait(false) ?? "";
            }
        }
        catch (Exception e)
        {
            _log($"Answering an input request failed: {e.Message}");
        }

        Send(KernelChannel.Stdin, Message("input_reply", new JsonObject { ["value"] = answer, ["status"] = "ok" }, null, question.Header, null));
    }

    private void Guard(Action callback)
    {
        try
        {
            callback();
        }
        catch (Exception e)
        {
            _log($"A callback for a kernel message failed: {e}");
        }
    }

    private sealed class Pending(Action<KernelOutput>? onOutput, bool needsIdle)
    {
        private JsonObject? _reply;
        private bool _idle = !needsIdle;

        public Action<KernelOutput>? OnOutput { get; } = onOutput;

        public TaskCompletionSource<JsonObject> Done { get; } = new(TaskCreationOptions.RunContinuationsAsynchronously);

        public void TakeReply(JsonObject content)
        {
            _reply = content;
            Finish();
        }

        public void TakeIdle()
        {
            _idle = true;
            Finish();
        }

        private void Finish()
        {
            if (_idle && _reply is not null)
            {
                Done.TrySetResult(_reply);
            }
        }
    }
}
