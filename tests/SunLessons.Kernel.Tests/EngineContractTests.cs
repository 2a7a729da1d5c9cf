using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using SunLessons.Kernel.Engine;

namespace SunLessons.Kernel.Tests;

/// <summary>Engines run in this process, and their cells fill its thread pool on purpose: nothing else may run beside them.</summary>
[CollectionDefinition("engine", DisableParallelization = true)]
public sealed class EngineCollection;

/// <summary>What the kernel relies on, whatever engine runs the cells. Engines share the flag that stops a cell, so only one runs at a time.</summary>
[Collection("engine")]
public abstract class EngineContractTests : IAsyncLifetime
{
    // One engine for the tests of a class: getting one ready takes over a second. Cells may say a name again, so tests do not meet.
    private static readonly Dictionary<Type, IScriptEngine> Shared = [];
    private IScriptEngine _engine = null!;

    internal abstract IScriptEngine Create();

    public async ValueTask InitializeAsync()
    {
        if (!Shared.TryGetValue(GetType(), out var engine))
        {
            Shared[GetType()] = engine = Create();
        }

        _engine = engine;
        await _engine.WarmUpAsync();
    }

    public ValueTask DisposeAsync() => ValueTask.CompletedTask;

    [Theory]
    [InlineData("1+1", 2)]
    [InlineData("var x = 20; x * 2 + 2", 42)]
    [InlineData("await Task.FromResult(5)", 5)]
    [InlineData("Enumerable.Range(1, 4).Where(i => i % 2 == 0).Sum()", 6)]
    public async Task A_cell_gives_its_last_expression(string code, int value) =>
        Assert.Equal(new CellFinished(true, value), await _engine.RunAsync(code, 1));

    [Fact]
    public async Task A_cell_that_ends_in_a_statement_gives_nothing() =>
        Assert.Equal(new CellFinished(false, null), await _engine.RunAsync("var x = 1;", 1));

    [Theory]
    [InlineData("")]
    [InlineData("// nothing but words")]
    [InlineData("using System.Globalization;")]
    [InlineData("#r \"System.Net.Http\"")]
    public async Task A_cell_without_a_statement_gives_nothing(string code)
    {
        Assert.Equal(new CellFinished(false, null), await _engine.RunAsync(code, 1));
        Assert.Equal(new CellFinished(true, 2), await _engine.RunAsync("1+1", 2));
    }

    [Fact]
    public async Task A_cell_may_return_a_value() =>
        Assert.Equal(new CellFinished(true, 4), await _engine.RunAsync("if (2 > 1) { return 4; }\nreturn 5;", 1));

    [Fact]
    public async Task A_call_that_gives_nothing_is_no_value() =>
        Assert.Equal(new CellFinished(false, null), await _engine.RunAsync("void Say() { }\nSay()", 1));

    [Fact]
    public async Task Imports_and_variables_live_on_over_many_cells()
    {
        await _engine.RunAsync("using System.Globalization; var first = 5;", 1);
        for (var i = 2; i < 90; i++)
        {
            Assert.IsType<CellFinished>(await _engine.RunAsync($"var v{i} = first + {i};", i));
        }

        Assert.Equal(new CellFinished(true, "5 7 94"), await _engine.RunAsync("string.Create(CultureInfo.InvariantCulture, $\"{first} {v2} {v89}\")", 90));
    }

    [Fact]
    public async Task What_a_cell_begins_after_a_stop_is_left_alone()
    {
        await _engine.RunAsync("1+1", 1);
        // The stop looks for strays for a fifth of a second; the cell is over long before.
        _engine.Stop();
        await _engine.RunAsync("using System.Threading; var end = \"none\"; var work = Task.Run(() => { try { Thread.Sleep(400); end = \"its own\"; } catch (ThreadInterruptedException) { end = \"stopped\"; } });", 2);
        await Task.Delay(300);
        Assert.Equal(new CellFinished(true, "its own"), await _engine.RunAsync("work.Wait(); return end;", 3));
    }

