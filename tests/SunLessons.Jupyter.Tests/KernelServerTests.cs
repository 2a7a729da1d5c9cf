using System.Text.Json.Nodes;
using SunLessons.Jupyter.Messages;
using SunLessons.Jupyter.Server;

namespace SunLessons.Jupyter.Tests;

/// <summary>The server's two promises, whatever a handler does.</summary>
public sealed class KernelServerTests : IDisposable
{
    private const string Key = "key";
    private readonly MemoryTransport _transport = new(Key);
    private readonly List<string> _log = [];
    private readonly KernelServer _server;

    public KernelServerTests() => _server = new KernelServer(_transport, Key, line => { lock (_log) { _log.Add(line); } });

    public void Dispose() => _server.Dispose();

    [Theory]
    [InlineData("returns_request", 1, "ok")]
    [InlineData("replies_itself_request", 1, "ok")]
    [InlineData("replies_twice_request", 1, "ok")]
    [InlineData("replies_then_throws_request", 1, "ok")]
    [InlineData("throws_request", 1, "error")]
    [InlineData("throws_later_request", 1, "error")]
    [InlineData("says_nothing_request", 1, "error")]
    [InlineData("nobody_knows_request", 1, "error")]
    [InlineData("nobody_knows_msg", 0, "")]
    [InlineData("throws_msg", 0, "")]
    [InlineData("returns_msg", 0, "")]
    [InlineData("", 0, "")]
    public async Task Exactly_one_reply_a_request_and_one_busy_and_idle_a_message(string type, int replies, string status)
    {
        foreach (var lane in Enum.GetValues<Lane>())
        {
            _server.Handle("returns_request", lane, _ => Task.FromResult<JsonObject?>([]));
            _server.Handle("replies_itself_request", lane, r => { r.Reply([]); return Task.FromResult<JsonObject?>(null); });
            _server.Handle("replies_twice_request", lane, r => { r.Reply([]); return Task.FromResult<JsonObject?>([]); });
            _server.Handle("replies_then_throws_request", lane, r => { r.Reply([]); throw new InvalidOperationException("afterwards"); });
            _server.Handle("throws_request", lane, _ => throw new InvalidOperationException("on purpose"));
            _server.Handle("throws_later_request", lane, async _ => { await Task.Yield(); throw new InvalidOperationException("on purpose"); });
            _server.Handle("says_nothing_request", lane, _ => Task.FromResult<JsonObject?>(null));
            _server.Handle("throws_msg", lane, _ => throw new InvalidOperationException("on purpose"));
            _server.Handle("returns_msg", lane, _ => Task.FromResult<JsonObject?>([]));
        }

        _server.Start();
        foreach (var channel in new[] { KernelChannel.Shell, KernelChannel.Control })
        {
            var caused = await _transport.ServedAsync(_transport.Receive(channel, type));
            var answered = caused.Where(c => c.Channel == channel).ToArray();
            Assert.Equal(replies, answered.Length);
            if (replies == 1)
            {
                Assert.Equal(type.Replace("_request", "_reply", StringComparison.Ordinal), answered[0].Message.Type);
                Assert.Equal(status, answered[0].Message.Content.Text("status"));
            }

            Assert.Equal(
                ["busy", "idle"],
                caused.Where(c => c.Message.Type == "status").Select(c => c.Message.Content.Text("execution_state")));
            Assert.Equal("status", caused[0].Message.Type);
            Assert.Equal("status", caused[^1].Message.Type);
        }
    }

    [Fact]
    public async Task A_flipped_byte_is_logged_and_gets_no_answer()
    {
        _server.Handle("returns_request", Lane.Immediate, _ => Task.FromResult<JsonObject?>([]));
        _server.Start();
        var spoiled = _transport.Receive(KernelChannel.Shell, "returns_request", spoil: frames => frames[^1][0] ^= 1);
        await _transport.ServedAsync(_transport.Receive(KernelChannel.Shell, "returns_request"));
        Assert.Empty(_transport.Caused(spoiled));
        Assert.Equal("A message with a wrong signature was dropped: its key is not the one of this kernel's connection file.", Assert.Single(_log));
        Assert.Equal(1, _server.Accepted);
    }

