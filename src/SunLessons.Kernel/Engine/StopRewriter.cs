using System.Text;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace SunLessons.Kernel.Engine;

/// <summary>
/// Writes checks for stop and stack depth into a submission: first in each loop, method, accessor, lambda, handler and behind
/// each label; awaiting a task becomes such that a stop ends (waits that hold a thread are ended from outside, by <see cref="CellThreads"/>). Only text
/// within lines is added, so line numbers hold; columns shift, which is why the compiler's remarks are taken from the learner's own text before.
/// </summary>
internal sealed class StopRewriter : CSharpSyntaxWalker
{
    private const string Turn = "global::SunLessons.Kernel.StopCheck.Turn();";
    private const string Call = "global::SunLessons.Kernel.StopCheck.Call();";

    private readonly SemanticModel _model;
    private readonly List<(int At, int Remove, string Text)> _edits = [];

    private StopRewriter(SemanticModel model) => _model = model;

    /// <summary>The submission's text with checks; the same text when it needs none.</summary>
    public static string Rewrite(CellCode cell)
    {
        var source = cell.Tree.ToString();
        var rewriter = new StopRewriter(cell.Compilation.GetSemanticModel(cell.Tree));
        if (cell.Tree.GetDiagnostics().All(d => d.Severity != DiagnosticSeverity.Error))
        {
            rewriter.Visit(cell.Tree.GetRoot());
        }

        if (rewriter._edits.Count == 0)
        {
            return source;
        }

        // Stable order: at one place, what was noted first (the outer construct) stands first.
        var text = new StringBuilder(source.Length * 2);
        var from = 0;
        foreach (var (at, remove, insert) in rewriter._edits.Select((e, i) => (e, i)).OrderBy(x => x.e.At).ThenBy(x => x.i).Select(x => x.e))
        {
            text.Append(source, from, at - from).Append(insert);
            from = at + remove;
        }

        return text.Append(source, from, source.Length - from).ToString();
    }

    public override void VisitWhileStatement(WhileStatementSyntax node) => Loop(node.Statement, () => base.VisitWhileStatement(node));

    public override void VisitDoStatement(DoStatementSyntax node) => Loop(node.Statement, () => base.VisitDoStatement(node));

    public override void VisitForStatement(ForStatementSyntax node) => Loop(node.Statement, () => base.VisitForStatement(node));

    public override void VisitForEachStatement(ForEachStatementSyntax node) => Loop(node.Statement, () => base.VisitForEachStatement(node));

    public override void VisitForEachVariableStatement(ForEachVariableStatementSyntax node) => Loop(node.Statement, () => base.VisitForEachVariableStatement(node));

    public override void VisitLabeledStatement(LabeledStatementSyntax node)
    {
        Insert(node.ColonToken.Span.End, Turn);
        base.VisitLabeledStatement(node);
    }

    public override void VisitCatchClause(CatchClauseSyntax node)
    {
        Insert(node.Block.OpenBraceToken.Span.End, Turn);
        base.VisitCatchClause(node);
    }

    public override void VisitMethodDeclaration(MethodDeclarationSyntax node)
    {
        Body(node.Body, node.ExpressionBody, node.SemicolonToken, ReturnsNothing(node.ReturnType, node.Modifiers), () => base.VisitMethodDeclaration(node));
    }

    public override void VisitLocalFunctionStatement(LocalFunctionStatementSyntax node)
    {
        Body(node.Body, node.ExpressionBody, node.SemicolonToken, ReturnsNothing(node.ReturnType, node.Modifiers), () => base.VisitLocalFunctionStatement(node));
    }

    public override void VisitConstructorDeclaration(ConstructorDeclarationSyntax node) =>
        Body(node.Body, node.ExpressionBody, node.SemicolonToken, true, () => base.VisitConstructorDeclaration(node));

    public override void VisitOperatorDeclaration(OperatorDeclarationSyntax node) =>
        Body(node.Body, node.ExpressionBody, node.SemicolonToken, ReturnsNothing(node.ReturnType, node.Modifiers), () => base.VisitOperatorDeclaration(node));

    public override void VisitConversionOperatorDeclaration(ConversionOperatorDeclarationSyntax node) =>
        Body(node.Body, node.ExpressionBody, node.SemicolonToken, false, () => base.VisitConversionOperatorDeclaration(node));

    public override void VisitAccessorDeclaration(AccessorDeclarationSyntax node) =>
        Body(node.Body, node.ExpressionBody, node.SemicolonToken, !node.IsKind(SyntaxKind.GetAccessorDeclaration), () => base.VisitAccessorDeclaration(node));

