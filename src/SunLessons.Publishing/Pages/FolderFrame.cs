using System.Net;
using SunLessons.Words;

namespace SunLessons.Publishing.Pages;

/// <summary>Pages in a folder, with what they share beside them: for a web host or a memory stick.</summary>
/// <param name="words">The language.</param>
/// <param name="hasIndex">Whether there is a list of lessons beside the page.</param>
internal sealed class FolderFrame(WordTable words, bool hasIndex = true) : PageFrame
{
    public override string Shared => "shared/";

    protected override WordTable Words => words;

    // "file:" because a page from a disk has no origin of its own that 'self' could mean.
    protected override string Policy => "default-src 'none'; script-src 'self' file: blob: 'wasm-unsafe-eval'; worker-src 'self' blob:; style-src 'self' file:; font-src 'self' file:; img-src 'self' file: data:; manifest-src 'self'; connect-src 'self'";

    protected override string Head => $"<link rel=\"stylesheet\" href=\"{Shared}sunlessons.css\" />\n<link rel=\"stylesheet\" href=\"{Shared}page.css\" />\n<link rel=\"icon\" href=\"{Shared}icon.svg\" type=\"image/svg+xml\" />";

    protected override string Home => !hasIndex ? "" : $"<nav><a href=\"{IndexPage.FileIn(words)}\">{WebUtility.HtmlEncode(words["page.home"])}</a></nav>";

    // The player announces itself to the page's script, which therefore comes first.
    protected override string Scripts(bool computes) =>
        $"<script src=\"{Shared}page.js\"></script>" + (computes ? $"\n<script src=\"{Shared}player.js\" async></script>" : "");

    protected override string Offline => "offline.js";
}