    [Fact]
    public async Task A_library_built_against_the_standard_of_all_frameworks_shares_the_cells_types()
    {
        // FSharp.Core refers to netstandard, one of the assemblies that only point to others and that cells do without.
        var library = Path.Combine(AppContext.BaseDirectory, "FSharp.Core.dll").Replace("\\", "/", StringComparison.Ordinal);
        Assert.IsType<CellFinished>(await _engine.RunAsync($"#r \"{library}\"", 1));
        Assert.Equal(new CellFinished(true, 12), await _engine.RunAsync("Microsoft.FSharp.Collections.ListModule.OfSeq(new[] { 3, 4, 5 }).Where(hour => hour > 2).Sum()", 2));
        Assert.Equal(new CellFinished(true, 2), await _engine.RunAsync("1+1", 3));
    }

    [Fact]
    public async Task A_cell_may_name_a_library_in_a_file_which_needs_another_beside_it()
    {
        var folder = Directory.CreateTempSubdirectory("sunlessons-libraries-").FullName;
        try
        {
            var inner = Library("InnerScale" + GetType().Name, "public static class Inner { public static int Hours => 12; }");
            var outer = Library("OuterScale" + GetType().Name, "public static class Outer { public static int Hours => 2 * Inner.Hours; }", inner);
            Assert.IsType<CellFinished>(await _engine.RunAsync($"#r \"{outer.Replace("\\", "/", StringComparison.Ordinal)}\"", 1));
            Assert.Equal(new CellFinished(true, 24), await _engine.RunAsync("Outer.Hours", 2));
        }
        finally
        {
            // Loaded files cannot be deleted on Windows; a temporary folder may stay.
            if (!OperatingSystem.IsWindows())
            {
                Directory.Delete(folder, recursive: true);
            }
        }

        string Library(string name, string code, string? reference = null)
        {
            MetadataReference[] references = [MetadataReference.CreateFromFile(typeof(object).Assembly.Location), .. reference is null ? Array.Empty<MetadataReference>() : [MetadataReference.CreateFromFile(reference)]];
            var compilation = CSharpCompilation.Create(name, [CSharpSyntaxTree.ParseText(code)], references, new CSharpCompilationOptions(OutputKind.DynamicallyLinkedLibrary));
            var path = Path.Combine(folder, name + ".dll");
            Assert.Empty(compilation.Emit(path).Diagnostics.Where(d => d.Severity == DiagnosticSeverity.Error));
            return path;
        }
    }

    [Fact]
    public async Task All_errors_of_a_cell_are_told_at_once()
    {
        var refused = Assert.IsType<CellNotCompiled>(await _engine.RunAsync("class Plate : Nowhere { }\nint n = \"noon\";\nnobody();", 1));
        Assert.Equal(["CS0246", "CS0029", "CS0103"], refused.Errors.Select(e => e.Id));
    }

    [Fact]
    public async Task A_first_cell_that_throws_keeps_its_variables()
    {
        await using var fresh = Create();
        Assert.IsType<CellThrew>(await fresh.RunAsync("int keep = 5; throw new InvalidOperationException(\"x\");", 1));
        Assert.Equal(new CellFinished(true, 5), await fresh.RunAsync("keep", 2));
    }

    [Fact]
    public async Task What_does_not_compile_does_not_run_at_all()
    {
        Assert.IsType<CellFinished>(await _engine.RunAsync("var count = 0;", 1));
        var refused = Assert.IsType<CellNotCompiled>(await _engine.RunAsync("count++;\n  wrong();", 2));
        Assert.Equal(("CS0103", 2, 3), (refused.Errors[0].Id, refused.Errors[0].StartLine, refused.Errors[0].StartColumn));
        Assert.Equal(new CellFinished(true, 0), await _engine.RunAsync("count", 3));
    }

