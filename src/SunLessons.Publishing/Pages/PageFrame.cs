using System.Net;
using System.Security.Cryptography;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using SunLessons.Words;

namespace SunLessons.Publishing.Pages;

/// <summary>What stands around every published page: head, masthead, footing, and how it finds what all pages share.</summary>
internal abstract class PageFrame
{
    /// <summary>The address of the shared folder, seen from a page.</summary>
    public abstract string Shared { get; }

    /// <summary>Whether nothing lies beside the page that a link could lead to.</summary>
    public bool StandsAlone => Shared.Length == 0;

    protected abstract WordTable Words { get; }

    protected abstract string Policy { get; }

    /// <summary>Styles and icon, for the head.</summary>
    protected abstract string Head { get; }

    /// <summary>The link to the list of lessons; empty where there is none.</summary>
    protected abstract string Home { get; }

    /// <summary>Scripts at the end of a page.</summary>
    /// <param name="computes">Whether it is a page that computes, and so needs the player.</param>
    protected abstract string Scripts(bool computes);

    /// <summary>The worker that keeps the pages for times without a network; empty where pages are single files.</summary>
    protected abstract string Offline { get; }

    /// <summary>Data that a script of the page reads; it is never run.</summary>
    public static string DataBlock(string id, JsonNode data) =>
        $"<script type=\"application/json\" id=\"{id}\">{data.ToJsonString(Plain).Replace("<", "\\u003c", StringComparison.Ordinal)}</script>\n";

    private static readonly JsonSerializerOptions Plain = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>The words that the page's script says.</summary>
    public static string WordBlock(WordTable words, params string[] prefixes) =>
        DataBlock("lesson-words", new JsonObject(words.Under(prefixes).Select(pair => KeyValuePair.Create(pair.Key, (JsonNode?)pair.Value))));

    /// <summary>The name of a page that stands in several languages: <c>talk</c> in English, <c>talk.es</c> in Spanish.</summary>
    public static string NameIn(string name, WordTable words) => words.Language == WordTable.First ? name : $"{name}.{words.Language}";

    /// <summary>A link to a page in another language, in that language.</summary>
    public static string LanguageLink(string file, string text, WordTable words) =>
        $"<p><a href=\"{file}\" lang=\"{words.Language}\" hreflang=\"{words.Language}\">{WebUtility.HtmlEncode(words["language.name"])}: {WebUtility.HtmlEncode(text)}</a></p>\n";

    /// <summary>A whole page.</summary>
    /// <param name="title">Its title, as text.</param>
    /// <param name="body">Its content.</param>
    /// <param name="data">Data blocks for the page's script.</param>
    /// <param name="computes">Whether it is a page that computes, and so needs the player.</param>
    public string Page(string title, string body, string data = "", bool computes = false) => $"""
        <!DOCTYPE html>
        <html lang="{Words.Language}"{(Offline.Length > 0 ? $" data-offline=\"{Offline}\"" : "")}>
        <head>
        <meta charset="utf-8" />
        <meta name="viewport" content="width=device-width, initial-scale=1" />
        <meta http-equiv="Content-Security-Policy" content="{Policy}" />
        <title>{WebUtility.HtmlEncode(title)} – SunLessons</title>
        {Head}
        </head>
        <body>
        <a class="skip" href="#content">{WebUtility.HtmlEncode(Words["page.skip"])}</a>
        <header class="masthead"><span class="brand">SunLessons</span>{Home}</header>
        <main id="content">
        {body}
        </main>
        <footer class="footing">{WebUtility.HtmlEncode(Words["page.footing"])}</footer>
        {data}{Scripts(computes)}
        </body>
        </html>

        """;

    /// <summary>The script of lesson pages: it carries the worker's, because a page from a disk may start no worker from a file.</summary>
    public static string PageScript { get; } = string.Join('\n', ((string[])["packed.js", "worker.js", "parts.js", "page.js", "class.js"]).Select(Asset.Text));

    /// <summary>How a content policy names a script or style that stands in the page.</summary>
    public static string HashOf(string text) => "'sha256-" + Convert.ToBase64String(SHA256.HashData(Encoding.UTF8.GetBytes(text))) + "'";
}
