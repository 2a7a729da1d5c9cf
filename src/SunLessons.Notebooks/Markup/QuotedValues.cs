using System.Net;
using System.Text.RegularExpressions;

namespace SunLessons.Notebooks.Markup;

/// <summary>Puts the values that cells gave into the prose that quotes them.</summary>
public static partial class QuotedValues
{
    /// <summary>
    /// Replaces the text of each quoted value in safe HTML by what its cell gave; a value that no cell has given yet keeps the text
    /// that the lesson carries.
    /// </summary>
    public static string Fill(string safeHtml, IReadOnlyDictionary<string, string> values) => values.Count == 0
        ? safeHtml
        : Quoted().Replace(safeHtml, match => values.TryGetValue(WebUtility.HtmlDecode(match.Groups["name"].Value), out var text)
            ? $"{match.Groups["open"].Value}{WebUtility.HtmlEncode(text)}</span>"
            : match.Value);

    [GeneratedRegex("""(?<open><span class="value" data-value="(?<name>[^"]+)">)[^<]*</span>""")]
    private static partial Regex Quoted();
}
