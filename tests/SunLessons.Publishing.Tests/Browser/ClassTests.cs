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

    [Theory]
    [InlineData("class", "Your own noon", "3 files of answers were read.", "In the eastern town × 2; In the western town × 1", "Daylight time moves it by one hour. × 2", "2.0 min", "west taken as plus and degrees left as degrees × 2", "a degree taken as long as on the equator × 1")]
    [InlineData("class.es", "Tu propio mediodía", "Se han leído 3 archivos de respuestas.", "En la ciudad oriental × 2; En la ciudad occidental × 1", "El horario de verano lo mueve una hora. × 2", "2,0 min", "el oeste tomado como positivo y los grados dejados en grados × 2", "un grado tomado tan largo como en el ecuador × 1")]
    public async Task Answers_to_a_translated_lesson_are_counted_with_those_to_the_lesson(string page, string title, string read, string zones, string clocks, string minutes, string pair, string own)
    {
        var folder = Directory.CreateTempSubdirectory("sunlessons-class-").FullName;
        try
        {
            Write(folder, "a", "11:30", "right", 3, 0, ["W6+W15"], "2026-11-03T10:10:00Z", "2026-11-03T10:12:00Z", more: record =>
            {
                record["prediction:same-zone"] = Guess("In the eastern town");
                record["check:same-clock"] = Tried("Daylight time moves it by one hour.");
            });
            Write(folder, "b", "12:00", "not-yet", 1, 0, [], "2026-11-03T10:10:00Z", null, more: record => record["prediction:same-zone"] = Guess("In the western town"));
            Write(folder, "c", "12:00", "not-yet", 2, 2, ["W6+W15"], "2026-11-03T10:10:00Z", null, "your-own-noon-es", record =>
            {
                record["prediction:same-zone"] = Guess("En la ciudad oriental");
                record["check:same-clock"] = Tried("El horario de verano lo mueve una hora.");
                record["check:ten-kilometres"] = Tried("equators-degree");
            });

            await using var browser = await BrowserPage.OpenAsync();
            await browser.Page.GotoAsync(published.Address(page).ToString());
            await browser.Page.SetInputFilesAsync("#class-files", Directory.GetFiles(folder));
            var result = browser.Page.Locator("#class-result");
            await Assertions.Expect(result.Locator("[role=status]")).ToHaveTextAsync(read);
            await Assertions.Expect(result.Locator("h2")).ToHaveTextAsync(title);
            var rows = await result.Locator("tbody tr").AllInnerTextsAsync();
            Assert.Contains("12:00 × 2; 11:30 × 1", rows[0], StringComparison.Ordinal);
            Assert.Contains(zones, rows[1], StringComparison.Ordinal);
            var ushuaia = Assert.Single(rows, row => row.StartsWith("Ushuaia", StringComparison.Ordinal));
            Assert.EndsWith(pair, ushuaia, StringComparison.Ordinal);
            Assert.Contains(minutes, ushuaia, StringComparison.Ordinal);
            Assert.Single(rows, row => row.EndsWith(clocks, StringComparison.Ordinal));
            Assert.Single(rows, row => row.EndsWith(own, StringComparison.Ordinal));
            Assert.Empty(browser.Problems);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static JsonObject Guess(string answer) => new() { ["answer"] = answer, ["at"] = "2026-11-03T10:00:00Z" };

    private static JsonObject Tried(string wrong) => new() { ["answer"] = "x", ["state"] = "not-yet", ["hints"] = 0, ["tries"] = 1, ["wrong"] = new JsonArray(wrong), ["first_at"] = "2026-11-03T10:10:00Z", ["right_at"] = null };

    private static void Write(string folder, string name, string predicted, string state, int tries, int hints, string[] wrong, string firstAt, string? rightAt, string lesson = "your-own-noon", Action<JsonObject>? more = null)
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
        more?.Invoke(record);
        File.WriteAllText(Path.Combine(folder, name + ".json"), new JsonObject { ["format"] = "sunlessons-answers", ["version"] = 1, ["lesson"] = lesson, ["record"] = record }.ToJsonString());
    }
}
