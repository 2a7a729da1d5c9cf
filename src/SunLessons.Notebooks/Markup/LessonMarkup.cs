using System.Text.RegularExpressions;
using Markdig;
using Markdig.Extensions.AutoIdentifiers;
using Markdig.Extensions.Mathematics;
using Markdig.Renderers;
using Markdig.Renderers.Html;
using Markdig.Syntax;

namespace SunLessons.Notebooks.Markup;

/// <summary>
/// Markdown of lesson cells to HTML that is safe to put into a page: CommonMark with tables, formulas between dollar
/// signs (<see cref="TexToMathMl"/>) and named values. A link such as <c>[+94.9 min](#value:vigo-zone-step)</c> becomes
/// <c>&lt;span class="value" data-value="vigo-zone-step"&gt;+94.9 min&lt;/span&gt;</c>, which the page fills with the
/// cell's own text. Safe between threads.
/// </summary>
public static partial class LessonMarkup
{
    private static readonly MarkdownPipeline Pipeline = new MarkdownPipelineBuilder()
        .UsePipeTables()
        .UseAutoIdentifiers(AutoIdentifierOptions.GitHub)
        .UseMathematics()
        .Use<MathExtension>()
        .Build();

    [GeneratedRegex("""<a href="#value:([a-z0-9][a-z0-9-]*)"[^>]*>(.*?)</a>""", RegexOptions.Singleline)]
    private static partial Regex ValueAnchor();

    [GeneratedRegex("""^\s*(<h2\b.*?</h2>)(.*)$""", RegexOptions.Singleline)]
    private static partial Regex HeadedSection();

    /// <summary>
    /// A markdown cell as it stands on a learner's page. What is for the teacher is folded away under its own heading of the second level; without
    /// one it stands open, for there would be nothing to unfold it by.
    /// </summary>
    public static string CellHtml(NotebookCell cell)
    {
        ArgumentNullException.ThrowIfNull(cell);
        string html = ToHtml(cell.Source, cell.Id + "-");
        return cell.Role == "teacher" ? HeadedSection().Replace(html, "<details class=\"folded\"><summary>$1</summary>$2</details>\n") : html;
    }

    /// <summary>Turns a markdown cell into safe HTML.</summary>
    /// <param name="markdown">The cell's text; raw HTML in it is cleaned like everything else.</param>
    /// <param name="idPrefix">Set before every id (headings get ids); see <see cref="SafeHtml.Clean"/>.</param>
    public static string ToHtml(string markdown, string idPrefix = "n-")
    {
        string html = Markdown.ToHtml(markdown, Pipeline)

            // A table that scrolls sideways on a narrow screen must be reached by keyboard.
            .Replace("<table>", "<table tabindex=\"0\">", StringComparison.Ordinal)

            // Column alignment comes as a style, which the page's content policy forbids; a class says the same.
            .Replace("style=\"text-align: right;\"", "class=\"align-right\"", StringComparison.Ordinal)
            .Replace("style=\"text-align: center;\"", "class=\"align-centre\"", StringComparison.Ordinal)
            .Replace("style=\"text-align: left;\"", "class=\"align-left\"", StringComparison.Ordinal);
        return ValueAnchor().Replace(SafeHtml.Clean(html, idPrefix), "<span class=\"value\" data-value=\"$1\">$2</span>");
    }

    /// <summary>One sentence for each formula in the markdown that is outside the subset.</summary>
    public static IReadOnlyList<string> FormulaProblems(string markdown)
    {
        MarkdownDocument document = Parse(markdown);
        IEnumerable<string?> blocks = document.Descendants<MathBlock>().Select(block => TexToMathMl.Convert(block.Lines.ToString(), display: true).Problem);
        IEnumerable<string?> inlines = document.Descendants<MathInline>().Select(inline => TexToMathMl.Convert(inline.Content.ToString(), display: inline.DelimiterCount == 2).Problem);
        return [.. blocks.Concat(inlines).OfType<string>()];
    }

    /// <summary>The markdown as its parsed document, with the same extensions as <see cref="ToHtml"/>.</summary>
    internal static MarkdownDocument Parse(string markdown) => Markdown.Parse(markdown, Pipeline);

    private sealed class MathExtension : IMarkdownExtension
    {
        public void Setup(MarkdownPipelineBuilder pipeline)
        {
        }

        public void Setup(MarkdownPipeline pipeline, IMarkdownRenderer renderer)
        {
            if (renderer is HtmlRenderer html)
            {
                html.ObjectRenderers.ReplaceOrAdd<HtmlMathInlineRenderer>(new InlineFormula());
                html.ObjectRenderers.ReplaceOrAdd<HtmlMathBlockRenderer>(new BlockFormula());
            }
        }
    }

    private sealed class InlineFormula : HtmlObjectRenderer<MathInline>
    {
        protected override void Write(HtmlRenderer renderer, MathInline formula) =>
            renderer.Write(TexToMathMl.Convert(formula.Content.ToString(), display: formula.DelimiterCount == 2).Html);
    }

    private sealed class BlockFormula : HtmlObjectRenderer<MathBlock>
    {
        protected override void Write(HtmlRenderer renderer, MathBlock formula)
        {
            renderer.EnsureLine();
            renderer.WriteLine(TexToMathMl.Convert(formula.Lines.ToString(), display: true).Html);
        }
    }
}
