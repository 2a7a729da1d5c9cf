using SunLessons.Publishing.Pages;

namespace SunLessons.Publishing.Paper;

/// <summary>How sheets look: one style sheet for all, shared beside the pages or inside each of them, and the page rules of each sheet.</summary>
/// <param name="inside">Whether each sheet carries everything itself; otherwise it finds style and font in the shared folder.</param>
internal sealed class PaperStyle(bool inside)
{
    private const string Name = "paper.css";
    private const string Font = "fonts/stix-two-math.woff2";

    // One font of half a megabyte, in the pages only where nothing may lie beside them.
    private static readonly Lazy<string> Inside = new(() =>
        Asset.Text(Name).Replace(Font, "data:font/woff2;base64," + Convert.ToBase64String(Asset.Bytes("stix-two-math.woff2")), StringComparison.Ordinal));

    /// <summary>What goes to the shared folder; the font is there already.</summary>
    public void AddTo(PageFiles files)
    {
        if (!inside)
        {
            files.Add("shared/" + Name, Asset.Text(Name));
        }
    }

    /// <summary>The styles of a sheet, and the policy that lets it use these and nothing else.</summary>
    /// <param name="size">Its paper.</param>
    /// <param name="footing">What stands at the foot of every page, beside its number.</param>
    public string Head(PaperSize size, string footing)
    {
        var pages = $"@page {{ size: {size.Suffix}; @bottom-left {{ content: \"{Escaped(footing)}\"; }} @bottom-right {{ content: counter(page) \" / \" counter(pages); }} }}";
        var (policy, style) = inside
            ? ($"style-src {PageFrame.HashOf(Inside.Value)} {PageFrame.HashOf(pages)}; font-src data:", $"<style>{Inside.Value}</style>")
            : ($"style-src 'self' file: {PageFrame.HashOf(pages)}; font-src 'self' file:", $"<link rel=\"stylesheet\" href=\"shared/{Name}\" />");
        return $"<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; {policy}\" />\n{style}\n<style>{pages}</style>";
    }

    private static string Escaped(string text) => text.Replace("\\", "\\\\", StringComparison.Ordinal).Replace("\"", "\\\"", StringComparison.Ordinal).Replace("<", "\\3c ", StringComparison.Ordinal);
}
