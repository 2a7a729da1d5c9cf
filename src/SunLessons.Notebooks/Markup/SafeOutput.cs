using System.Net;

namespace SunLessons.Notebooks.Markup;

/// <summary>Stored outputs of cells as HTML that is safe to put into a page.</summary>
public static class SafeOutput
{
    /// <summary>
    /// The safe HTML of one output. Of a display or a result the richest type that we show without running anything is
    /// taken: SVG, then HTML, then markdown, then PNG and JPEG pictures, then plain text. Scripts and unknown types are
    /// never shown. Empty when the output has nothing to show.
    /// </summary>
    /// <param name="output">The output.</param>
    /// <param name="idPrefix">Set before every id; take one that differs from output to output.</param>
    public static string ToHtml(NotebookOutput output, string idPrefix) => output.Kind switch
    {
        OutputKind.Stream => Plain(output.StreamText, output.StreamName == "stderr" ? "stream stream-error" : "stream"),
        OutputKind.Error => Plain($"{output.ErrorName}: {output.ErrorMessage}", "error"),
        OutputKind.Display or OutputKind.Result => Rich(output, idPrefix),
        _ => "",
    };

    private static string Rich(NotebookOutput output, string idPrefix)
    {
        if (output.MediaText("image/svg+xml") is string svg && SafeHtml.CleanSvg(svg, idPrefix) is { Length: > 0 } drawing)
        {
            return drawing;
        }

        if (output.MediaText("text/html") is string html)
        {
            return SafeHtml.Clean(html, idPrefix);
        }

        if (output.MediaText("text/markdown") is string markdown)
        {
            return LessonMarkup.ToHtml(markdown, idPrefix);
        }

        string plain = output.MediaText("text/plain") ?? "";
        foreach (string type in (string[])["image/png", "image/jpeg"])
        {
            if (output.MediaText(type) is string picture)
            {
                return SafeHtml.Clean($"<img src=\"data:{type};base64,{WebUtility.HtmlEncode(picture.Trim())}\" alt=\"{WebUtility.HtmlEncode(plain)}\">", idPrefix);
            }
        }

        return plain.Length > 0 ? Plain(plain, "plain") : "";
    }

    private static string Plain(string text, string kind) => $"<pre class=\"{kind}\">{WebUtility.HtmlEncode(text)}</pre>";
}