    [Theory]
    [InlineData("while (true) { }")]
    [InlineData("while (true) ;")]
    [InlineData("for (;;) mark++;")]
    [InlineData("do { mark++; } while (true);")]
    [InlineData("again: mark++; goto again;")]
    [InlineData("foreach (var i in Forever()) mark = i; IEnumerable<int> Forever() { while (true) yield return 1; }")]
    [InlineData("while (true) { try { mark++; } catch { } }")]
    [InlineData("while (true) { try { throw new Exception(); } catch (Exception) { mark++; } }")]
    [InlineData("Parallel.For(0, int.MaxValue, i => { while (true) { } });")]
    [InlineData("Action loop = () => { while (true) { } }; loop();")]
    [InlineData("Enumerable.Range(0, int.MaxValue).Select(i => i / 2).Where(i => i < 0).Count()")]
    [InlineData("while (true) await Task.Yield();")]
    [InlineData("await Task.Delay(60000);")]
    [InlineData("await Task.Delay(60000).ContinueWith(t => 5);")]
    [InlineData("System.Threading.Thread.Sleep(60000);")]
    [InlineData("System.Threading.Thread.Sleep(TimeSpan.FromMinutes(1));")]
    [InlineData("Task.Delay(60000).Wait();")]
    [InlineData("Task.Delay(60000)\n    .Wait(TimeSpan.FromMinutes(1));")]
    [InlineData("mark = Task.Delay(60000).ContinueWith(t => 5).Result + 1;")]
    [InlineData("Task.Delay(60000).GetAwaiter().GetResult();")]
    [InlineData("Task.WaitAll(Task.Delay(60000));")]
    [InlineData("Task.WaitAny(Task.Delay(60000));")]
    [InlineData("new System.Threading.ManualResetEvent(false).WaitOne();")]
    [InlineData("System.Threading.WaitHandle.WaitAny([new System.Threading.AutoResetEvent(false), new System.Threading.Semaphore(0, 1)]);")]
    [InlineData("new System.Threading.SemaphoreSlim(0).Wait();")]
    [InlineData("new System.Collections.Concurrent.BlockingCollection<int>().Take();")]
    [InlineData("var gate = new object(); var taken = new System.Threading.Thread(() => System.Threading.Monitor.Enter(gate)); taken.Start(); taken.Join(); lock (gate) { mark = 2; }")]
    [InlineData("var gate = new System.Threading.Lock(); var taken = new System.Threading.Thread(() => gate.Enter()); taken.Start(); taken.Join(); lock (gate) { mark = 2; }")]
    [InlineData("var gate = new object(); lock (gate) { System.Threading.Monitor.Wait(gate); }")]
    [InlineData("System.Threading.Thread.CurrentThread.Join();")]
    [InlineData("await Task.Run(() => new System.Threading.ManualResetEventSlim().Wait());")]
    [InlineData("Parallel.For(0, 4, i => new System.Threading.CountdownEvent(1).Wait());")]
    [InlineData("while (true) { try { System.Threading.Thread.Sleep(60000); } catch (Exception) { mark++; } }")]
    [InlineData("var held = new List<byte[]>(); while (true) { System.Threading.Thread.Sleep(1); }")]
    [InlineData("while (true) { await Task.Delay(1); }")]
    [InlineData("await Task.Run(() => { while (true) { } });")]
    [InlineData("int Twice(int n) => n < 2 ? 1 : Twice(n - 1) + Twice(n - 2); mark = Twice(200);")]
    [InlineData("class Tree { public long Grow(int n) => n == 0 ? 1 : Grow(n - 1) + Grow(n - 1); }\nmark = (int)new Tree().Grow(80);")]
    public Task A_cell_without_end_stops_and_keeps_its_variables(string code) => StopsAsync(code);

    private protected async Task StopsAsync(string code)
    {
        await _engine.RunAsync("var mark = 0; var kept = 1;", 1);
        var run = Task.Run(() => _engine.RunAsync("kept = 7;\n" + code, 2));
        // Long enough for the cell to be in its loop: the first turn needs some milliseconds for compiling.
        await Task.Delay(400);
        Assert.False(run.IsCompleted);
        _engine.Stop();
        // 10 s is a guard against hanging; how quick a stop is, the benchmark measures.
        Assert.IsType<CellStopped>(await run.WaitAsync(TimeSpan.FromSeconds(10)));
        Assert.Equal(new CellFinished(true, 7), await _engine.RunAsync("kept", 3));
    }

