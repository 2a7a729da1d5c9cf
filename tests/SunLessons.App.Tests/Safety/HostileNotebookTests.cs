using System.Text.Json.Nodes;
using SunLessons.App.Tests.Browser;
using SunLessons.App.Tests.Support;

namespace SunLessons.App.Tests.Safety;

/// <summary>A notebook from a stranger, opened in a real browser: it may be read, and that is all.</summary>
[Trait("needs", "browser")]
public sealed class HostileNotebookTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("sunlessons-hostile-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public async Task Opening_it_runs_no_script_asks_no_other_machine_and_starts_no_cell()
    {
        var witness = Path.Combine(_folder, "witness.txt");
        var lessons = Path.Combine(_folder, "lessons");
        Write(lessons, witness);
        await using var pages = await RunningPages.StartAsync(Path.Combine(_folder, "learner"), "--lessons", lessons);
        await using var browser = await BrowserPage.OpenAsync();
        var page = browser.Page;
        await page.GotoAsync(pages.AddressWithToken.ToString());
        await page.GotoAsync(new Uri(pages.Root, "lesson/hostile").ToString());
        await page.WaitForSelectorAsync("text=The harmless sentence stays");
        await page.WaitForSelectorAsync("#start-lesson");
        await page.WaitForTimeoutAsync(1000);

        Assert.Equal("unharmed", await page.EvaluateAsync<string>("() => window.harmed ?? 'unharmed'"));
        Assert.Empty(browser.Foreign);
        Assert.Equal(0, await page.Locator("main script, main iframe, main object, main embed, main form[action], main base, main meta, main link").CountAsync());
        Assert.Equal(0, await page.EvaluateAsync<int>(
            "() => [...document.querySelectorAll('main *')].filter(e => [...e.attributes].some(a => /^on/i.test(a.name) || /^\\s*javascript:/i.test(a.value))).length"));
        Assert.False(File.Exists(witness), "A cell ran although nobody started the lesson.");
    }

    private static void Write(string lessons, string witness)
    {
        const string Attack = """
            <script>window.harmed='script'</script>
            <img src="http://evil.example/beacon.png" onerror="window.harmed='onerror'">
            <a href="javascript:window.harmed='link'">a link</a>
            <iframe src="http://evil.example/"></iframe>
            <svg onload="window.harmed='svg'"><script>window.harmed='svg script'</script><image href="http://evil.example/i.png"/></svg>
            <style>@import url(http://evil.example/s.css); body{background:url(http://evil.example/b.png)}</style>
            <form action="http://evil.example/"><input name="a"></form>
            <object data="http://evil.example/o"></object><base href="http://evil.example/"><meta http-equiv="refresh" content="0;url=http://evil.example/">
            """;
        var notebook = new JsonObject
        {
            ["nbformat"] = 4,
            ["nbformat_minor"] = 5,
            ["metadata"] = new JsonObject { ["sunlessons"] = new JsonObject { ["id"] = "hostile", ["title"] = "A hostile notebook", ["number"] = 1, ["minutes"] = 1 } },
            ["cells"] = new JsonArray(
                Cell("markdown", "m1", "# A stranger's notebook\n\nThe harmless sentence stays.\n\n" + Attack, null),
                Cell("code", "c1", $"System.IO.File.WriteAllText(@\"{witness}\", \"ran\");", new JsonArray(
                    Output(new JsonObject { ["text/html"] = Attack }),
                    Output(new JsonObject { ["image/svg+xml"] = "<svg xmlns='http://www.w3.org/2000/svg' onload=\"window.harmed='out svg'\"><a href=\"javascript:window.harmed='svg link'\"><text>x</text></a></svg>" }),
                    Output(new JsonObject { ["application/javascript"] = "window.harmed='stored script'" }),
                    Output(new JsonObject { ["application/vnd.jupyter.widget-view+json"] = new JsonObject { ["model_id"] = "x\"><script>window.harmed='id'</script>" } }),
                    new JsonObject { ["output_type"] = "stream", ["name"] = "stdout", ["text"] = "<script>window.harmed='stream'</script>" }))),
        };
        var folder = Directory.CreateDirectory(Path.Combine(lessons, "01-hostile")).FullName;
        File.WriteAllText(Path.Combine(folder, "lesson.ipynb"), notebook.ToJsonString());
    }

    private static JsonObject Cell(string type, string id, string source, JsonArray? outputs)
    {
        var cell = new JsonObject { ["cell_type"] = type, ["id"] = id, ["metadata"] = new JsonObject(), ["source"] = source };
        if (outputs is not null)
        {
            cell["outputs"] = outputs;
            cell["execution_count"] = 1;
        }

        return cell;
    }

    private static JsonObject Output(JsonObject data) => new() { ["output_type"] = "display_data", ["metadata"] = new JsonObject(), ["data"] = data };
}
