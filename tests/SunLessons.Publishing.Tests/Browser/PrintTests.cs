using AngleSharp.Dom;
using SunLessons.Publishing.Tests.Paper;
using SunLessons.Publishing.Tests.Support;

namespace SunLessons.Publishing.Tests.Browser;

/// <summary>Sheets printed by a browser.</summary>
[Trait("needs", "browser")]
public sealed class PrintTests(PublishedLessons published)
{
    // Pages that may be less than half full, with the reason: sheet and page. There is none.
    private static readonly Dictionary<(string File, int Page), string> EmptyForAReason = [];

    [Theory]
    [MemberData(nameof(SheetTests.All), MemberType = typeof(SheetTests))]
    public async Task A_sheet_prints_on_its_paper_and_nothing_is_wider_than_the_page(string file)
    {
        var sheet = await PrintedSheet.OfAsync(published, file);
        Assert.InRange(sheet.Wide, 1, PrintedSheet.TypeWidth);
        Assert.NotEmpty(sheet.Pages);

        // Points of 1/72 inch: A4 is 210 mm by 297 mm (ISO 216), Letter 8.5 by 11 inches. Chromium rounds to whole pixels, 0.75 points.
        var (width, height) = file.EndsWith("-a4.html", StringComparison.Ordinal) ? (595.28, 841.89) : (612.0, 792.0);
        Assert.All(sheet.Pages, page =>
        {
            Assert.InRange(page.Width, width - 0.75, width + 0.75);
            Assert.InRange(page.Height, height - 0.75, height + 0.75);
        });
    }

    [Theory]
    [MemberData(nameof(SheetTests.All), MemberType = typeof(SheetTests))]
    public async Task No_page_is_less_than_half_full_and_no_last_page_nearly_empty(string file)
    {
        var pages = (await PrintedSheet.OfAsync(published, file)).Pages;
        for (var i = 0; i < pages.Count; i++)
        {
            var least = i == pages.Count - 1 ? 0.2 : 0.5;
            Assert.True(pages[i].Filled >= least || EmptyForAReason.ContainsKey((file, i + 1)), $"Page {i + 1} of {pages.Count} is filled to {pages[i].Filled:P0}.");
        }
    }

    [Theory]
    [MemberData(nameof(SheetTests.All), MemberType = typeof(SheetTests))]
    public async Task Figures_stand_whole_on_a_page_with_their_sentence_and_no_heading_stands_alone_at_its_foot(string file)
    {
        var pages = (await PrintedSheet.OfAsync(published, file)).Pages;
        var words = string.Concat(pages.Select(page => page.Words));
        int PageAt(int at) => pages.Index().First(page => (at -= page.Item.Words.Length) < 0).Index + 1;
        var from = 0;
        var (figures, headings) = (0, 0);
        foreach (var part in Html.Read(published, file).QuerySelectorAll("main :is(h1, h2, h3, figure)"))
        {
            var figure = part.LocalName == "figure";
            // A drawing's words are printed in the order in which they stand in it, those with a white rim twice, and its sentence after them.
            string[] texts = [.. figure ? part.QuerySelectorAll("svg text, figcaption").Select(text => PrintedPage.WithoutBlanks(text.TextContent)) : [PrintedPage.WithoutBlanks(part.TextContent)]];
            var text = string.Concat(texts.Take(2));
            var first = words.IndexOf(text, from, StringComparison.Ordinal);
            Assert.True(first >= 0, $"\"{text}\" is not printed.");
            from = first + text.Length;
            foreach (var next in texts.Skip(2))
            {
                var at = words.IndexOf(next, from, StringComparison.Ordinal);
                Assert.True(at >= 0, $"\"{next}\" is not printed after \"{text}\".");
                from = at + next.Length;
            }

            // After a heading the next word, too, is on its page.
            var last = figure ? from - 1 : from;
            Assert.True(PageAt(first) == PageAt(last), $"\"{text}\" stands on page {PageAt(first)}, and what belongs to it on page {PageAt(last)}.");
            _ = figure ? figures++ : headings++;
        }

        Assert.True(headings >= 5 && (figures >= 3 || file.Contains(".teacher-", StringComparison.Ordinal)), $"{headings} headings, {figures} figures");
    }

    [Theory]
    [MemberData(nameof(SheetTests.Learners), MemberType = typeof(SheetTests))]
    public async Task Every_step_left_blank_has_a_line_that_a_number_can_be_written_on(string file)
    {
        // 40 mm at 96 px to the inch: a sign, four digits and a unit by hand.
        Assert.True((await PrintedSheet.OfAsync(published, file)).ShortestBlank >= 151);
    }
}