    public override void VisitPropertyDeclaration(PropertyDeclarationSyntax node) =>
        Getter(node.ExpressionBody, node.SemicolonToken, () => base.VisitPropertyDeclaration(node));

    public override void VisitIndexerDeclaration(IndexerDeclarationSyntax node) =>
        Getter(node.ExpressionBody, node.SemicolonToken, () => base.VisitIndexerDeclaration(node));

    public override void VisitAnonymousMethodExpression(AnonymousMethodExpressionSyntax node)
    {
        Insert(node.Block.OpenBraceToken.Span.End, Call);
        base.VisitAnonymousMethodExpression(node);
    }

    public override void VisitSimpleLambdaExpression(SimpleLambdaExpressionSyntax node) => Lambda(node, () => base.VisitSimpleLambdaExpression(node));

    public override void VisitParenthesizedLambdaExpression(ParenthesizedLambdaExpressionSyntax node) => Lambda(node, () => base.VisitParenthesizedLambdaExpression(node));

    public override void VisitAwaitExpression(AwaitExpressionSyntax node)
    {
        // What is no task (a configured one, a yield) has its own way of waiting and comes back soon, or to a check.
        if (!IsTask(_model.GetTypeInfo(node.Expression).Type))
        {
            base.VisitAwaitExpression(node);
            return;
        }

        Insert(node.Expression.SpanStart, "global::SunLessons.Kernel.StopCheck.Await(");
        base.VisitAwaitExpression(node);
        Insert(node.Expression.Span.End, ")");
    }

    private static bool IsTask(ITypeSymbol? type) =>
        type is INamedTypeSymbol { Name: "Task" } task && task.ContainingNamespace.ToDisplayString() == "System.Threading.Tasks";

    private static bool ReturnsNothing(TypeSyntax type, SyntaxTokenList modifiers) =>
        type is PredefinedTypeSyntax { Keyword.RawKind: (int)SyntaxKind.VoidKeyword }
        || (modifiers.Any(SyntaxKind.AsyncKeyword) && type.ToString().Split('.')[^1] is "Task" or "ValueTask" && modifiers.Any(SyntaxKind.AsyncKeyword));

    private void Insert(int at, string text) => _edits.Add((at, 0, text));

    private void Loop(StatementSyntax body, Action inner)
    {
        if (body is BlockSyntax block)
        {
            Insert(block.OpenBraceToken.Span.End, Turn);
            inner();
            return;
        }

        Insert(body.SpanStart, "{" + Turn);
        inner();
        Insert(body.Span.End, "}");
    }

    private void Body(BlockSyntax? block, ArrowExpressionClauseSyntax? arrow, SyntaxToken semicolon, bool nothing, Action inner)
    {
        if (block is not null)
        {
            Insert(block.OpenBraceToken.Span.End, Call);
            inner();
            return;
        }

        if (arrow is null)
        {
            inner();
            return;
        }

        Arrow(arrow, semicolon, nothing, "{", "}", inner);
    }

    private void Getter(ArrowExpressionClauseSyntax? arrow, SyntaxToken semicolon, Action inner)
    {
        if (arrow is null)
        {
            inner();
            return;
        }

        Arrow(arrow, semicolon, false, "{get{", "}}", inner);
    }

    private void Arrow(ArrowExpressionClauseSyntax arrow, SyntaxToken semicolon, bool nothing, string open, string close, Action inner)
    {
        var statement = nothing || arrow.Expression is ThrowExpressionSyntax ? "" : "return ";
        _edits.Add((arrow.ArrowToken.SpanStart, arrow.ArrowToken.Span.Length, open + Call + statement));
        inner();
        Insert(semicolon.Span.End, close);
    }

    private void Lambda(LambdaExpressionSyntax node, Action inner)
    {
        if (node.Block is { } block)
        {
            Insert(block.OpenBraceToken.Span.End, Call);
            inner();
            return;
        }

        // A lambda that becomes an expression tree is data, not code: it may have no block.
        if (node.ExpressionBody is not { } body
            || _model.GetTypeInfo(node).ConvertedType is not INamedTypeSymbol { DelegateInvokeMethod: { } invoke })
        {
            inner();
            return;
        }

        var nothing = invoke.ReturnsVoid
            || (node.AsyncKeyword.IsKind(SyntaxKind.AsyncKeyword) && invoke.ReturnType is INamedTypeSymbol { IsGenericType: false, Name: "Task" or "ValueTask" });
        var statement = nothing || body is ThrowExpressionSyntax ? "" : "return ";
        Insert(body.SpanStart, "{" + Call + statement);
        inner();
        Insert(body.Span.End, ";}");
    }
}
