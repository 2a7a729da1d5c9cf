using System.Reactive.Disposables;
using System.Reflection;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Scripting;
using Microsoft.CodeAnalysis.Scripting;
using Microsoft.DotNet.Interactive;
using Microsoft.DotNet.Interactive.Commands;
using Microsoft.DotNet.Interactive.CSharp;
using Microsoft.DotNet.Interactive.Events;
using Microsoft.DotNet.Interactive.Formatting;
using Microsoft.DotNet.Interactive.Utility;

namespace SunLessons.Kernel.Engine;

/// <summary>
/// The engine on Microsoft.DotNet.Interactive.CSharp: its submission chain runs the cells. What it is slow or deaf at is done
/// here: language questions by <see cref="LanguageService"/>, stopping by <see cref="StopRewriter"/>.
/// </summary>
internal sealed class InteractiveEngine : IScriptEngine
{
    private readonly LanguageService _language;
    private readonly Lazy<Task> _warm;
    private readonly Action<string> _log;
    private CSharpKernel _kernel = null!;
    private IDisposable? _console;

    public InteractiveEngine(Action<string> log)
    {
        _log = log;
        _language = new LanguageService(() => _kernel?.ScriptState?.Script.GetCompilation() as CSharpCompilation);
        _warm = new Lazy<Task>(() => Task.Run(WarmAsync));
    }

    public string Name { get; } = "Microsoft.DotNet.Interactive.CSharp " +
        typeof(CSharpKernel).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()?.InformationalVersion.Split('+')[0];

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
                _log($"A cell with checks did not compile ({refused.Errors[0].Id}); it runs without them.");
                result = await SubmitAsync(code, number).ConfigureAwait(false);
            }

            return StopCheck.Reason is { } why && result is not CellFinished ? new CellStopped(why) : result;
        }
        finally
        {
            StopCheck.End();
        }
    }

    public void Stop() => StopCheck.Request("Stopped as asked. Variables that were set before this moment are kept.");

    public (Completeness State, string Indent) IsComplete(string code) => LanguageService.IsComplete(code);

    public CompletionList Complete(string code, int cursor) => _language.Complete(code, cursor);

    public Inspection? Inspect(string code, int cursor) => _language.Inspect(code, cursor);

    public IReadOnlyList<CellDiagnostic> Diagnose(string code) => Refusal(code) is { } refusal ? [refusal] : _language.Diagnose(code);

    public ValueTask DisposeAsync()
    {
        _kernel?.Dispose();
        _console?.Dispose();
        return ValueTask.CompletedTask;
    }

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
        // The engine swaps the console at every command unless somebody holds it: held here, the session's own writers stay in place.
        _console = ConsoleOutput.Subscribe(_ => Disposable.Empty);
        var roslyn = Task.Run(WarmRoslynAsync);
        var assemblies = Task.Run(() => (Preload.Assemblies, Preload.Usings));
        _kernel = new CSharpKernel();
        Formatter.DefaultMimeType = "text/plain";
        Formatter.SetPreferredMimeTypesFor(typeof(object), "text/plain");
        var (loaded, usings) = await assemblies.ConfigureAwait(false);
        _kernel.AddAssemblyReferences(loaded.Select(a => a.Location));
        WithDebugInformation(0);
        await roslyn.ConfigureAwait(false);
        // The engine loses the variables of a first cell that throws, so the first one is ours.
        if (await SubmitAsync(usings, 0).ConfigureAwait(false) is not CellFinished)
        {
            throw new InvalidOperationException("The kernel's own first cell did not run.");
        }

        await SubmitAsync("1+1", 0).ConfigureAwait(false);
        _language.Diagnose("var x = Math.PI;");
    }

    /// <summary>
    /// Gives submissions line numbers and a name, which the engine offers no public way for. Should its field be gone in another
    /// version, tracebacks lose their lines and everything else goes on.
    /// </summary>
    private void WithDebugInformation(int number)
    {
        var field = typeof(CSharpKernel).GetField("_scriptOptions", BindingFlags.Instance | BindingFlags.NonPublic);
        if (field?.GetValue(_kernel) is not ScriptOptions options)
        {
            _log("The engine's script options were not found: tracebacks have no line numbers.");
            return;
        }

        field.SetValue(_kernel, options
            .WithEmitDebugInformation(true)
            .WithFileEncoding(System.Text.Encoding.UTF8)
            .WithOptimizationLevel(OptimizationLevel.Release)
            .WithFilePath(CellNames.For(number)));
    }

    private async Task<CellResult> SubmitAsync(string code, int number)
    {
        WithDebugInformation(number);
        var result = await _kernel.SendAsync(new SubmitCode(code)).ConfigureAwait(false);
        CellResult outcome = new CellFinished(false, null);
        foreach (var one in result.Events)
        {
            switch (one)
            {
                case ReturnValueProduced value:
                    outcome = new CellFinished(true, value.Value);
                    break;
                case CommandFailed failed:
                    outcome = Failed(failed);
                    break;
            }
        }

        return outcome;
    }

    private static CellResult Failed(CommandFailed failed)
    {
        var exception = failed.Exception;
        if (exception is CodeSubmissionCompilationErrorException { InnerException: CompilationErrorException inner })
        {
            exception = inner;
        }

        return exception switch
        {
            CompilationErrorException compilation => new CellNotCompiled(LanguageService.Remarks(compilation.Diagnostics)),
            null => new CellThrew(new InvalidOperationException(failed.Message)),
            _ => new CellThrew(exception),
        };
    }
}
