using System.Collections.Concurrent;
using System.Text;
using System.Text.Json.Nodes;
using SunLessons.Jupyter.Messages;

namespace SunLessons.Jupyter.Server;

/// <summary>How a type of message waits its turn.</summary>
public enum Lane
{
    /// <summary>In the order of arrival, one after the other: cells and comm messages.</summary>
    Ordered,

    /// <summary>One after the other, but beside a running cell: completion, inspection, diagnostics.</summary>
    Language,

    /// <summary>At once: what needs nothing but a table, and everything on the control channel.</summary>
    Immediate,
}

/// <summary>
/// The kernel's side of the protocol, whatever the language. It keeps two promises whatever a handler does: exactly one
/// reply to every request (also when the type is unknown or the handler throws), and exactly one busy and one idle status to
/// every accepted message. What is not signed by the connection's key is dropped with one line in the log.
/// </summary>
public sealed class KernelServer : IDisposable
{
    private readonly IServerTransport _transport;
    private readonly MessageFrames _frames;
    private readonly MessageHeaders _headers = new("kernel");
    private readonly Action<string> _log;
    private readonly Dictionary<string, (Lane Lane, Func<KernelRequest, Task<JsonObject?>> Serve)> _handlers = [];
    private readonly BlockingCollection<KernelRequest> _ordered = [];
    private readonly BlockingCollection<KernelRequest> _language = [];
    private readonly BlockingCollection<KernelRequest> _immediate = [];
    private readonly ConcurrentDictionary<string, TaskCompletionSource<string>> _questions = [];
    private readonly HashSet<string> _served = [];
    private readonly TaskCompletionSource _stopped = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private readonly AsyncLocal<KernelRequest?> _flowing = new();
    private volatile KernelRequest? _lastOrdered;
    private volatile KernelRequest? _inTurn;
    private long _sequence;
    private long _abortUpTo;
    private long _accepted;

    /// <summary>A server on a transport.</summary>
    /// <param name="transport">What carries the frames.</param>
    /// <param name="key">The connection's key.</param>
    /// <param name="log">Takes one line for each thing that a maintainer should know; never a message's text.</param>
    public KernelServer(IServerTransport transport, string key, Action<string> log)
    {
        _transport = transport;
        _frames = new MessageFrames(key);
        _log = log;
    }

    /// <summary>
    /// The request that the calling code works for: it flows along with awaits, tasks and new threads. Where no request flows
    /// (a thread that was there before), the last cell or comm message; null before the first.
    /// </summary>
    public KernelRequest? Current => _flowing.Value ?? _lastOrdered;

    /// <summary>The cell or comm message that is being served; null between two.</summary>
    public KernelRequest? InTurn => _inTurn;

    /// <summary>How many messages were accepted so far.</summary>
    public long Accepted => Interlocked.Read(ref _accepted);

    /// <summary>Ends when <see cref="Stop"/> was called.</summary>
    public Task Completion => _stopped.Task;

    /// <summary>Says what serves a type of message. To be called before <see cref="Start"/>.</summary>
    /// <param name="messageType">The type, as "execute_request".</param>
    /// <param name="lane">How it waits its turn.</param>
    /// <param name="serve">Returns the reply's content; null when it replied itself, or when the type wants no reply.</param>
    public void Handle(string messageType, Lane lane, Func<KernelRequest, Task<JsonObject?>> serve) => _handlers[messageType] = (lane, serve);

    /// <summary>Opens the channels and serves until <see cref="Stop"/>.</summary>
    public void Start()
    {
        _transport.Start(Receive);
        Publish("status", new JsonObject { ["execution_state"] = "starting" }, []);
        StartLane(_ordered, "cells");
        StartLane(_language, "language questions");
        StartLane(_immediate, "control");
    }

    /// <summary>Stops serving; waiting requests are not served any more.</summary>
    public void Stop()
    {
        _ordered.CompleteAdding();
        _language.CompleteAdding();
        _immediate.CompleteAdding();
        _stopped.TrySetResult();
    }

    /// <summary>Sends a message to every client.</summary>
    /// <param name="messageType">Its type.</param>
    /// <param name="content">What it says.</param>
    /// <param name="parent">Header of the message that caused it; empty when none did.</param>
    /// <param name="metadata">What is said about it.</param>
    /// <param name="buffers">Binary parts.</param>
    public void Publish(string messageType, JsonObject content, JsonObject parent, JsonObject? metadata = null, IReadOnlyList<byte[]>? buffers = null)
    {
        var message = new KernelMessage(
            [Encoding.UTF8.GetBytes("kernel." + messageType)],
            _headers.Create(messageType),
            parent.Copy(),
            metadata ?? [],
            content,
            buffers ?? KernelMessage.NoFrames);
        var frames = _frames.Encode(message);
        _transport.Send(KernelChannel.IoPub, frames);
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        Stop();
        _transport.Dispose();
    }

    /// <summary>
    /// Ends a request whose handler will not return: the reply and the idle status go out now, and nothing more when the handler returns after all.
    /// </summary>
    /// <param name="request">The request.</param>
    /// <param name="reply">The reply's content.</param>
    public void GiveUp(KernelRequest request, JsonObject reply)
    {
        if (request.Finish())
        {
            if (request.WantsReply)
            {
                request.Reply(reply);
            }

            request.Publish("status", new JsonObject { ["execution_state"] = "idle" });
        }
    }

