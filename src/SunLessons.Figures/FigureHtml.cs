using System.Net;

namespace SunLessons.Figures;

/// <summary>A figure as HTML that needs nothing from outside: the drawing, its sentence, and its numbers as a table to unfold.</summary>
public static class FigureHtml
{
    /// <summary>Writes the whole: drawing, sentence, table.</summary>
    public static string Write(Figure figure, SvgOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(figure);
        return $"<figure class=\"sunlessons-figure\">{SvgWriter.Write(figure, options)}<figcaption>{WebUtility.HtmlEncode(figure.Summary)}</figcaption>"
            + $"<details><summary>{WebUtility.HtmlEncode(Worded($"The numbers as a table"))}</summary>{figure.Table.ToHtml()}</details></figure>";
    }
}
