using System.Text.Json.Nodes;
using SunLessons.Jupyter;
using SunLessons.Jupyter.Messages;
using SunLessons.Jupyter.Server;
using SunLessons.Jupyter.Tests;
using SunLessons.Kernel.Engine;
using SunLessons.Kernel.Session;

namespace SunLessons.Kernel.Tests;

/// <summary>Every type of message that the protocol knows, counted: one reply a request, one busy and idle a message.</summary>
public sealed class SessionTests : IDisposable
{
    private readonly MemoryTransport _transport = new("key");
    private readonly KernelServer _server;
    private readonly KernelSession _session;
    private readonly FakeEngine _engine = new();

    public SessionTests()
    {
        _server = new KernelServer(_transport, "key", _ => { });
        // The console stays the tests' own: these cells write nothing.
        _session = new KernelSession(_server, _engine, _ => { }) { TakesConsole = false };
        _server.Start();
    }

    public void Dispose()
    {
        _session.Dispose();
        _server.Dispose();
    }

    [Theory]
    [InlineData("kernel_info_request", "{}", 1, "ok")]
    [InlineData("connect_request", "{}", 1, "error")]
    [InlineData("execute_request", """{"code":"1"}""", 1, "ok")]
    [InlineData("execute_request", """{"code":"1","silent":true}""", 1, "ok")]
    [InlineData("execute_request", """{"code":"1","user_expressions":{"a":"1","b":"throw"}}""", 1, "ok")]
    [InlineData("execute_request", """{"code":"throw"}""", 1, "error")]
    [InlineData("execute_request", """{"code":"wrong"}""", 1, "error")]
    [InlineData("execute_request", """{"code":"crash"}""", 1, "error")]
    [InlineData("execute_request", """{"code":"<p>{{ crash }}</p>"}""", 1, "error")]
    [InlineData("execute_request", """{"code":5}""", 1, "ok")]
    [InlineData("execute_request", "{}", 1, "ok")]
    [InlineData("complete_request", """{"code":"a","cursor_pos":1}""", 1, "ok")]
    [InlineData("complete_request", """{"code":"crash","cursor_pos":1}""", 1, "error")]
    [InlineData("complete_request", """{"code":"a","cursor_pos":-5}""", 1, "ok")]
    [InlineData("inspect_request", """{"code":"a","cursor_pos":1}""", 1, "ok")]
    [InlineData("inspect_request", """{"code":"crash","cursor_pos":1}""", 1, "error")]
    [InlineData("sunlessons_diagnose_request", """{"code":"a"}""", 1, "ok")]
    [InlineData("is_complete_request", """{"code":"1"}""", 1, "complete")]
    [InlineData("is_complete_request", "{}", 1, "complete")]
    [InlineData("history_request", """{"hist_access_type":"tail","n":5}""", 1, "ok")]
    [InlineData("history_request", """{"hist_access_type":"search","pattern":"[","n":5}""", 1, "ok")]
    [InlineData("history_request", """{"hist_access_type":"range","session":0,"start":1,"stop":null}""", 1, "ok")]
    [InlineData("comm_info_request", "{}", 1, "ok")]
    [InlineData("comm_open", """{"comm_id":"c","target_name":"nobody","data":{}}""", 0, "")]
    [InlineData("comm_open", """{"comm_id":"c","target_name":"sunlessons.page","data":{"place":{"name":"x","latitude_degrees":99,"longitude_degrees":0,"zone":"UTC"}}}""", 0, "")]
    [InlineData("comm_msg", """{"comm_id":"c","data":{}}""", 0, "")]
    [InlineData("comm_close", """{"comm_id":"c","data":{}}""", 0, "")]
    [InlineData("interrupt_request", "{}", 1, "ok")]
    [InlineData("debug_request", """{"command":"initialize"}""", 1, "error")]
    [InlineData("create_subshell_request", "{}", 1, "error")]
    [InlineData("unheard_of_request", "{}", 1, "error")]
    [InlineData("unheard_of", "{}", 0, "")]
    [InlineData("execute_reply", "{}", 0, "")]
    [InlineData("shutdown_request", """{"restart":false}""", 1, "ok")]
    public async Task Each_message_is_answered_once(string type, string content, int replies, string status)
    {
        var channel = type is "interrupt_request" or "shutdown_request" or "debug_request" ? KernelChannel.Control : KernelChannel.Shell;
        var caused = await _transport.ServedAsync(_transport.Receive(channel, type, (JsonObject)JsonNode.Parse(content)!));
        var answers = caused.Where(c => c.Channel != KernelChannel.IoPub).ToArray();
        Assert.Equal(replies, answers.Length);
        if (replies == 1)
        {
            Assert.Equal(channel, answers[0].Channel);
            Assert.Equal(type.Replace("_request", "_reply", StringComparison.Ordinal), answers[0].Message.Type);
            Assert.Equal(status, answers[0].Message.Content.Text("status"));
        }

        Assert.Equal(["busy", "idle"], caused.Where(c => c.Message.Type == "status").Select(c => c.Message.Content.Text("execution_state")));
        Assert.Equal(("status", "status"), (caused[0].Message.Type, caused[^1].Message.Type));
    }

