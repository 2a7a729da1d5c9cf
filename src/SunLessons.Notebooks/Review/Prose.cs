using System.Net;
using System.Text;
using System.Text.RegularExpressions;
using Markdig.Extensions.Mathematics;
using Markdig.Syntax;
using Markdig.Syntax.Inlines;
using SunLessons.Notebooks.Markup;

namespace SunLessons.Notebooks.Review;

/// <summary>
/// The words of a cell as a reader meets them, one text a paragraph, heading, list item or table cell: without code,
/// formulas, named values and markup. These are what the rules on numbers and wording look at.
/// </summary>
internal static partial class Prose
{
    /// <summary>Stands where a named value, a formula or code was taken out: a word to the sentence, no number.</summary>
    public const string Gap = "◊";

    [GeneratedRegex("<[^>]*>")]
    private static partial Regex Tag();

    [GeneratedRegex(@"\{\{.*?\}\}", RegexOptions.Singleline)]
    private static partial Regex Expression();

    [GeneratedRegex(@"(?<=[.!?:])[\s""”’)*]+(?=[\p{Lu}""“‘(])")]
    private static partial Regex SentenceEnd();

    public static IReadOnlyList<string> Of(NotebookCell cell) => cell.Language switch
    {
        "markdown" => OfMarkdown(cell.Source),
        "html" or "svg" => [OfHtml(cell.Source)],
        _ => [],
    };

    public static IReadOnlyList<string> OfMarkdown(string markdown)
    {
        var texts = new List<string>();
        foreach (Block block in LessonMarkup.Parse(markdown).Descendants<Block>())
        {
            if (block is HtmlBlock html)
            {
                texts.Add(OfHtml(html.Lines.ToString()));
            }
            else if (block is LeafBlock { Inline: ContainerInline inline } and not MathBlock and not CodeBlock)
            {
                var text = new StringBuilder();
                Read(inline, text);
                texts.Add(text.ToString());
            }
        }

        return [.. texts.Where(text => !string.IsNullOrWhiteSpace(text))];
    }

    public static IEnumerable<string> Sentences(string text) => SentenceEnd().Split(text).Where(sentence => !string.IsNullOrWhiteSpace(sentence));

    /// <summary>The names of the values that a markdown cell quotes, each with the text that stands in the file.</summary>
    public static IEnumerable<(string Name, string Text)> QuotedValues(string markdown)
    {
        foreach (LinkInline link in LessonMarkup.Parse(markdown).Descendants<LinkInline>())
        {
            if (link.Url?.StartsWith("#value:", StringComparison.Ordinal) == true)
            {
                var text = new StringBuilder();
                Read(link, text);
                yield return (link.Url["#value:".Length..], text.ToString());
            }
        }
    }

    /// <summary>The words of a link or another piece of a paragraph.</summary>
    public static string Text(ContainerInline inline)
    {
        var text = new StringBuilder();
        Read(inline, text);
        return text.ToString();
    }

    private static string OfHtml(string html) => WebUtility.HtmlDecode(Tag().Replace(Expression().Replace(html, Gap), " "));

    private static void Read(ContainerInline container, StringBuilder text)
    {
        foreach (Inline inline in container)
        {
            switch (inline)
            {
                case LiteralInline literal:
                    text.Append(literal.Content.AsSpan());
                    break;
                case LineBreakInline:
                    text.Append(' ');
                    break;
                case CodeInline or MathInline:
                    text.Append(Gap);
                    break;
                case HtmlEntityInline entity:
                    text.Append(entity.Transcoded.AsSpan());
                    break;
                case LinkInline { Url: string url } when url.StartsWith("#value:", StringComparison.Ordinal):
                    text.Append(Gap);
                    break;
                case ContainerInline inner:
                    Read(inner, text);
                    break;
            }
        }
    }
}