    [Theory]
    [InlineData("int Down(int n) => Down(n + 1) + 1; Down(0)")]
    [InlineData("int Down(int n) { return Down(n + 1) + 1; } Down(0)")]
    [InlineData("class Loop { public int Deep => Deep + 1; }\nnew Loop().Deep")]
    [InlineData("Func<int, int> f = null; f = n => f(n + 1) + 1; f(0)")]
    [InlineData("class Loop { public int this[int i] => this[i + 1] + 1; public static Loop operator +(Loop a, int b) => a + (b + 1); }\nvar l = new Loop(); var m = l + 1; l[0]")]
    public async Task A_cell_that_calls_itself_without_end_is_an_error_and_not_the_end_of_the_process(string code)
    {
        var threw = Assert.IsType<CellThrew>(await _engine.RunAsync(code, 1));
        Assert.IsType<InsufficientExecutionStackException>(threw.Exception);
        Assert.Equal(new CellFinished(true, 2), await _engine.RunAsync("1+1", 2));
    }

    [Theory]
    [InlineData("System.Linq.Expressions.Expression<Func<int, int>> e = n => n + 1; e.Body.ToString()", "(n + 1)")]
    [InlineData("var q = new[] { 3, 1, 2 }.AsQueryable().Where(n => n > 1); q.Count().ToString()", "2")]
    [InlineData("ref int First(int[] a) => ref a[0]; var b = new[] { 1 }; First(b) = 5; b[0].ToString()", "5")]
    [InlineData("class P { int _v; public int V { get => _v; set => _v = value; } public P(int v) => _v = v; }\nnew P(3).V.ToString()", "3")]
    [InlineData("int Fails() => throw new NotSupportedException(\"no\"); try { Fails(); } catch (NotSupportedException x) { } \"went on\"", "went on")]
    [InlineData("async Task Wait() => await Task.Yield(); await Wait(); \"waited\"", "waited")]
    [InlineData("async Task<int> Wait() => await Task.FromResult(4); (await Wait()).ToString()", "4")]
    [InlineData("Func<Task> w = async () => await Task.Yield(); await w(); \"waited\"", "waited")]
    [InlineData("Func<int, Func<int, int>> add = a => b => a + b; add(2)(3).ToString()", "5")]
    [InlineData("Action<int> no = n => Console.Write(\"\"); no(1); \"ran\"", "ran")]
    [InlineData("record Reading(double Hours) { public double Minutes => Hours * 60; }\nnew Reading(2).Minutes.ToString()", "120")]
    [InlineData("var s = 0; foreach (var (a, b) in new[] { (1, 2) }) s += a + b; s.ToString()", "3")]
    [InlineData("for (var i = 0; i < 2; i++) if (i > 0) break; else continue; \"through\"", "through")]
    [InlineData("delegate int Fn(int x); Fn d = delegate (int x) { return x * 2; }; d(4).ToString()", "8")]
    [InlineData("var w = Task.FromResult(6); w.Wait(); (w.Result + (await w) + await Task.FromResult(1)).ToString()", "13")]
    [InlineData("Task.Run(() => 4).Result.ToString()", "4")]
    [InlineData("await Task.WhenAll(Task.Run(() => 1), Task.Run(() => 2)) is [1, 2] ? \"both\" : \"no\"", "both")]
    [InlineData("new[] { 1, 2 }.Select(n => (object?)null).Count(x => x is null).ToString()", "2")]
    public async Task Checks_change_nothing_that_a_cell_says(string code, string value) =>
        Assert.Equal(new CellFinished(true, value), await _engine.RunAsync(code, 1));

