using System.Diagnostics;
using SunLessons.Jupyter.Client;

namespace SunLessons.Kernel.Tests;

/// <summary>Cells that would hold or bring down a kernel: what the learner sees, and that the next cell runs.</summary>
public sealed class HostileCellTests(RunningKernel kernel) : IClassFixture<RunningKernel>
{
    [Theory]
    [InlineData("loop", "while (true) { }")]
    [InlineData("sleep", "System.Threading.Thread.Sleep(600000);")]
    [InlineData("wait", "await Task.Delay(600000);")]
    [InlineData("lock", "var gate = new System.Threading.SemaphoreSlim(0); gate.Wait();")]
    [InlineData("event", "new System.Threading.ManualResetEvent(false).WaitOne();")]
    [InlineData("parallel", "Parallel.For(0, 1000000, i => { while (true) { } });")]
    [InlineData("threads", "var all = Enumerable.Range(0, 50).Select(i => Task.Run(() => { while (true) { } })).ToArray(); await Task.WhenAll(all);")]
    public async Task What_runs_for_ever_is_stopped_and_the_next_cell_runs(string name, string code)
    {
        var ran = await StoppedAsync($"var kept_{name} = 7;\n{code}");
        Assert.Equal("error", ran.Reply.Status);
        Assert.Equal("Stopped as asked. Variables that were set before this moment are kept.", ran.Error!.Value);
        Assert.Equal("7", (await kernel.Client.RunAsync($"kept_{name}")).Result);
    }

    [Fact]
    public async Task A_cell_of_a_Spanish_lesson_is_stopped_in_Spanish()
    {
        await kernel.Client.RunAsync("Language(\"es\");");
        var ran = await StoppedAsync("while (true) { }");
        await kernel.Client.RunAsync("Language(\"en\");");
        Assert.Equal("Parada, como pediste. Las variables que se fijaron antes de este momento se conservan.", ran.Error!.Value);
    }

    /// <summary>Runs a cell and interrupts it after its first output.</summary>
    private async Task<Ran> StoppedAsync(string code)
    {
        var begun = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
        var outputs = new List<KernelOutput>();
        var run = kernel.Client.ExecuteAsync("Console.WriteLine(\"begun\");\n" + code, onOutput: o => { outputs.Add(o); begun.TrySetResult(); });
        await begun.Task.WaitAsync(TimeSpan.FromSeconds(30));
        await kernel.Client.InterruptAsync().WaitAsync(TimeSpan.FromSeconds(10));
        return new Ran(await run.WaitAsync(TimeSpan.FromSeconds(10)), outputs);
    }

    [Fact]
    public async Task An_error_in_a_thread_that_a_cell_started_is_told_and_costs_nothing()
    {
        var ran = await kernel.Client.RunAsync(
            "var before = 3;\nvar t = new System.Threading.Thread(() => throw new TimeoutException(\"too late\"));\nt.Start(); t.Join(); await Task.Delay(200);");
        Assert.Equal("ok", ran.Reply.Status);
        Assert.Equal(
            $"Something that a cell started ended in an error: TimeoutException: too late at cell {ran.Reply.ExecutionCount}, line 2: var t = new System.Threading.Thread(() => throw new TimeoutException(\"too late\"));\n",
            ran.Stderr);
        Assert.Equal("3", (await kernel.Client.RunAsync("before")).Result);
    }

    [Fact]
    public async Task A_stop_of_threads_that_a_cell_started_is_no_error()
    {
        var ran = await StoppedAsync("foreach (var i in new[] { 1, 2 }) new System.Threading.Thread(() => { if (i == 1) { while (true) { } } else { System.Threading.Thread.Sleep(600000); } }).Start();\nwhile (true) { }");
        Assert.Equal("", ran.Stderr);
        Assert.Equal("2", (await kernel.Client.RunAsync("1+1")).Result);
    }

    [Fact]
    public async Task A_cell_that_fills_the_memory_is_stopped_by_itself_and_says_why()
    {
        var ran = await kernel.Client.RunAsync("var before = 3; var much = new List<byte[]>(); while (true) { var b = new byte[1000000]; Array.Fill(b, (byte)1); much.Add(b); }");
        Assert.Equal("Stopped", ran.Error!.Name);
        Assert.Matches("^The cell used more than [0-9]+ MB of memory, so it was stopped", ran.Error.Value);
        Assert.Equal("3", (await kernel.Client.RunAsync("much = null; before")).Result);
    }

