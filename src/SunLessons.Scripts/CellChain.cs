using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using SunLessons.Cells.Running;

namespace SunLessons.Scripts;

/// <summary>
/// The C# cells of one lesson, compiled one after another, each seeing what those before it declared. The assemblies run wherever the referenced
/// library runs: on a desktop while publishing, in a page afterwards. Not safe for several threads at once.
/// </summary>
/// <param name="references">The assemblies that cells may name.</param>
public sealed class CellChain(CellReferences references)
{
    private static readonly CSharpParseOptions Parsing = new(LanguageVersion.Latest, kind: SourceCodeKind.Script);
    private CSharpCompilation? _last;
    private int _count;

    /// <summary>Takes a cell that is known to compile: its names are there for the next ones, and nothing is emitted.</summary>
    public void Adopt(string source, string name) => _last = Next(source, name, ++_count);

    /// <summary>Compiles a cell. One that does not compile leaves the chain as it was.</summary>
    /// <param name="source">The cell's C#.</param>
    /// <param name="name">The name by which problems and stack traces call it.</param>
    public CellBuild Build(string source, string name)
    {
        var number = _count + 1;
        var compilation = Next(source, name, number);
        using var assembly = new MemoryStream();
        // Without debug information: its checksum of the source is made by a task, and the only thread of a page cannot wait for one.
        var result = compilation.Emit(assembly);
        if (!result.Success)
        {
            return new CellBuild(number, [], [.. result.Diagnostics.Where(d => d.Severity == DiagnosticSeverity.Error).Select(Problem)]);
        }

        (_last, _count) = (compilation, number);
        return new CellBuild(number, assembly.ToArray(), []);
    }

    private static CellProblem Problem(Diagnostic diagnostic)
    {
        var start = diagnostic.Location.GetLineSpan().StartLinePosition;
        return new CellProblem(start.Line + 1, start.Character + 1, diagnostic.GetMessage(System.Globalization.CultureInfo.InvariantCulture));
    }

    private CSharpCompilation Next(string source, string name, int number) => CSharpCompilation.CreateScriptCompilation(
        $"Cell{number}",
        CSharpSyntaxTree.ParseText(source, Parsing, name, System.Text.Encoding.UTF8),
        references.All,
        new CSharpCompilationOptions(
            OutputKind.DynamicallyLinkedLibrary,
            scriptClassName: CellRun.ClassName(number),
            usings: CellUsings.All,
            optimizationLevel: OptimizationLevel.Release,
            // One thread is all that a page has.
            concurrentBuild: false,
            deterministic: true,
            nullableContextOptions: NullableContextOptions.Disable),
        _last,
        typeof(object));
}
