using System.Text.Json.Nodes;
using Microsoft.Playwright;
using SunLessons.App.Tests.Browser;
using SunLessons.Publishing.Tests.Support;

namespace SunLessons.Publishing.Tests.Browser;

/// <summary>A teacher opens a folder of saved answers.</summary>
[Trait("needs", "browser")]
public sealed class ClassTests(PublishedLessons published)
{
    [Fact]
    public async Task Predictions_wrong_paths_and_times_of_a_folder_are_counted_and_a_foreign_file_is_refused_by_name()
    {
        var folder = Directory.CreateTempSubdirectory("sunlessons-class-").FullName;
        try
        {
            Write(folder, "a", "11:30", "right", 1, 0, [], "2026-11-03T10:10:00Z", "2026-11-03T10:10:00Z");
            Write(folder, "b", "12:00", "right", 3, 1, ["W6"], "2026-11-03T10:10:00Z", "2026-11-03T10:14:00Z");
            Write(folder, "c", "12:00", "not-yet", 2, 2, ["W6", "W15"], "2026-11-03T10:10:00Z", null);
            await File.WriteAllTextAsync(Path.Combine(folder, "other.json"), "{\"format\":\"something\"}");

            await using var browser = await BrowserPage.OpenAsync();
            await browser.Page.GotoAsync(published.Address("class").ToString());
            await browser.Page.SetInputFilesAsync("#class-files", Directory.GetFiles(folder));
            var result = browser.Page.Locator("#class-result");
            await Assertions.Expect(result.Locator("[role=status]")).ToHaveTextAsync("3 files of answers were read.");
            await Assertions.Expect(result.Locator("[role=alert]")).ToContainTextAsync("other.json");
            await Assertions.Expect(result.Locator("h2")).ToHaveTextAsync("Your own noon");
            var predictions = result.Locator("table").First.Locator("tbody tr");
            Assert.Equal(["Vigo, 3 November: when is the shadow of a stick shortest?", "3", "12:00 × 2; 11:30 × 1"], await predictions.First.Locator("th, td").AllInnerTextsAsync());
            var check = await result.Locator("table").Nth(1).Locator("tbody tr").First.Locator("th, td").AllInnerTextsAsync();
            Assert.StartsWith("Ushuaia", check[0], StringComparison.Ordinal);
            // Three tried, two right, one of them at once; hints 0, 1, 2; times 0 and 4 minutes.
            Assert.Equal(["3", "2", "1", "1", "2.0 min"], check.Skip(1).Take(5));
            Assert.Equal("west taken as plus × 2; degrees left as degrees × 1", check[6]);
            Assert.Empty(browser.Foreign);
            Assert.Empty(browser.Problems);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static void Write(string folder, string name, string predicted, string state, int tries, int hints, string[] wrong, string firstAt, string? rightAt)
    {
        var record = new JsonObject
        {
            ["prediction:shortest-shadow"] = new JsonObject { ["answer"] = predicted, ["at"] = "2026-11-03T10:00:00Z" },
            ["check:ushuaia"] = new JsonObject
            {
                ["answer"] = "1",
                ["state"] = state,
                ["hints"] = hints,
                ["tries"] = tries,
                ["wrong"] = new JsonArray([.. wrong.Select(w => (JsonNode)w)]),
                ["first_at"] = firstAt,
                ["right_at"] = rightAt,
            },
        };
        File.WriteAllText(Path.Combine(folder, name + ".json"), new JsonObject { ["format"] = "sunlessons-answers", ["version"] = 1, ["lesson"] = "your-own-noon", ["record"] = record }.ToJsonString());
    }
}