    [Fact]
    public async Task A_cell_that_calls_itself_without_end_says_so()
    {
        var ran = await kernel.Client.RunAsync("int Down(int n) => Down(n + 1) + 1;\nDown(0)");
        Assert.Equal("InsufficientExecutionStackException", ran.Error!.Name);
        Assert.Equal("The cell called itself too often: the stack was nearly full. Look for a method that calls itself without an end.", ran.Error.Value);
        Assert.Equal("2", (await kernel.Client.RunAsync("1+1")).Result);
    }

    [Fact]
    public async Task A_million_lines_are_cut_and_the_next_cell_runs()
    {
        var ran = await kernel.Client.RunAsync("for (var i = 0; i < 1_000_000; i++) Console.WriteLine(i);");
        Assert.Equal("ok", ran.Reply.Status);
        Assert.StartsWith("0\n1\n2\n", ran.Stdout);
        Assert.Equal(1_000_000, ran.Stdout.Length);
        Assert.Equal("\nThis cell wrote more than 1,000,000 characters; the rest is left out. Print fewer lines, or a summary.\n", ran.Stderr);
        Assert.Equal("2", (await kernel.Client.RunAsync("1+1")).Result);
    }

    [Fact]
    public async Task A_cell_that_waits_outside_C_sharp_costs_the_process_and_says_so()
    {
        await using var lost = await Kernels.StartAsync();
        var begun = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
        var died = new TaskCompletionSource<string>(TaskCreationOptions.RunContinuationsAsynchronously);
        var outputs = new List<KernelOutput>();
        lost.Client.Died += died.SetResult;
        var run = lost.Client.ExecuteAsync(
            $"[System.Runtime.InteropServices.DllImport(\"{(OperatingSystem.IsWindows() ? "kernel32" : "libc")}\", EntryPoint = \"{(OperatingSystem.IsWindows() ? "Sleep" : "sleep")}\")] static extern int Sleep(int time);\n"
            + "Console.WriteLine(\"begun\"); Sleep(600000);",
            onOutput: o => { outputs.Add(o); begun.TrySetResult(); });
        await begun.Task.WaitAsync(TimeSpan.FromSeconds(30));
        var clock = Stopwatch.StartNew();
        await lost.Client.InterruptAsync();
        Assert.Equal("error", (await run.WaitAsync(TimeSpan.FromSeconds(10))).Status);
        Assert.Equal(
            "The cell waits where it could not be stopped, so the kernel was ended and its variables are gone. Run the cells from the top; leave out what waits.",
            outputs.OfType<ErrorOutput>().Single().Value);
        Assert.Equal("The cell waited where it could not be stopped, so the kernel was ended; its variables are gone.", await died.Task.WaitAsync(TimeSpan.FromSeconds(10)));
        // The promise is 3 s; it is a limit on a wait of 2 s that the kernel itself keeps, not on the speed of this machine.
        Assert.True(clock.Elapsed < TimeSpan.FromSeconds(6), $"{clock.Elapsed}");
    }

    [Fact]
    public async Task An_interrupt_frees_a_cell_that_waits_for_input()
    {
        await using var other = await Kernels.StartAsync();
        var asked = new TaskCompletionSource<string>(TaskCreationOptions.RunContinuationsAsynchronously);
        other.Client.InputRequested = (prompt, _) =>
        {
            asked.TrySetResult(prompt);
            return new TaskCompletionSource<string?>().Task;
        };
        var run = other.Client.RunAsync("Console.Write(\"Reading? \"); var r = Console.ReadLine();");
        Assert.Equal("Reading? ", await asked.Task.WaitAsync(TimeSpan.FromSeconds(30)));
        await other.Client.InterruptAsync();
        Assert.Equal("Stopped", (await run).Error!.Name);
        other.Client.InputRequested = (_, _) => Task.FromResult<string?>("10:20");
        Assert.Equal("10:20!", (await other.Client.RunAsync("Console.ReadLine() + \"!\"")).Result);
    }
}
