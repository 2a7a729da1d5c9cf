using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;
using SunLessons.App.Tests.Support;

namespace SunLessons.App.Tests.Browser;

/// <summary>A lesson in Spanish stands in a Spanish page: driven as a learner would, in a real browser against the real program.</summary>
[Trait("needs", "browser")]
public sealed partial class SpanishLessonTests : DrivenPages
{
    private static readonly LessonPage.Phrases Spanish = new("La lección está en marcha", "Anotar mi predicción", "Predijiste", "Comprobar mi respuesta");

    [Fact]
    public async Task A_learner_predicts_moves_and_answers_in_Spanish()
    {
        var page = Browser.Page;
        var lesson = await LessonPage.OpenAsync(page, Pages, "your-own-noon-es", Spanish);
        await ExpectSpanishAsync("not started");
        await lesson.StartAsync();
        await Assertions.Expect(lesson.Slider).ToBeDisabledAsync();
        await lesson.PredictAsync("12:30");
        await Assertions.Expect(lesson.Slider).ToBeEnabledAsync();
        await lesson.WaitForSummaryAsync("La corrección por longitud es +94,9 min");

        await page.GetByRole(AriaRole.Button, new() { NameRegex = new("un paso más") }).First.ClickAsync();
        await lesson.WaitForSummaryAsync("+93,9 min");
        Assert.Equal("0,25", await lesson.NumberField.InputValueAsync());
        await lesson.NumberField.FillAsync("-1,5");
        await lesson.NumberField.PressAsync("Enter");
        await lesson.WaitForSummaryAsync("+100,9 min");
        await lesson.NumberField.FillAsync("lejos");
        await lesson.NumberField.PressAsync("Enter");
        await page.WaitForSelectorAsync("text=«lejos» no es un número; para Movida al este (+) o al oeste (−)");

        await lesson.AnswerAsync("ushuaia", "-93,2");
        await page.WaitForSelectorAsync("[data-key=ushuaia] >> text=Todavía no: más y menos cambiados");
        await lesson.AnswerAsync("ushuaia", "93,2");
        await page.WaitForSelectorAsync("[data-key=ushuaia] >> text=Bien");
        await lesson.AnswerAsync("kathmandu", "mucho");
        await page.WaitForSelectorAsync("[data-key=kathmandu] >> text=«mucho» no se puede leer");

        await page.ClickAsync("text=Mostrar los números en una tabla");
        await ExpectSpanishAsync("live");
        var download = await page.RunAndWaitForDownloadAsync(() => page.ClickAsync("text=Guardar mis respuestas"));
        var answers = JsonNode.Parse(await File.ReadAllTextAsync(await download.PathAsync()))!;
        Assert.Equal(("your-own-noon-es", "es", "12:30"), ((string?)answers["lesson"], (string?)answers["language"], (string?)answers["record"]!["prediction:shortest-shadow"]!["answer"]));
        Assert.Empty(Browser.Foreign);
        Assert.Empty(Browser.Problems);
    }

    [Fact]
    public async Task The_place_is_shown_and_typed_as_Spanish_writes_it()
    {
        var page = Browser.Page;
        await LessonPage.OpenAsync(page, Pages, "your-own-noon-es", Spanish);
        await Assertions.Expect(page.Locator(".place-line")).ToContainTextAsync("Vigo, 42,24° N 8,72° O, zona horaria Europe/Madrid");
        await page.ClickAsync("text=Cambiar el lugar");
        await page.FillAsync("#place-name", "La escuela");
        await page.FillAsync("#place-latitude", "91,5");
        await page.FillAsync("#place-longitude", "70,25 O");
        await page.FillAsync("#place-zone", "America/Santiago");
        await page.ClickAsync("text=Usar este lugar");
        await page.WaitForSelectorAsync("[role=alert] >> text=La latitud 91,5 está fuera de");
        await page.FillAsync("#place-latitude", "33,5 S");
        await page.ClickAsync("text=Usar este lugar");
        await Assertions.Expect(page.Locator(".place-line")).ToContainTextAsync("La escuela, 33,5° S 70,25° O, zona horaria America/Santiago");
    }

