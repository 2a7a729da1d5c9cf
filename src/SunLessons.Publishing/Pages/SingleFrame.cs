using SunLessons.Words;

namespace SunLessons.Publishing.Pages;

/// <summary>One file that holds everything: to be mailed, or copied anywhere.</summary>
/// <param name="words">The language.</param>
/// <param name="player">The folder of the packed player.</param>
internal sealed class SingleFrame(WordTable words, string player) : PageFrame
{
    private static readonly string Sheet = StyleWithoutFont(Asset.Text("sunlessons.css")) + Asset.Text("page.css");

    public override string Shared => "";

    protected override WordTable Words => words;

    protected override string Policy => $"default-src 'none'; script-src blob: 'wasm-unsafe-eval' {HashOf(PageScript)}; worker-src blob:; style-src {HashOf(Sheet)}; font-src data:; img-src data:";

    protected override string Head => $"<style>{Sheet}</style>";

    protected override string Home => "";

    // The packs are data, which the page's script looks for.
    protected override string Scripts(bool computes) => (computes ? Pack("player") + Pack("compiler") : "") + $"<script>{PageScript}</script>";

    protected override string Offline => "";

    private static string StyleWithoutFont(string sheet) =>
        sheet.Replace("fonts/stix-two-math.woff2", "data:font/woff2;base64," + Convert.ToBase64String(Asset.Bytes("stix-two-math.woff2")), StringComparison.Ordinal);

    // The same text that a folder's script hands over, as data.
    private string Pack(string name)
    {
        var script = File.ReadAllText(Path.Combine(player, name + ".js"));
        var from = script.IndexOf('{', StringComparison.Ordinal);
        return $"<script type=\"application/json\" id=\"pack-{name}\">{script[from..(script.LastIndexOf('}') + 1)]}</script>\n";
    }
}
