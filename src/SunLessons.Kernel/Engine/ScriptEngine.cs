using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Scripting;
using Microsoft.CodeAnalysis.Scripting;

namespace SunLessons.Kernel.Engine;

/// <summary>
/// What engines on Roslyn's script submissions share: the compiler's remarks on the learner's own text first, checks for stop
/// written in by <see cref="StopRewriter"/>, and language questions answered by <see cref="LanguageService"/>.
/// </summary>
internal abstract class ScriptEngine : IScriptEngine
{
    private readonly LanguageService _language;
    private readonly Lazy<Task> _warm;

    protected ScriptEngine(Action<string> log)
    {
        Log = log;
        _language = new LanguageService(() => State?.Script.GetCompilation() as CSharpCompilation);
        _warm = new Lazy<Task>(() => Task.Run(WarmAsync));
    }

    public abstract string Name { get; }

    /// <summary>The chain of submissions so far; null before the first.</summary>
    protected abstract ScriptState? State { get; }

    protected Action<string> Log { get; }

    public Task WarmUpAsync() => _warm.Value;

    public async Task<CellResult> RunAsync(string code, int number)
    {
        await WarmUpAsync().ConfigureAwait(false);
        if (Refusal(code) is { } refusal)
        {
            return new CellNotCompiled([refusal]);
        }

        // The learner's own text first: what the compiler says about it has the learner's lines and columns.
        var (fork, tree) = _language.Fork(code);
        var errors = LanguageService.Remarks(fork.GetDiagnostics()).Where(d => d.IsError).ToArray();
        if (errors.Length > 0)
        {
            return new CellNotCompiled(errors);
        }

        StopCheck.Begin();
        try
        {
            var rewritten = StopRewriter.Rewrite(tree, fork);
            var result = await SubmitAsync(rewritten, number).ConfigureAwait(false);
            if (result is CellNotCompiled refused && rewritten != code)
            {
                // Checks may not change what compiles. Should a form of C# exist where they do, the cell runs without them.
                Log($"A cell with checks did not compile ({refused.Errors[0].Id}); it runs without them.");
                result = await SubmitAsync(code, number).ConfigureAwait(false);
            }

            return StopCheck.Reason is { } why && result is not CellFinished ? new CellStopped(why) : result;
        }
        finally
        {
            StopCheck.End();
        }
    }

    public void Stop()
    {
        StopCheck.RequestStrays();
        StopCheck.Request("Stopped as asked. Variables that were set before this moment are kept.");
    }

    public (Completeness State, string Indent) IsComplete(string code) => LanguageService.IsComplete(code);

    public CompletionList Complete(string code, int cursor) => _language.Complete(code, cursor);

    public Inspection? Inspect(string code, int cursor) => _language.Inspect(code, cursor);

    public IReadOnlyList<CellDiagnostic> Diagnose(string code) => Refusal(code) is { } refusal ? [refusal] : _language.Diagnose(code);

    public abstract ValueTask DisposeAsync();

    /// <summary>Makes the engine ready to take submissions; may run beside the compiler's own warming.</summary>
    protected abstract Task PrepareAsync();

    /// <summary>Runs one submission as it is.</summary>
    protected abstract Task<CellResult> SubmitAsync(string code, int number);

    /// <summary>Line numbers and names in stack traces, and code as quick as a program's.</summary>
    protected static ScriptOptions Described(ScriptOptions options, int number) => options
        .WithEmitDebugInformation(true)
        .WithFileEncoding(System.Text.Encoding.UTF8)
        .WithOptimizationLevel(OptimizationLevel.Release)
        .WithFilePath(CellNames.For(number));

    /// <summary>Directives that would load code from elsewhere: the compiler's own remark on them helps nobody.</summary>
    private static CellDiagnostic? Refusal(string code)
    {
        var lines = code.Split('\n');
        for (var i = 0; i < lines.Length; i++)
        {
            var line = lines[i].Trim();
            if (line.StartsWith("#r \"nuget:", StringComparison.Ordinal))
            {
                return new CellDiagnostic("error", "offline", "Lessons work without a network, so a cell cannot fetch a package. Use what is there, or a file on this machine: #r \"path/to/library.dll\".", i + 1, 1, i + 1, line.Length + 1);
            }

            if (line.StartsWith("#!", StringComparison.Ordinal) && i + 1 < int.MaxValue)
            {
                return new CellDiagnostic("error", "directive", "A line that begins with \"#!\" is no C#. Write C#, or a cell that begins with \"<\" for HTML.", i + 1, 1, i + 1, line.Length + 1);
            }
        }

        return null;
    }

    private static async Task WarmRoslynAsync()
    {
        // Independent of the engine's own preparations, so it uses the second core meanwhile (kernel start: about 0.3 s less).
        var options = ScriptOptions.Default.AddReferences(typeof(Enumerable).Assembly).AddImports("System", "System.Linq");
        var state = await CSharpScript.RunAsync("1+1", options).ConfigureAwait(false);
        await state.ContinueWithAsync("System.Linq.Enumerable.Range(0, 3).Select(i => i * 2).Sum()").ConfigureAwait(false);
    }

    private async Task WarmAsync()
    {
        var roslyn = Task.Run(WarmRoslynAsync);
        var usings = Task.Run(() => Preload.Usings);
        await PrepareAsync().ConfigureAwait(false);
        await roslyn.ConfigureAwait(false);
        // The first submission cannot keep its variables when it throws, so it is ours.
        if (await SubmitAsync(await usings.ConfigureAwait(false), 0).ConfigureAwait(false) is not CellFinished)
        {
            throw new InvalidOperationException("The kernel's own first cell did not run.");
        }

        await SubmitAsync("1+1", 0).ConfigureAwait(false);
        _language.Diagnose("var x = Math.PI;");
    }
}
