using System.Text.Json.Nodes;
using SunLessons.Jupyter.Client;

namespace SunLessons.Kernel.Tests;

/// <summary>What a learner's cell gives, through a real process and the real protocol.</summary>
public sealed class CellTests(RunningKernel kernel) : IClassFixture<RunningKernel>
{
    [Fact]
    public async Task A_cell_shows_the_value_of_its_last_expression()
    {
        var ran = await kernel.Client.RunAsync("1+1");
        Assert.Equal("ok", ran.Reply.Status);
        Assert.Equal("2", ran.Result);
        Assert.NotNull(ran.Reply.ExecutionCount);
    }

    [Fact]
    public async Task Variables_live_on_and_the_library_needs_no_import()
    {
        await kernel.Client.RunAsync("var here = GeoPoint.FromDegrees(42.24, -8.72); var noon = new LocalTime(12, 0);");
        var ran = await kernel.Client.RunAsync("Math.Round(here.Longitude.Degrees, 2)");
        Assert.Equal("-8.72", ran.Result);
        Assert.Equal("12:00:00", (await kernel.Client.RunAsync("noon.ToString(\"HH:mm:ss\", null)")).Result);
    }

    [Fact]
    public async Task Standard_output_and_error_keep_their_order()
    {
        var ran = await kernel.Client.RunAsync("Console.Write(\"a\"); Console.Error.Write(\"b\"); Console.WriteLine(\"c\"); Console.Error.WriteLine(\"d\"); 7");
        Assert.Equal(
            ["stdout:a", "stderr:b", "stdout:c\n", "stderr:d\n", "result"],
            ran.Outputs.Select(o => o is StreamOutput s ? $"{s.Name}:{s.Text}" : o is ResultOutput ? "result" : "other"));
    }

    [Fact]
    public async Task Output_arrives_while_the_cell_still_runs()
    {
        var first = new TaskCompletionSource<string>(TaskCreationOptions.RunContinuationsAsynchronously);
        var run = kernel.Client.ExecuteAsync(
            "Console.WriteLine(\"early\"); await Task.Delay(2000); 0",
            onOutput: o => { if (o is StreamOutput s) { first.TrySetResult(s.Text); } });
        Assert.Equal("early\n", await first.Task.WaitAsync(TimeSpan.FromSeconds(10)));
        Assert.False(run.IsCompleted);
        Assert.True((await run).Succeeded);
    }

    [Fact]
    public async Task Output_of_a_task_belongs_to_the_cell_that_started_it()
    {
        var ran = await kernel.Client.RunAsync("await Task.Run(() => Console.WriteLine(\"from a task\")); var t = new System.Threading.Thread(() => Console.WriteLine(\"from a thread\")); t.Start(); t.Join();");
        Assert.Equal("from a task\nfrom a thread\n", ran.Stdout);
    }

    [Fact]
    public async Task An_exception_names_its_type_and_the_learners_line_and_nothing_else()
    {
        var first = await kernel.Client.RunAsync("int Half(int n)\n{\n    if (n % 2 != 0) throw new ArgumentException(\"odd: \" + n);\n    return n / 2;\n}");
        var ran = await kernel.Client.RunAsync("var a = Half(4);\nvar b = Half(7);\nb");
        Assert.Equal("error", ran.Reply.Status);
        Assert.Equal("ArgumentException", ran.Error!.Name);
        Assert.Equal("odd: 7", ran.Error.Value);
        Assert.Equal(
            [
                "ArgumentException: odd: 7",
                $"    at cell {first.Reply.ExecutionCount}, line 3: if (n % 2 != 0) throw new ArgumentException(\"odd: \" + n);",
                $"    at cell {ran.Reply.ExecutionCount}, line 2: var b = Half(7);",
            ],
            ran.Error.Traceback);
    }

    [Fact]
    public async Task What_does_not_compile_is_shown_with_its_line_and_a_mark_below_it()
    {
        var ran = await kernel.Client.RunAsync("for (var i = 0; i < 3; i++) { }\nvar y = nowhere + 1;");
        Assert.Equal("CompilationError", ran.Error!.Name);
        Assert.Equal(
            [
                "line 2, column 9: The name 'nowhere' does not exist in the current context (CS0103)",
                "    var y = nowhere + 1;",
                "            ^^^^^^^",
            ],
            ran.Error.Traceback);
    }

    [Fact]
    public async Task Html_with_values_in_it()
    {
        await kernel.Client.RunAsync("var shift = 34.9; var town = \"<Vigo>\";");
        var ran = await kernel.Client.RunAsync("  <p>At {{ town }} the Sun is {{ shift + 60 }} min late.</p>");
        var shown = Assert.IsType<DisplayOutput>(Assert.Single(ran.Outputs));
        Assert.Equal("  <p>At &lt;Vigo&gt; the Sun is 94.9 min late.</p>", shown.Data["text/html"]!.GetValue<string>());
        Assert.Equal("At <Vigo> the Sun is 94.9 min late.", shown.Data["text/plain"]!.GetValue<string>());
    }

