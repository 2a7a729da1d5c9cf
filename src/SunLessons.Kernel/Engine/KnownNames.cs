using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace SunLessons.Kernel.Engine;

/// <summary>
/// What a cell can name without having declared it: variables of earlier cells, imports, the library. The compiler's tables of namespaces
/// belong to one compilation, so a question asked of each new text fills them anew, which was nearly all that a completion cost (6 to 18 ms of
/// processor time, measured). Here they belong to an empty cell and serve all questions until a cell has run.
/// </summary>
/// <param name="next">The next submission without its text.</param>
internal sealed class KnownNames(CSharpCompilation next)
{
    private readonly Lazy<SemanticModel> _model = new(() =>
    {
        var empty = LanguageService.Parse("");
        return next.AddSyntaxTrees(empty).GetSemanticModel(empty);
    });

    private ISymbol[]? _all;
    private (ITypeSymbol Type, ISymbol[] Members)? _last;
    private readonly Lock _gate = new();

    /// <summary>All names, each in front of those that it hides.</summary>
    public IReadOnlyList<ISymbol> All => _all ??= [.. _model.Value.LookupSymbols(0)];

    /// <summary>What can be called on a value, extension methods among it. Kept for the type asked of last: the next letter asks the same.</summary>
    public IReadOnlyList<ISymbol> Members(ITypeSymbol type)
    {
        lock (_gate)
        {
            if (_last is not { } last || !SymbolEqualityComparer.IncludeNullability.Equals(last.Type, type))
            {
                _last = last = (type, [.. _model.Value.LookupSymbols(0, type, includeReducedExtensionMethods: true)]);
            }

            return last.Members;
        }
    }

    /// <summary>
    /// Whether a cell's text changes what names mean other than by declaring some in its own statements: by imports, types, extension methods
    /// or a file that it refers to. Then only the compiler's answer for that very text holds.
    /// </summary>
    public static bool HoldFor(CompilationUnitSyntax cell) =>
        cell.Usings.Count == 0 && cell.Externs.Count == 0 && !cell.ContainsDirectives
        && !cell.Members.Any(member => member is BaseTypeDeclarationSyntax or DelegateDeclarationSyntax or BaseNamespaceDeclarationSyntax)
        && !cell.DescendantNodes().Any(node => node is ParameterSyntax { Modifiers: var modifiers } && modifiers.Any(SyntaxKind.ThisKeyword));

    /// <summary>The names that a cell's text declares, wherever in it.</summary>
    public static IEnumerable<string> Declared(CompilationUnitSyntax cell) => cell.DescendantNodes()
        .Select(node => node switch
        {
            VariableDeclaratorSyntax variable => variable.Identifier,
            SingleVariableDesignationSyntax variable => variable.Identifier,
            ForEachStatementSyntax loop => loop.Identifier,
            CatchDeclarationSyntax caught => caught.Identifier,
            ParameterSyntax parameter => parameter.Identifier,
            TypeParameterSyntax type => type.Identifier,
            MethodDeclarationSyntax method => method.Identifier,
            LocalFunctionStatementSyntax function => function.Identifier,
            PropertyDeclarationSyntax property => property.Identifier,
            EventDeclarationSyntax happening => happening.Identifier,
            QueryClauseSyntax or JoinIntoClauseSyntax or QueryContinuationSyntax => RangeVariable(node),
            _ => default,
        })
        .Select(identifier => identifier.ValueText)
        .Where(name => !string.IsNullOrEmpty(name))
        .Distinct();

    private static SyntaxToken RangeVariable(SyntaxNode node) => node switch
    {
        FromClauseSyntax from => from.Identifier,
        LetClauseSyntax let => let.Identifier,
        JoinClauseSyntax join => join.Identifier,
        JoinIntoClauseSyntax into => into.Identifier,
        QueryContinuationSyntax continuation => continuation.Identifier,
        _ => default,
    };
}
