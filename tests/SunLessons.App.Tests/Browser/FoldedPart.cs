using Microsoft.Playwright;

namespace SunLessons.App.Tests.Browser;

/// <summary>What is for the teacher, on a learner's page.</summary>
internal static class FoldedPart
{
    /// <summary>It is folded away, unfolds by keyboard, and stands open on paper.</summary>
    /// <param name="page">A lesson.</param>
    /// <param name="head">The words that stay.</param>
    /// <param name="inside">Words that are folded away.</param>
    public static async Task ExpectAsync(IPage page, string head, string inside)
    {
        var part = page.Locator("section[data-role=teacher] details");
        await Assertions.Expect(part).ToHaveCountAsync(1);
        var (summary, folded) = (part.Locator("summary"), part.GetByText(inside, new() { Exact = true }));
        await Assertions.Expect(summary).ToHaveTextAsync(head);
        await Assertions.Expect(folded).ToBeHiddenAsync();
        await page.EmulateMediaAsync(new() { Media = Media.Print });
        await Assertions.Expect(folded).ToBeVisibleAsync();
        await page.EmulateMediaAsync(new() { Media = Media.Screen });
        await Assertions.Expect(folded).ToBeHiddenAsync();
        await summary.FocusAsync();
        await page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(folded).ToBeVisibleAsync();
    }
}