    [Fact]
    public async Task Svg_is_shown_as_a_picture()
    {
        var ran = await kernel.Client.RunAsync("<svg xmlns=\"http://www.w3.org/2000/svg\"><text>noon</text></svg>");
        var shown = Assert.IsType<DisplayOutput>(Assert.Single(ran.Outputs));
        Assert.StartsWith("<svg", shown.Data["image/svg+xml"]!.GetValue<string>());
        Assert.Equal("noon", shown.Data["text/plain"]!.GetValue<string>());
    }

    [Fact]
    public async Task A_wrong_expression_in_markup_is_named()
    {
        var ran = await kernel.Client.RunAsync("<p>{{ 1 + 1 }} and {{ nobody }}</p>");
        Assert.Equal("line 2, column 1: in {{ nobody }}: The name 'nobody' does not exist in the current context", ran.Error!.Value);
    }

    [Fact]
    public async Task Completion_gives_what_matches_and_counts_code_points()
    {
        // The sun sign lies beyond U+FFFF: two UTF-16 units, one code point.
        var code = "\"\U0001F31E\" + Console.Wri";
        var reply = await kernel.Client.CompleteAsync(code, code.Length - 1);
        Assert.Equal(["Write", "WriteLine"], reply.Matches);
        Assert.Equal((code.Length - 1 - 3, code.Length - 1), (reply.CursorStart, reply.CursorEnd));
    }

    [Fact]
    public async Task Inspection_tells_declaration_and_documentation()
    {
        var reply = await kernel.Client.InspectAsync("GeoPoint", 8);
        Assert.True(reply.Found);
        Assert.Contains("GeoPoint", reply.Data["text/plain"]!.GetValue<string>());
        Assert.Contains("\n\n", reply.Data["text/plain"]!.GetValue<string>());
    }

    [Fact]
    public async Task Diagnostics_come_without_running_anything()
    {
        var remarks = await kernel.Client.DiagnoseAsync("var neverRun = 5;\nundefined();");
        var remark = Assert.Single(remarks);
        Assert.Equal(("error", "CS0103", 2, 1, 2, 10), (remark.Severity, remark.Id, remark.StartLine, remark.StartColumn, remark.EndLine, remark.EndColumn));
        Assert.NotNull((await kernel.Client.RunAsync("neverRun")).Error);
    }

    [Fact]
    public async Task An_endless_loop_stops_and_its_variables_stay()
    {
        var started = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
        var outputs = new List<KernelOutput>();
        var run = kernel.Client.ExecuteAsync(
            "var kept = 41;\nConsole.WriteLine(\"on\");\nwhile (true) { kept = 42; }",
            onOutput: o => { outputs.Add(o); started.TrySetResult(); });
        await started.Task.WaitAsync(TimeSpan.FromSeconds(20));
        await kernel.Client.InterruptAsync();
        Assert.Equal("error", (await run.WaitAsync(TimeSpan.FromSeconds(10))).Status);
        Assert.Equal("Stopped", outputs.OfType<ErrorOutput>().Single().Name);
        Assert.Equal("42", (await kernel.Client.RunAsync("kept")).Result);
    }

    [Fact]
    public async Task Reading_a_line_without_a_page_that_can_ask_is_a_plain_error()
    {
        var ran = await kernel.Client.RunAsync("Console.ReadLine()");
        Assert.Equal("This cell asks for input, but the page that runs it cannot ask you. Put the value into a variable instead.", ran.Error!.Value);
    }

    [Fact]
    public async Task The_page_may_open_its_comm_and_it_is_listed()
    {
        var comm = kernel.Client.OpenComm("sunlessons.page", new JsonObject { ["draws_figures"] = true });
        var info = await kernel.Client.RequestAsync("comm_info_request", new JsonObject { ["target_name"] = "sunlessons.page" });
        // Both travel on one channel, but the table is read at once while the opening waits for the cells before it.
        for (var tries = 0; tries < 50 && info["comms"]![comm.Id] is null; tries++)
        {
            await Task.Delay(20);
            info = await kernel.Client.RequestAsync("comm_info_request", new JsonObject { ["target_name"] = "sunlessons.page" });
        }

        Assert.NotNull(info["comms"]![comm.Id]);
        comm.Close();
    }

    [Fact]
    public async Task A_comm_for_an_unknown_target_is_closed_again()
    {
        var closed = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
        var comm = kernel.Client.OpenComm("nobody.knows", []);
        comm.Closed += closed.SetResult;
        await closed.Task.WaitAsync(TimeSpan.FromSeconds(10));
    }
}
