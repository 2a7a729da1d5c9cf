using System.Collections.Concurrent;
using System.Text;
using Microsoft.Playwright;
using SunLessons.App.Tests.Browser;
using SunLessons.Publishing.Tests.Support;
using UglyToad.PdfPig;
using UglyToad.PdfPig.Content;
using UglyToad.PdfPig.Core;

namespace SunLessons.Publishing.Tests.Browser;

/// <summary>A sheet as a browser prints it, page by page: size, how far down each page is filled, and its words without blanks.</summary>
/// <param name="Pages">The pages.</param>
/// <param name="Wide">How wide the sheet is before it is printed, in px of 1/96 inch.</param>
/// <param name="ShortestBlank">The shortest line to write a step on, in px; nothing where there is none.</param>
internal sealed record PrintedSheet(IReadOnlyList<PrintedPage> Pages, int Wide, double? ShortestBlank)
{
    /// <summary>170 mm at 96 px to the inch: what A4 leaves between the margins of the sheets; Letter leaves 176 mm.</summary>
    public const int TypeWidth = 643;

    // Each sheet is printed once for all tests.
    private static readonly ConcurrentDictionary<string, Lazy<Task<PrintedSheet>>> Printed = new();

    /// <summary>Prints a sheet.</summary>
    public static Task<PrintedSheet> OfAsync(PublishedLessons published, string file) =>
        Printed.GetOrAdd(file, _ => new Lazy<Task<PrintedSheet>>(() => PrintAsync(new Uri(Path.Combine(published.Folder, file))))).Value;

    private static async Task<PrintedSheet> PrintAsync(Uri sheet)
    {
        await using var browser = await BrowserPage.OpenAsync(TypeWidth);
        await browser.Page.GotoAsync(sheet.ToString());
        await browser.Page.EmulateMediaAsync(new() { Media = Media.Print });
        var wide = await browser.Page.EvaluateAsync<int>("() => document.documentElement.scrollWidth");
        var blanks = await browser.Page.EvaluateAsync<double[]>("() => [...document.querySelectorAll('.blank span')].map(blank => parseFloat(getComputedStyle(blank, '::after').width))");
        using var document = PdfDocument.Open(await browser.Page.PdfAsync(new() { PreferCSSPageSize = true }));
        return new PrintedSheet([.. document.GetPages().Select(PrintedPage.Of)], wide, blanks.Length == 0 ? null : blanks.Min());
    }
}

/// <summary>One printed page.</summary>
/// <param name="Width">In points of 1/72 inch.</param>
/// <param name="Height">In points of 1/72 inch.</param>
/// <param name="Filled">How far down the ink goes: 0 for an empty page, 1 for ink down to the lower margin.</param>
/// <param name="Words">The page's text without blanks and without its foot.</param>
internal sealed record PrintedPage(double Width, double Height, double Filled, string Words)
{
    // The margins that paper.css sets, in points.
    private const double Top = 14 * 72 / 25.4;
    private const double Bottom = 17 * 72 / 25.4;

    public static PrintedPage Of(Page page)
    {
        var letters = page.Letters.Where(letter => letter.StartBaseLine.Y > Bottom).ToArray();
        // The page's own white ground is no ink.
        var lines = page.Paths.Where(path => !path.IsClipping).Select(path => path.GetBoundingRectangle()).OfType<PdfRectangle>().Where(box => box.Height < 0.9 * (page.Height - Top - Bottom) && box.Bottom > Bottom - 1);
        var lowest = letters.Select(letter => letter.StartBaseLine.Y).Concat(lines.Select(box => box.Bottom)).DefaultIfEmpty(page.Height - Top).Min();
        return new PrintedPage(page.Width, page.Height, (page.Height - Top - lowest) / (page.Height - Top - Bottom), WithoutBlanks(string.Concat(letters.Select(letter => letter.Value))));
    }

    /// <summary>A text as a page has it: no blanks, and two letters where print joins them into one.</summary>
    public static string WithoutBlanks(string text) => string.Concat(text.Normalize(NormalizationForm.FormKC).Where(letter => !char.IsWhiteSpace(letter) && letter != '\u00ad'));
}
