using System.Collections.Immutable;
using System.Reflection;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;
using Microsoft.CodeAnalysis.Emit;

namespace SunLessons.Kernel.Engine;

/// <summary>
/// The engine on the C# compiler alone: each cell is a script submission set up on the one before it, compiled once, loaded and run.
/// </summary>
/// <param name="log">Takes one line for each thing that a maintainer should know.</param>
internal sealed class RoslynEngine(Action<string> log) : ScriptEngine(log)
{
    private const string DefaultUsings = """
        using System;
        using System.Text;
        using System.Collections;
        using System.Collections.Generic;
        using System.Threading.Tasks;
        using System.Linq;

        """;

    private static readonly EmitOptions Emitting = new(debugInformationFormat: DebugInformationFormat.PortablePdb);

    private readonly CellLoader _loader = new();
    private volatile CSharpCompilation? _last;

    // Slot 0 is for an object of the host, which there is none of; each submission writes itself into the slot behind the one before.
    private object?[] _submissions = new object?[64];
    private int _count;

    public override string Name { get; } = "Roslyn " + typeof(CSharpCompilation).Assembly.GetName().Version?.ToString(3);

    protected override CSharpCompilation? Last => _last;

    public override ValueTask DisposeAsync() => ValueTask.CompletedTask;

    protected override async Task PrepareAsync()
    {
        var usings = Task.Run(() => Preload.Usings);
        var references = CellReferences.All;
        var options = new CSharpCompilationOptions(
            OutputKind.DynamicallyLinkedLibrary,
            scriptClassName: "Cell",
            optimizationLevel: OptimizationLevel.Release,
            allowUnsafe: true,
            concurrentBuild: false,
            sourceReferenceResolver: new SourceFileResolver([], Directory.GetCurrentDirectory()),
            metadataReferenceResolver: new FileReferences());
        // Only using directives: nothing of it needs to run.
        var tree = CSharpSyntaxTree.ParseText(DefaultUsings + await usings.ConfigureAwait(false), LanguageService.Parsing);
        _last = CSharpCompilation.CreateScriptCompilation("cells", tree, references, options, returnType: typeof(object));
    }

    protected override async Task<CellResult> SubmitAsync(CellCode cell, int number)
    {
        var compilation = cell.Compilation;
        if (compilation.SyntaxTrees.All(tree => ((CompilationUnitSyntax)tree.GetRoot()).Members.Count == 0))
        {
            // Imports, a library's name, words: nothing to run, and an assembly of it cannot be written.
            if (LanguageService.Errors(compilation) is { Count: > 0 } errors)
            {
                return new CellNotCompiled(errors);
            }

            Accept(compilation);
            return new CellFinished(false, null);
        }

        using var image = new MemoryStream();
        using var symbols = new MemoryStream();
        if (!compilation.Emit(image, symbols, options: Emitting).Success)
        {
            // All of the compiler's remarks; writing the image stops at the first kind of them.
            return new CellNotCompiled(LanguageService.Errors(compilation));
        }

        image.Position = symbols.Position = 0;
        var assembly = _loader.LoadFromStream(image, symbols);
        Accept(compilation);
        if (++_count == _submissions.Length)
        {
            Array.Resize(ref _submissions, _submissions.Length * 2);
        }

        var entry = compilation.GetEntryPoint(CancellationToken.None)!;
        var run = assembly.GetType(entry.ContainingType.MetadataName, throwOnError: true)!
            .GetMethod(entry.MetadataName, BindingFlags.Static | BindingFlags.Public | BindingFlags.NonPublic)!
            .CreateDelegate<Func<object?[], Task<object>>>();
        try
        {
            var value = await run(_submissions).WaitAsync(StopCheck.Abandoned).ConfigureAwait(false);
            return GivesValue(cell) ? new CellFinished(true, value) : new CellFinished(false, null);
        }
        catch (Exception exception)
        {
            return new CellThrew(exception);
        }
    }

    private void Accept(CSharpCompilation compilation)
    {
        _loader.Note(compilation.DirectiveReferences);
        _last = compilation;
    }

    /// <summary>A cell gives a value when its last statement is an expression that is something and has no semicolon, or when it returns.</summary>
    private static bool GivesValue(CellCode cell)
    {
        var root = (CompilationUnitSyntax)cell.Tree.GetRoot();
        if (root.Members.OfType<GlobalStatementSyntax>().LastOrDefault() is { Statement: ExpressionStatementSyntax { SemicolonToken.IsMissing: true } last })
        {
            return cell.Compilation.GetSemanticModel(cell.Tree).GetTypeInfo(last.Expression).ConvertedType?.SpecialType != SpecialType.System_Void;
        }

        return root.DescendantNodes(node => node is CompilationUnitSyntax or GlobalStatementSyntax or StatementSyntax).Any(node => node is ReturnStatementSyntax);
    }

    /// <summary>What a cell names by <c>#r</c>: a file, or an assembly of the framework.</summary>
    private sealed class FileReferences : MetadataReferenceResolver
    {
        public override ImmutableArray<PortableExecutableReference> ResolveReference(string reference, string? baseFilePath, MetadataReferenceProperties properties)
        {
            var path = Path.GetFullPath(reference);
            return File.Exists(path) ? [MetadataReference.CreateFromFile(path, properties)]
                : CellReferences.Find(reference) is { } known ? [known]
                : [];
        }

        // What a library named by a cell refers to and cells do without.
        public override bool ResolveMissingAssemblies => true;

        public override PortableExecutableReference? ResolveMissingAssembly(MetadataReference definition, AssemblyIdentity referenceIdentity) =>
            CellReferences.Find(referenceIdentity.Name);

        public override bool Equals(object? other) => other is FileReferences;

        public override int GetHashCode() => 1;
    }
}
