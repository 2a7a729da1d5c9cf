using System.Net;

namespace SunLessons.Cells.Parts;

/// <summary>Small pieces of HTML. Everything a person or a formula wrote goes through <see cref="E"/>; there is no script, no event attribute and no style.</summary>
internal static class Html
{
    public static string E(string text) => WebUtility.HtmlEncode(text);

    public static string Question(string text) => $"<p class=\"sunlessons-question\">{E(text)}</p>";

    /// <summary>A sentence that a screen reader says when it changes, after it has finished what it was saying.</summary>
    public static string Status(string text, string kind) => text.Length == 0
        ? $"<p class=\"sunlessons-status\" role=\"status\"></p>"
        : $"<p class=\"sunlessons-status sunlessons-{kind}\" role=\"status\">{E(text)}</p>";

    public static string Table(string caption, IReadOnlyList<string> heads, IEnumerable<IReadOnlyList<string>> rows, bool headedRows)
    {
        var first = headedRows ? "<th scope=\"row\">" : "<td>";
        var firstEnd = headedRows ? "</th>" : "</td>";
        return $"<table class=\"sunlessons-table\" tabindex=\"0\"><caption>{E(caption)}</caption><thead><tr>"
            + string.Concat(heads.Select(h => $"<th scope=\"col\">{E(h)}</th>"))
            + "</tr></thead><tbody>"
            + string.Concat(rows.Select(r => $"<tr>{first}{E(r[0])}{firstEnd}" + string.Concat(r.Skip(1).Select(c => $"<td>{E(c)}</td>")) + "</tr>"))
            + "</tbody></table>";
    }
}
