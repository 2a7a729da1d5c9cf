using System.Text.RegularExpressions;
using AngleSharp.Dom;
using AngleSharp.Html.Parser;

namespace SunLessons.Publishing.Tests.Tiers;

/// <summary>
/// Everything in a piece of a page that holds a digit, in reading order: each text between two tags, and in drawings each attribute, so that coordinates count
/// too. Two tiers show the same numbers when these lines are the same, letter for letter.
/// </summary>
internal static partial class NumberLines
{
    // Names of parts, which differ from one drawing of a page to the next.
    private static readonly string[] Names = ["id", "class", "xmlns", "aria-labelledby", "aria-describedby", "clip-path", "role", "tabindex", "focusable"];

    /// <summary>The same for a page in a browser: a function of an element. What is typed, chosen or ticked counts as well.</summary>
    public const string Script = """
        (element, drop = "") => {
          const lines = [], names = ["id", "class", "xmlns", "aria-labelledby", "aria-describedby", "clip-path", "role", "tabindex", "focusable"];
          const say = text => { const line = (text ?? "").replace(/\s+/g, " ").trim(); if (/\d/.test(line)) lines.push(line); };
          const walk = node => {
            if (node.nodeType === Node.TEXT_NODE) { say(node.data); return; }
            if (node.nodeType !== Node.ELEMENT_NODE || (drop && node.matches(drop)) || node.matches("script, style")) return;
            if (node.namespaceURI === "http://www.w3.org/2000/svg") {
              for (const attribute of node.attributes) if (!names.includes(attribute.name)) say(attribute.value);
            }
            if (node.matches(".figure-plot")) say(node.getAttribute("aria-label"));
            if (node.matches("input[type=range]")) say(node.getAttribute("aria-valuetext"));
            if (node.matches("input[type=text]")) { say(node.placeholder); say(node.value); }
            if (node.matches("input[type=date]")) say(node.value);
            if (node.matches("input:checked")) say("ticked 1");
            if (node.matches("select")) say(node.selectedOptions[0]?.textContent);
            for (const child of node.childNodes) walk(child);
          };
          walk(element);
          return lines;
        }
        """;

    /// <summary>The lines of HTML, SVG included.</summary>
    public static IEnumerable<string> OfHtml(string html) => Of(new HtmlParser().ParseDocument("<body>" + html).Body!);

    /// <summary>The lines of a part of a page.</summary>
    public static IEnumerable<string> Of(INode node)
    {
        var said = node switch
        {
            IText text => Of([text.Data]),
            IElement { NamespaceUri: "http://www.w3.org/2000/svg" } drawing => Of(drawing.Attributes.Where(attribute => !Names.Contains(attribute.Name)).Select(attribute => attribute.Value)),
            _ => [],
        };
        return node is IElement { LocalName: "script" or "style" } ? [] : said.Concat(node.ChildNodes.SelectMany(Of));
    }

    /// <summary>Those texts that hold a digit.</summary>
    public static IEnumerable<string> Of(IEnumerable<string?> texts) => texts.Select(text => Blanks().Replace(text ?? "", " ").Trim()).Where(text => text.Any(char.IsAsciiDigit));

    [GeneratedRegex(@"\s+")]
    private static partial Regex Blanks();
}