    [Fact]
    public async Task A_message_is_served_once_even_when_it_is_sent_again()
    {
        var served = 0;
        _server.Handle("returns_request", Lane.Immediate, _ => { served++; return Task.FromResult<JsonObject?>([]); });
        _server.Start();
        List<byte[]> copy = [];
        var id = _transport.Receive(KernelChannel.Shell, "returns_request", spoil: frames => copy = [.. frames]);
        await _transport.ServedAsync(id);
        _transport.Receive(KernelChannel.Shell, copy);
        await _transport.ServedAsync(_transport.Receive(KernelChannel.Shell, "returns_request"));
        Assert.Equal(2, served);
        Assert.Equal("A message that had been served before was dropped.", Assert.Single(_log));
    }

    [Fact]
    public async Task After_an_error_only_what_waited_then_is_aborted()
    {
        var go = new TaskCompletionSource();
        var runs = new List<string>();
        _server.Handle("execute_request", Lane.Ordered, async request =>
        {
            runs.Add(request.Content.Text("code"));
            if (request.Content.Text("code") == "fails")
            {
                await go.Task;
                request.AbortWaiting();
                return new JsonObject { ["status"] = "error" };
            }

            return [];
        });
        _server.Start();
        _transport.Receive(KernelChannel.Shell, "execute_request", new JsonObject { ["code"] = "fails" });
        var waiting = _transport.Receive(KernelChannel.Shell, "execute_request", new JsonObject { ["code"] = "waits" });
        go.SetResult();
        var aborted = await _transport.ServedAsync(waiting);
        var later = await _transport.ServedAsync(_transport.Receive(KernelChannel.Shell, "execute_request", new JsonObject { ["code"] = "later" }));
        Assert.Equal("aborted", aborted.Single(c => c.Message.Type == "execute_reply").Message.Content.Text("status"));
        Assert.Equal("ok", later.Single(c => c.Message.Type == "execute_reply").Message.Content.Text("status"));
        Assert.Equal(["fails", "later"], runs);
    }

    [Fact]
    public async Task Language_questions_and_the_control_channel_do_not_wait_for_a_cell()
    {
        var go = new TaskCompletionSource();
        _server.Handle("execute_request", Lane.Ordered, async _ => { await go.Task; return []; });
        _server.Handle("complete_request", Lane.Language, _ => Task.FromResult<JsonObject?>([]));
        _server.Handle("interrupt_request", Lane.Immediate, _ => { go.TrySetResult(); return Task.FromResult<JsonObject?>([]); });
        _server.Start();
        var cell = _transport.Receive(KernelChannel.Shell, "execute_request");
        await _transport.ServedAsync(_transport.Receive(KernelChannel.Shell, "complete_request"));
        Assert.DoesNotContain(_transport.Caused(cell), c => c.Message.Type == "execute_reply");
        await _transport.ServedAsync(_transport.Receive(KernelChannel.Control, "interrupt_request"));
        await _transport.ServedAsync(cell);
    }

    [Fact]
    public async Task A_question_goes_to_the_client_that_asked_and_its_answer_comes_back()
    {
        _server.Handle("execute_request", Lane.Ordered, async request =>
            new JsonObject { ["answer"] = await request.AskAsync("Reading? ", false, CancellationToken.None) });
        _server.Start();
        var cell = _transport.Receive(KernelChannel.Shell, "execute_request");
        (KernelChannel Channel, KernelMessage Message) question = default;
        for (var tries = 0; tries < 500 && question.Message is null; tries++)
        {
            question = _transport.Caused(cell).FirstOrDefault(c => c.Channel == KernelChannel.Stdin);
            await Task.Delay(10);
        }

        Assert.Equal("Reading? ", question.Message!.Content.Text("prompt"));
        Assert.Equal("client", System.Text.Encoding.UTF8.GetString(question.Message.Identities[0]));
        _transport.Receive(KernelChannel.Stdin, "input_reply", new JsonObject { ["value"] = "10:20" }, parent: question.Message.Header);
        var caused = await _transport.ServedAsync(cell);
        Assert.Equal("10:20", caused.Single(c => c.Message.Type == "execute_reply").Message.Content.Text("answer"));
    }
}
