using Microsoft.CodeAnalysis.CSharp;

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
        _language = new LanguageService(() => Last);
        _warm = new Lazy<Task>(() => Task.Run(WarmAsync));
    }

    public abstract string Name { get; }

    /// <summary>The last submission that ran; null before the first.</summary>
    protected abstract CSharpCompilation? Last { get; }

    protected Action<string> Log { get; }

    public Task WarmUpAsync() => _warm.Value;

    public async Task<CellResult> RunAsync(string code, int number)
    {
        await WarmUpAsync().ConfigureAwait(false);
        if (Refusal(code) is { } refusal)
        {
            return new CellNotCompiled([refusal]);
        }

        var cell = _language.Fork(code, CellNames.For(number));
        var rewritten = StopRewriter.Rewrite(cell);
        // The learner's own text first where it will run with checks in it: what the compiler says has the learner's lines and columns.
        if (rewritten != code && LanguageService.Errors(cell.Compilation) is { Count: > 0 } errors)
        {
            return new CellNotCompiled(errors);
        }

        StopCheck.Begin();
        try
        {
            var result = await SubmitAsync(rewritten == code ? cell : cell.With(rewritten), number).ConfigureAwait(false);
            if (result is CellNotCompiled refused && rewritten != code)
            {
                // Checks may not change what compiles. Should a form of C# exist where they do, the cell runs without them.
                Log($"A cell with checks did not compile ({refused.Errors[0].Id}); it runs without them.");
                result = await SubmitAsync(cell, number).ConfigureAwait(false);
            }

            return StopCheck.Reason is { } why && result is not CellFinished ? new CellStopped(why) : result;
        }
        finally
        {
            StopCheck.End();
            // Behind the answer: what the next cell and all questions before it begin with.
            _ = Task.Run(_language.Prepare);
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
    protected abstract Task<CellResult> SubmitAsync(CellCode cell, int number);

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

    private async Task WarmAsync()
    {
        await PrepareAsync().ConfigureAwait(false);
        await SubmitAsync(_language.Fork("1+1"), 0).ConfigureAwait(false);
    }
}
