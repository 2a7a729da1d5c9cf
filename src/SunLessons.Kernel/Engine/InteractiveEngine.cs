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
/// by <see cref="ScriptEngine"/>.
/// </summary>
/// <param name="log">Takes one line for each thing that a maintainer should know.</param>
internal sealed class InteractiveEngine(Action<string> log) : ScriptEngine(log)
{
    private CSharpKernel? _kernel;
    private IDisposable? _console;

    public override string Name { get; } = "Microsoft.DotNet.Interactive.CSharp " +
        typeof(CSharpKernel).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()?.InformationalVersion.Split('+')[0];

    protected override CSharpCompilation? Last => _kernel?.ScriptState?.Script.GetCompilation() as CSharpCompilation;

    public override ValueTask DisposeAsync()
    {
        _kernel?.Dispose();
        _console?.Dispose();
        return ValueTask.CompletedTask;
    }

    protected override async Task PrepareAsync()
    {
        // The engine swaps the console at every command unless somebody holds it: held here, the session's own writers stay in place.
        _console = ConsoleOutput.Subscribe(_ => Disposable.Empty);
        // Independent of the engine's own preparations, so it uses the second core meanwhile (kernel start: about 0.3 s less).
        var roslyn = Task.Run(() => CSharpScript.RunAsync("1+1"));
        var usings = Task.Run(() => Preload.Usings);
        var assemblies = Task.Run(() => Preload.Assemblies);
        _kernel = new CSharpKernel();
        Formatter.DefaultMimeType = "text/plain";
        Formatter.SetPreferredMimeTypesFor(typeof(object), "text/plain");
        _kernel.AddAssemblyReferences((await assemblies.ConfigureAwait(false)).Select(a => a.Location));
        await roslyn.ConfigureAwait(false);
        // The first submission cannot keep its variables when it throws, so it is ours.
        if (await SendAsync(await usings.ConfigureAwait(false), 0).ConfigureAwait(false) is not CellFinished)
        {
            throw new InvalidOperationException("The kernel's own first cell did not run.");
        }
    }

    protected override Task<CellResult> SubmitAsync(CellCode cell, int number) => SendAsync(cell.Tree.ToString(), number);

    private async Task<CellResult> SendAsync(string code, int number)
    {
        WithDebugInformation(number);
        var result = await _kernel!.SendAsync(new SubmitCode(code)).ConfigureAwait(false);
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

    /// <summary>
    /// Gives submissions line numbers, a name and code as quick as a program's, which the engine offers no public way for. Should its field be gone in another
    /// version, tracebacks lose their lines and everything else goes on.
    /// </summary>
    private void WithDebugInformation(int number)
    {
        var field = typeof(CSharpKernel).GetField("_scriptOptions", BindingFlags.Instance | BindingFlags.NonPublic);
        if (field?.GetValue(_kernel) is ScriptOptions options)
        {
            field.SetValue(_kernel, options
                .WithEmitDebugInformation(true)
                .WithFileEncoding(System.Text.Encoding.UTF8)
                .WithOptimizationLevel(OptimizationLevel.Release)
                .WithFilePath(CellNames.For(number)));
        }
        else
        {
            Log("The engine's script options were not found: tracebacks have no line numbers.");
        }
    }
}
