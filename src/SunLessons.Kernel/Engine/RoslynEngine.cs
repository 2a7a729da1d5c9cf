using System.Reflection;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Scripting;
using Microsoft.CodeAnalysis.Scripting;

namespace SunLessons.Kernel.Engine;

/// <summary>The engine on Roslyn's scripting alone, without a framework around it: held to the same contract, and measured beside the other.</summary>
/// <param name="log">Takes one line for each thing that a maintainer should know.</param>
internal sealed class RoslynEngine(Action<string> log) : ScriptEngine(log)
{
    // Roslyn keeps this to itself; the engines that build on it ask the same way.
    private static readonly MethodInfo? HasReturnValue = typeof(Script).GetMethod("HasReturnValue", BindingFlags.Instance | BindingFlags.NonPublic);

    private ScriptState? _state;
    private ScriptOptions _options = null!;

    public override string Name { get; } = "Roslyn scripting " + typeof(CSharpScript).Assembly.GetName().Version?.ToString(3);

    protected override ScriptState? State => _state;

    public override ValueTask DisposeAsync() => ValueTask.CompletedTask;

    protected override Task PrepareAsync()
    {
        _options = ScriptOptions.Default
            .WithLanguageVersion(LanguageVersion.Latest)
            .AddImports("System", "System.Text", "System.Collections", "System.Collections.Generic", "System.Threading.Tasks", "System.Linq")
            .AddReferences(typeof(Enumerable).Assembly, typeof(List<>).Assembly, typeof(Task).Assembly, typeof(Console).Assembly)
            .AddReferences(typeof(System.Linq.Expressions.Expression).Assembly, typeof(Queryable).Assembly)
            .AddReferences(Preload.Assemblies.Select(Documented));
        return Task.CompletedTask;
    }

    protected override async Task<CellResult> SubmitAsync(string code, int number)
    {
        var options = Described(_options, number);
        Exception? thrown = null;
        try
        {
            _state = _state is null
                ? await CSharpScript.RunAsync(code, options).ConfigureAwait(false)
                : await _state.ContinueWithAsync(code, options, e => { thrown = e; return true; }).ConfigureAwait(false);
        }
        catch (CompilationErrorException e)
        {
            return new CellNotCompiled(LanguageService.Remarks(e.Diagnostics));
        }

        if (thrown is not null)
        {
            return new CellThrew(thrown);
        }

        return HasReturnValue?.Invoke(_state.Script, null) is true ? new CellFinished(true, _state.ReturnValue) : new CellFinished(false, null);
    }

    private static MetadataReference Documented(Assembly assembly)
    {
        var xml = Path.ChangeExtension(assembly.Location, ".xml");
        return MetadataReference.CreateFromFile(assembly.Location, documentation: File.Exists(xml) ? XmlDocumentationProvider.CreateFromFile(xml) : null);
    }
}