    [Theory]
    [InlineData("Console.Wri", new[] { "Write", "WriteLine" })]
    [InlineData("var town = \"Vigo\"; town.StartsW", new[] { "StartsWith" })]
    [InlineData("earlier.ToStr", new[] { "ToString" })]
    [InlineData("earli", new[] { "earlier" })]
    [InlineData("new[] { 1 }.OrderByD", new[] { "OrderByDescending" })]
    [InlineData("GeoPoint.FromDeg", new[] { "FromDegrees" })]
    [InlineData("System.Globalization.CultureI", new[] { "CultureInfo" })]
    [InlineData("string earliest = \"\"; earli", new[] { "earlier", "earliest" })]
    [InlineData("string earlier = \"\"; earlier.StartsW", new[] { "StartsWith" })]
    [InlineData("new[] { \"a\" }.Select(one => one.StartsW", new[] { "StartsWith" })]
    [InlineData("var all = new[] { \"a\" }.Select(onl => onl", new[] { "onl" })]
    [InlineData("foreach (var lonely in \"a\") { lonel", new[] { "lonely" })]
    [InlineData("(from lonely in \"a\" select lonel", new[] { "lonely" })]
    [InlineData("\"a\".Length is var lonely && lonel", new[] { "lonely" })]
    [InlineData("\"a\"?.StartsW", new[] { "StartsWith" })]
    [InlineData("\"a\"?.Trim().StartsW", new[] { "StartsWith" })]
    [InlineData("DayOfWeek.Mon", new[] { "Monday" })]
    [InlineData("new DateTime(2026, 1, 1).DayOfWeek.CompareT", new[] { "CompareTo" })]
    [InlineData("record Stone(double Height); new Stone(1).Heig", new[] { "Height" })]
    [InlineData("class Stone { int lonely; int F() => lonel", new[] { "lonely" })]
    [InlineData("static int Lonely(this int n) => n; 5.Lonel", new[] { "Lonely" })]
    [InlineData("using System.Globalization; CultureI", new[] { "CultureInfo" })]
    [InlineData("using Lonely = System.Globalization.CultureInfo; Lonel", new[] { "Lonely" })]
    [InlineData("int Lonely<TLonely>(TLonely lonely) { return lonel", new[] { "lonely" })]
    [InlineData("new { Lonely = 1 }.Lonel", new[] { "Lonely" })]
    [InlineData("// Console.Wri", new string[0])]
    [InlineData("\"Console.Wri", new string[0])]
    public async Task Completion_gives_what_begins_with_the_word_at_the_cursor(string code, string[] items)
    {
        await _engine.RunAsync("var earlier = 5;", 1);
        Assert.Equal(items, _engine.Complete(code, code.Length).Items.Select(i => i.Text).Where(i => !i.Contains("NotFound", StringComparison.Ordinal)));
    }

    [Theory]
    [InlineData("while (true) { }")]
    [InlineData("new System.Threading.ManualResetEvent(false).WaitOne();")]
    public async Task A_stop_ends_a_task_that_an_earlier_cell_left_running_and_nothing_after_it(string code)
    {
        await _engine.RunAsync($"var stray = Task.Run(() => {{ {code} }});", 1);
        await Task.Delay(200);
        Assert.Equal(new CellFinished(true, false), await _engine.RunAsync("stray.IsCompleted", 2));
        _engine.Stop();
        await Task.Delay(1000);
        Assert.Equal(new CellFinished(true, true), await _engine.RunAsync("stray.IsCompleted", 3));
        // An interrupt that came late would strike the next wait on the same thread of the pool.
        for (var i = 4; i < 20; i++)
        {
            Assert.Equal(new CellFinished(true, i), await _engine.RunAsync($"Task.Run(() => {{ System.Threading.Thread.Sleep(2); return {i}; }}).Result", i));
        }
    }