    [Fact]
    public async Task A_kernel_that_is_gone_and_the_list_of_lessons_are_told_in_Spanish()
    {
        var page = Browser.Page;
        var lesson = await LessonPage.OpenAsync(page, Pages, "your-own-noon-es", Spanish);
        await lesson.StartAsync();
        foreach (var kernel in ChildProcesses.Of(Pages.Process.Id))
        {
            kernel.Kill();
        }

        await Assertions.Expect(page.Locator(".lesson-bar [role=alert]")).ToContainTextAsync("El proceso del núcleo ha terminado por sí solo (código de salida 137); sus variables se han perdido. Tus respuestas y tus celdas están guardadas. Empieza otra vez la lección para seguir.");
        await Assertions.Expect(page.Locator("#start-lesson")).ToHaveTextAsync("Empezar otra vez la lección");

        await page.GetByRole(AriaRole.Navigation).GetByText("Lecciones").ClickAsync();
        await page.WaitForSelectorAsync("h1:has-text('Por qué un reloj de sol no coincide con tu reloj')");
        await ExpectSpanishAsync("list of lessons");

        // A lesson that is not translated stands in the list in English, and says so; its page is an English one again.
        await page.ClickAsync("a[lang='en-GB'][href='lesson/a-dial-that-moved-house']");
        await page.WaitForSelectorAsync("#start-lesson:has-text('Start the lesson')");
        await page.WaitForFunctionAsync("() => document.documentElement.lang === 'en-GB'");
    }

    [Fact]
    public async Task A_program_that_has_ended_is_told_in_Spanish()
    {
        var page = Browser.Page;
        await LessonPage.OpenAsync(page, Pages, "your-own-noon-es", Spanish);
        await Pages.KillAsync();
        await Assertions.Expect(page.Locator(".lost p:visible")).ToHaveTextAsync(new Regex("El programa no responde"), new() { Timeout = 60_000 });
        await Assertions.Expect(page.GetByText("Attempting")).ToHaveCountAsync(0);
    }

    /// <summary>The document says that it is Spanish, axe-core finds nothing, and none of the pages' usual English words is left.</summary>
    private async Task ExpectSpanishAsync(string where)
    {
        var page = Browser.Page;
        await page.WaitForFunctionAsync("() => document.documentElement.lang === 'es'");
        var result = await page.RunAxe();
        Assert.True(result.Violations.Length == 0, where + ": " + string.Join("; ", result.Violations.Select(v => $"{v.Id} ({v.Help}) at {string.Join(", ", v.Nodes.Take(3).Select(n => n.Html))}")));
        // What is shown, and the labels that are only read aloud; program text, titles of sources and what is marked as English are left out.
        var said = await page.EvaluateAsync<string>("""
            () => {
              const copy = document.body.cloneNode(true);
              for (const other of copy.querySelectorAll("pre, code, script, style, [lang^=en], [data-role=sources]")) other.remove();
              const labels = [...copy.querySelectorAll("[aria-label], [placeholder], [title], [aria-valuetext]")].flatMap(e => ["aria-label", "placeholder", "title", "aria-valuetext"].map(a => e.getAttribute(a) ?? ""));
              return [copy.textContent, ...labels].join("\n");
            }
            """);
        Assert.Empty(EnglishWord().Matches(said).Select(match => said[Math.Max(0, match.Index - 40)..Math.Min(said.Length, match.Index + 40)]));
    }

    [GeneratedRegex(@"\b(the|and|with|your|you|this|that|of|is|are|to|show|start|running|lesson|lessons|place|change|clock)\b", RegexOptions.IgnoreCase)]
    private static partial Regex EnglishWord();
}