    internal void SendReply(KernelRequest request, JsonObject content)
    {
        content.TryAdd("status", "ok");
        var type = request.Message.Type[..^"request".Length] + "reply";
        var reply = new KernelMessage(
            request.Message.Identities,
            _headers.Create(type),
            request.Message.Header.Copy(),
            request.ReplyMetadata ?? [],
            content,
            KernelMessage.NoFrames);
        _transport.Send(request.Channel, _frames.Encode(reply));
    }

    internal void AbortWaiting() => Interlocked.Exchange(ref _abortUpTo, Interlocked.Read(ref _sequence));

    internal async Task<string> AskAsync(KernelRequest request, string prompt, bool password, CancellationToken stop)
    {
        var header = _headers.Create("input_request");
        var id = header.Text("msg_id");
        var answer = new TaskCompletionSource<string>(TaskCreationOptions.RunContinuationsAsynchronously);
        // Clients answer with this header as parent; some leave it out, so the oldest open question is the second choice.
        _questions[id] = answer;
        try
        {
            var question = new KernelMessage(
                request.Message.Identities,
                header,
                request.Message.Header.Copy(),
                [],
                new JsonObject { ["prompt"] = prompt, ["password"] = password },
                KernelMessage.NoFrames);
            _transport.Send(KernelChannel.Stdin, _frames.Encode(question));
            return await answer.Task.WaitAsync(stop).ConfigureAwait(false);
        }
        finally
        {
            _questions.TryRemove(id, out _);
        }
    }

    private static JsonObject Failure(string name, string value) => new()
    {
        ["status"] = "error",
        ["ename"] = name,
        ["evalue"] = value,
        ["traceback"] = new JsonArray(value),
    };

    private void Receive(KernelChannel channel, IReadOnlyList<byte[]> frames)
    {
        if (!_frames.TryDecode(frames, out var message, out var reason))
        {
            _log(reason);
            return;
        }

        // Somebody who could listen but not sign must not be able to have a message served a second time.
        // The signature tells messages apart, not their identifier: clients that share a session have been seen to give the same one twice.
        var signature = Encoding.ASCII.GetString(frames[message.Identities.Count + 1]);
        if (signature.Length > 0 && !_served.Add(signature))
        {
            _log("A message that had been served before was dropped.");
            return;
        }

        if (channel == KernelChannel.Stdin)
        {
            TakeAnswer(message);
            return;
        }

        Interlocked.Increment(ref _accepted);
        var request = new KernelRequest(this, channel, message, Interlocked.Increment(ref _sequence));
        var lane = channel == KernelChannel.Control ? Lane.Immediate
            : _handlers.TryGetValue(message.Type, out var known) ? known.Lane
            : Lane.Immediate;
        var queue = lane switch
        {
            Lane.Ordered => _ordered,
            Lane.Language => _language,
            _ => _immediate,
        };
        try
        {
            queue.Add(request);
        }
        catch (InvalidOperationException)
        {
            // Stopped meanwhile: nothing is served any more.
        }
    }

    private void TakeAnswer(KernelMessage message)
    {
        if (message.Type != "input_reply")
        {
            _log("A message on the stdin channel was dropped: its type is not input_reply.");
            return;
        }

        if (!_questions.TryGetValue(message.ParentId, out var question))
        {
            question = _questions.Values.FirstOrDefault();
        }

        question?.TrySetResult(message.Content.Text("value"));
    }

    /// <summary>
    /// A thread for each lane: a cell that fills the thread pool must not keep an interrupt waiting for a free thread.
    /// </summary>
    private void StartLane(BlockingCollection<KernelRequest> requests, string name) => new Thread(() =>
    {
        foreach (var request in requests.GetConsumingEnumerable())
        {
            ServeAsync(request).GetAwaiter().GetResult();
        }
    })
    { IsBackground = true, Name = name }.Start();

    private async Task ServeAsync(KernelRequest request)
    {
        request.Publish("status", new JsonObject { ["execution_state"] = "busy" });
        try
        {
            var type = request.Message.Type;
            if (type == "execute_request" && request.Sequence <= Interlocked.Read(ref _abortUpTo))
            {
                request.Reply(new JsonObject { ["status"] = "aborted" });
            }
            else if (_handlers.TryGetValue(type, out var handler))
            {
                _flowing.Value = request;
                if (handler.Lane == Lane.Ordered)
                {
                    _lastOrdered = _inTurn = request;
                }

                var content = await handler.Serve(request).ConfigureAwait(false);
                if (content is not null && request.WantsReply)
                {
                    request.Reply(content);
                }
            }
            else if (request.WantsReply)
            {
                request.Reply(Failure("UnknownRequest", $"This kernel does not serve \"{type}\"."));
            }
        }
        catch (Exception e)
        {
            _log($"Serving {request.Message.Type} failed: {e}");
            if (request.WantsReply)
            {
                request.Reply(Failure(e.GetType().Name, e.Message));
            }
        }

        if (ReferenceEquals(_inTurn, request))
        {
            _inTurn = null;
        }

        if (!request.Finish())
        {
            return;
        }

        if (request.WantsReply && !request.HasReplied)
        {
            request.Reply(Failure("NoAnswer", $"The kernel had no answer to \"{request.Message.Type}\"."));
        }

        request.Publish("status", new JsonObject { ["execution_state"] = "idle" });
        request.Afterwards?.Invoke();
    }
}
