using System.Net;
using System.Text;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;

namespace SunLessons.Cells.Running;

/// <summary>
/// A cell of HTML or SVG. Its first character that is not blank is "&lt;", with which no C# can begin. Each
/// <c>{{ expression }}</c> in it is replaced by the value of that C# expression, escaped for HTML.
/// </summary>
public sealed partial class MarkupCell
{
    private readonly List<(string Text, string? Expression)> _parts = [];

    private MarkupCell(string source, bool svg)
    {
        IsSvg = svg;
        var from = 0;
        foreach (Match place in Places().Matches(source))
        {
            _parts.Add((source[from..place.Index], null));
            _parts.Add(("", place.Groups[1].Value.Trim()));
            from = place.Index + place.Length;
        }

        _parts.Add((source[from..], null));
    }

    /// <summary>Whether it is a drawing; otherwise HTML.</summary>
    public bool IsSvg { get; }

    /// <summary>The MIME type of what it shows.</summary>
    public string MediaType => IsSvg ? "image/svg+xml" : "text/html";

    /// <summary>The cell's expressions, in order.</summary>
    public IReadOnlyList<string> Expressions => [.. _parts.Where(p => p.Expression is not null).Select(p => p.Expression!)];

    /// <summary>A markup cell; null when the source is C#.</summary>
    /// <param name="source">The cell's source.</param>
    /// <param name="language">"html" or "svg" when the notebook says so; anything else lets the source speak.</param>
    public static MarkupCell? Read(string source, string language)
    {
        if (language is "html" or "svg")
        {
            return new MarkupCell(source, language == "svg");
        }

        return source.TrimStart() is ['<', ..] start
            ? new MarkupCell(source, Root().Match(start) is { Success: true } root && root.Groups[1].Value.Equals("svg", StringComparison.OrdinalIgnoreCase))
            : null;
    }

    /// <summary>C# that gives the texts of all expressions, one line each, so that an error in the third stands on line 3.</summary>
    public string Script() =>
        "new string[] {\n" + string.Join("\n", Expressions.Select(e => $"global::SunLessons.Cells.Running.MarkupText.Of((object?)({e.ReplaceLineEndings(" ")})),")) + "\n}";

    /// <summary>The cell with values in their places.</summary>
    /// <param name="values">One text an expression.</param>
    public string Fill(IReadOnlyList<string> values)
    {
        var text = new StringBuilder();
        var next = 0;
        foreach (var (piece, expression) in _parts)
        {
            text.Append(expression is null ? piece : WebUtility.HtmlEncode(values[next++]));
        }

        return text.ToString();
    }

    /// <summary>What the cell shows, by MIME type: the filled cell, and its words for front ends that draw none.</summary>
    /// <param name="values">One text an expression.</param>
    public IReadOnlyDictionary<string, JsonNode> Output(IReadOnlyList<string> values)
    {
        var text = Fill(values);
        return new Dictionary<string, JsonNode> { [MediaType] = text, ["text/plain"] = PlainText(text) };
    }

    /// <summary>The words of a markup text without its tags, for front ends that draw none.</summary>
    public static string PlainText(string markup)
    {
        var bare = WebUtility.HtmlDecode(Tags().Replace(Unspoken().Replace(markup, " "), " "));
        return Blanks().Replace(bare, " ").Trim();
    }

    [GeneratedRegex(@"\{\{(.*?)\}\}", RegexOptions.Singleline)]
    private static partial Regex Places();

    [GeneratedRegex(@"^(?:<\?.*?\?>|<!--.*?-->|<![^>]*>|\s)*<([A-Za-z]+)", RegexOptions.Singleline)]
    private static partial Regex Root();

    [GeneratedRegex(@"<(script|style)\b.*?</\1\s*>|<!--.*?-->", RegexOptions.Singleline | RegexOptions.IgnoreCase)]
    private static partial Regex Unspoken();

    [GeneratedRegex("<[^>]*>")]
    private static partial Regex Tags();

    [GeneratedRegex(@"\s+")]
    private static partial Regex Blanks();
}