    [Fact]
    public async Task Language_questions_are_answered_while_a_cell_runs()
    {
        await _engine.RunAsync("var earlier = 5;", 1);
        var run = Task.Run(() => _engine.RunAsync("while (true) { }", 2));
        await Task.Delay(300);
        Assert.Equal(["earlier"], _engine.Complete("earli", 5).Items.Select(i => i.Text));
        Assert.Equal("int earlier", _engine.Inspect("earlier", 3)!.Declaration);
        Assert.Equal("CS0103", Assert.Single(_engine.Diagnose("nobody;"), d => d.IsError && d.Id == "CS0103").Id);
        Assert.False(run.IsCompleted);
        _engine.Stop();
        await run.WaitAsync(TimeSpan.FromSeconds(10));
    }

    [Fact]
    public void Inspection_reads_the_documentation()
    {
        var found = _engine.Inspect("Latitude.FromDegrees(5)", 12);
        Assert.NotNull(found);
        Assert.Contains("FromDegrees(double", found.Declaration);
        Assert.NotEqual("", found.Documentation);
    }

    [Theory]
    [InlineData("Math.Sin", 7, "double Math.Sin(double a)")]
    [InlineData("Math.PI", 6, "double Math.PI")]
    [InlineData("Console.Out.NewLine", 16, "string TextWriter.NewLine")]
    [InlineData("var town = \"Vigo\"; town.Trim", 28, "string string.Trim()")]
    public void Inspection_says_what_a_member_is(string code, int cursor, string declaration) =>
        Assert.Contains(declaration, _engine.Inspect(code, cursor)!.Declaration);

    [Fact]
    public async Task Names_of_a_cell_are_there_for_the_next_question()
    {
        Assert.Empty(_engine.Complete("lonel", 5).Items);
        await _engine.RunAsync("var lonely = 5;", 1);
        Assert.Equal([new CompletionEntry("lonely", "variable")], _engine.Complete("lonel", 5).Items);
        Assert.Equal(["CompareTo"], _engine.Complete("lonely.CompareT", 15).Items.Select(i => i.Text));
        await _engine.RunAsync("var lonely = \"now words\";", 2);
        Assert.Equal(["StartsWith"], _engine.Complete("lonely.StartsW", 14).Items.Select(i => i.Text));
        await _engine.RunAsync("static int Doubled(this string words) => words.Length * 2;", 3);
        Assert.Equal(["Doubled"], _engine.Complete("lonely.Doubl", 12).Items.Select(i => i.Text));
    }

    [Theory]
    [InlineData("#r \"nuget: Some.Package\"", "offline")]
    [InlineData("#!something", "directive")]
    public async Task What_would_load_code_from_elsewhere_is_refused_in_plain_words(string code, string id) =>
        Assert.Equal(id, Assert.IsType<CellNotCompiled>(await _engine.RunAsync(code, 1)).Errors[0].Id);

    [Theory]
    [InlineData("1 + 1", "Complete")]
    [InlineData("Math.Sin(", "Incomplete")]
    [InlineData("for (var i = 0; i < 3; i++) {", "Incomplete")]
    [InlineData("1 + ) 2", "Invalid")]
    public void A_submission_is_complete_or_not(string code, string state) =>
        Assert.Equal(state, _engine.IsComplete(code).State.ToString());
}

public sealed class InteractiveEngineTests : EngineContractTests
{
    internal override IScriptEngine Create() => new InteractiveEngine(_ => { });
}

public sealed class RoslynEngineTests : EngineContractTests
{
    /// <summary>No thread runs and no task is named, so there is nothing to end: the cell is left where it is.</summary>
    [Theory]
    [InlineData("await new TaskCompletionSource().Task.ConfigureAwait(false);")]
    [InlineData("await foreach (var n in System.Threading.Channels.Channel.CreateUnbounded<int>().Reader.ReadAllAsync()) { }")]
    [InlineData("await System.Threading.Channels.Channel.CreateUnbounded<int>().Reader.ReadAsync();")]
    public async Task A_cell_that_waits_for_what_never_comes_is_left_and_keeps_its_variables(string code) => await StopsAsync(code);

    internal override IScriptEngine Create() => new RoslynEngine(_ => { });
}
