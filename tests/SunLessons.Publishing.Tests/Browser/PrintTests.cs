using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using Microsoft.Playwright;
using SunLessons.App.Tests.Browser;
using SunLessons.Publishing.Tests.Paper;
using SunLessons.Publishing.Tests.Support;

namespace SunLessons.Publishing.Tests.Browser;

/// <summary>Sheets printed by a browser.</summary>
[Trait("needs", "browser")]
public sealed partial class PrintTests(PublishedLessons published)
{
    // 170 mm at 96 px to the inch: what A4 leaves between the margins of the sheets; Letter leaves 176 mm.
    private const int TypeWidth = 643;

    [Theory]
    [MemberData(nameof(SheetTests.All), MemberType = typeof(SheetTests))]
    public async Task A_sheet_prints_on_its_paper_and_nothing_is_wider_than_the_page(string file)
    {
        await using var browser = await BrowserPage.OpenAsync(TypeWidth);
        await browser.Page.GotoAsync(new Uri(Path.Combine(published.Folder, file)).ToString());
        await browser.Page.EmulateMediaAsync(new() { Media = Media.Print });
        Assert.InRange(await browser.Page.EvaluateAsync<int>("() => document.documentElement.scrollWidth"), 1, TypeWidth);
        var printed = Encoding.Latin1.GetString(await browser.Page.PdfAsync(new() { PreferCSSPageSize = true }));
        var pages = PageSize().Matches(printed);
        Assert.NotEmpty(pages);

        // Points of 1/72 inch: A4 is 210 mm by 297 mm (ISO 216), Letter 8.5 by 11 inches. Chromium rounds to whole pixels, 0.75 points.
        var (width, height) = file.EndsWith("-a4.html", StringComparison.Ordinal) ? (595.28, 841.89) : (612.0, 792.0);
        Assert.All(pages, page =>
        {
            Assert.InRange(double.Parse(page.Groups[1].Value, CultureInfo.InvariantCulture), width - 0.75, width + 0.75);
            Assert.InRange(double.Parse(page.Groups[2].Value, CultureInfo.InvariantCulture), height - 0.75, height + 0.75);
        });
    }

    [GeneratedRegex(@"/MediaBox\s*\[\s*0\s+0\s+([\d.]+)\s+([\d.]+)\s*\]")]
    private static partial Regex PageSize();
}