    [Fact]
    public async Task A_silent_run_shows_nothing_and_counts_nothing()
    {
        var before = await ExecuteAsync(new JsonObject { ["code"] = "1" });
        var silent = await ExecuteAsync(new JsonObject { ["code"] = "1", ["silent"] = true });
        var after = await ExecuteAsync(new JsonObject { ["code"] = "1" });
        Assert.Equal(["execute_input", "execute_result"], before.Outputs);
        Assert.Empty(silent.Outputs);
        Assert.Equal((1, 1, 2), (before.Reply.Integer("execution_count"), silent.Reply.Integer("execution_count"), after.Reply.Integer("execution_count")));
    }

    [Fact]
    public async Task A_run_that_is_not_stored_is_not_in_the_history()
    {
        await ExecuteAsync(new JsonObject { ["code"] = "1", ["store_history"] = false });
        await ExecuteAsync(new JsonObject { ["code"] = "2" });
        var caused = await _transport.ServedAsync(_transport.Receive(KernelChannel.Shell, "history_request", new JsonObject { ["hist_access_type"] = "tail", ["n"] = 9, ["output"] = true }));
        Assert.Equal("[[1,1,[\"2\",\"2\"]]]", caused.Single(c => c.Message.Type == "history_reply").Message.Content["history"]!.ToJsonString());
    }

    [Fact]
    public async Task User_expressions_are_evaluated_one_by_one()
    {
        var run = await ExecuteAsync(new JsonObject { ["code"] = "1", ["user_expressions"] = new JsonObject { ["good"] = "2", ["bad"] = "throw" } });
        var answers = run.Reply.Object("user_expressions");
        Assert.Equal("2", answers.Object("good").Object("data").Text("text/plain"));
        Assert.Equal(("error", "TimeoutException"), (answers.Object("bad").Text("status"), answers.Object("bad").Text("ename")));
    }

    private async Task<(JsonObject Reply, string[] Outputs)> ExecuteAsync(JsonObject content)
    {
        var caused = await _transport.ServedAsync(_transport.Receive(KernelChannel.Shell, "execute_request", content));
        return (
            caused.Single(c => c.Channel == KernelChannel.Shell).Message.Content,
            [.. caused.Where(c => c.Channel == KernelChannel.IoPub && c.Message.Type != "status").Select(c => c.Message.Type)]);
    }

    /// <summary>An engine that does at once what the code's word says.</summary>
    private sealed class FakeEngine : IScriptEngine
    {
        public string Name => "fake";

        public Task WarmUpAsync() => Task.CompletedTask;

        public Task<CellResult> RunAsync(string code, int number) => Task.FromResult<CellResult>(code switch
        {
            "throw" => new CellThrew(new TimeoutException("on purpose")),
            "wrong" => new CellNotCompiled([new CellDiagnostic("error", "CS1", "wrong", 1, 1, 1, 2)]),
            _ when code.Contains("crash", StringComparison.Ordinal) => throw new InvalidOperationException("the engine failed"),
            _ => new CellFinished(true, code),
        });

        public void Stop()
        {
        }

        public (Completeness State, string Indent) IsComplete(string code) => (Completeness.Complete, "");

        public CompletionList Complete(string code, int cursor) =>
            code == "crash" ? throw new InvalidOperationException("the engine failed") : new([new("abc", "name")], 0, code.Length);

        public Inspection? Inspect(string code, int cursor) => code == "crash" ? throw new InvalidOperationException("the engine failed") : null;

        public IReadOnlyList<CellDiagnostic> Diagnose(string code) => [];

        public ValueTask DisposeAsync() => ValueTask.CompletedTask;
    }
}
