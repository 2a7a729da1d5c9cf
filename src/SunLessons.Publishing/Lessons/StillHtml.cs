using System.Net;
using SunLessons.Cells.Hosting;

namespace SunLessons.Publishing.Lessons;

/// <summary>Outputs that stand still: what a page shows before its script runs, and all that it shows without.</summary>
internal static class StillHtml
{
    /// <summary>Everything that a cell showed, one under the other.</summary>
    public static string Of(LessonRun run, string cell) => string.Concat(run.Outputs(cell).Select(output => Output(run, output)));

    private static string Output(LessonRun run, StillOutput output)
    {
        if (output.Root is { } root)
        {
            return StillWidget.Html(root.Id, id => LessonRun.Find(run.Host, id) is var widget ? (widget.Model, widget.State) : default);
        }

        return output.Bundle.TryGetValue("image/svg+xml", out var svg) ? (string)svg!
            : output.Bundle.TryGetValue("text/html", out var html) ? (string)html!
            : output.Bundle.TryGetValue("text/plain", out var plain) ? $"<pre class=\"plain\">{E((string)plain!)}</pre>"
            : "";
    }

    private static string E(string text) => WebUtility.HtmlEncode(text);
}
