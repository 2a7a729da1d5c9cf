using System.Text.Json;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;
using SunLessons.App.Tests.Browser;
using SunLessons.Publishing.Tests.Support;

namespace SunLessons.Publishing.Tests.Browser;

/// <summary>The published lesson in Spanish, driven from a disk: what a learner types and reads has commas, and every sentence is Spanish.</summary>
[Trait("needs", "browser")]
public sealed class SpanishPageTests(PublishedLessons published)
{
    private const string Lesson = "06-your-own-noon.es";

    [Fact]
    public async Task A_learner_predicts_moves_and_answers_in_Spanish_and_saves_the_answers()
    {
        await using var browser = await BrowserPage.OpenAsync();
        var lesson = new PublishedPage(browser);
        await lesson.OpenAsync(published.Address(Lesson));
        Assert.Equal("es", await lesson.Page.EvaluateAsync<string>("() => document.documentElement.lang"));
        Assert.Equal("La lección está en marcha. Tus respuestas se van guardando.", await lesson.Page.TextContentAsync("#lesson-status"));
        var experiment = lesson.Cell("experiment");
        var sentence = experiment.Locator(".figure [role=status]").First;
        await Assertions.Expect(lesson.Sliders.First).ToBeDisabledAsync();
        await Assertions.Expect(sentence).ToContainTextAsync("Anota arriba tu apuesta.");
        await lesson.PredictAsync();
        await Assertions.Expect(lesson.Cell("prediction")).ToContainTextAsync("Predijiste: 11:30.");
        await Assertions.Expect(lesson.Sliders.First).ToBeEnabledAsync();
        await Assertions.Expect(sentence).ToContainTextAsync("8,72° O tiene su meridiano 23,7° al oeste del de referencia. La corrección por longitud es +94,9 min.");

        await experiment.GetByRole(AriaRole.Button, new() { NameRegex = new("un paso más") }).ClickAsync();
        await Assertions.Expect(sentence).ToContainTextAsync("+93,9 min");
        var number = experiment.Locator(".control-row input[type=text]");
        Assert.Equal("0,25", await number.InputValueAsync());
        await number.FillAsync("-1,5");
        await number.PressAsync("Enter");
        await Assertions.Expect(sentence).ToContainTextAsync("+100,9 min");
        Assert.Contains("+100,9 min", await experiment.Locator(".figure-plot").First.TextContentAsync(), StringComparison.Ordinal);
        await number.FillAsync("lejos");
        await number.PressAsync("Enter");
        await Assertions.Expect(experiment.Locator(".control .problem")).ToContainTextAsync("«lejos» no es un número");

        var check = lesson.Cell("check-ushuaia");
        var field = check.Locator("input[type=text]");
        await field.FillAsync("-93,2");
        await check.Locator("button.chief").ClickAsync();
        await Assertions.Expect(check.Locator(".sunlessons-notyet")).ToContainTextAsync("Todavía no: más y menos cambiados.");
        await field.FillAsync("93,2 minutos");
        await field.PressAsync("Enter");
        await Assertions.Expect(check.Locator(".sunlessons-right")).ToContainTextAsync("Bien: 93,2 min.");

        var axe = await lesson.Page.RunAxe();
        Assert.Empty(axe.Violations.Select(v => v.Id));
        var saved = await lesson.Page.RunAndWaitForDownloadAsync(() => lesson.Page.ClickAsync("text=Guardar mis respuestas"));
        using var file = JsonDocument.Parse(await File.ReadAllTextAsync(await saved.PathAsync()));
        Assert.Equal("es", file.RootElement.GetProperty("language").GetString());
        Assert.Equal("11:30", file.RootElement.GetProperty("record").GetProperty("prediction:shortest-shadow").GetProperty("answer").GetString());
        Assert.Equal("right", file.RootElement.GetProperty("record").GetProperty("check:ushuaia").GetProperty("state").GetString());

        await lesson.Page.ReloadAsync();
        await lesson.LiveAsync();
        await Assertions.Expect(lesson.Cell("prediction")).ToContainTextAsync("Predijiste: 11:30.");
        await Assertions.Expect(lesson.Sliders.First).ToBeEnabledAsync();
        Assert.Empty(browser.Foreign);
        Assert.Empty(browser.Problems);
    }

    [Fact]
    public async Task A_place_is_typed_with_comma_and_oeste_and_stands_in_each_lesson_as_its_language_writes_it()
    {
        await using var browser = await BrowserPage.OpenAsync();
        var lesson = new PublishedPage(browser);
        await lesson.OpenAsync(published.Address(Lesson));
        var line = lesson.Page.Locator("#place-line");
        await Assertions.Expect(line).ToContainTextAsync("Vigo, 42,24° N 8,72° O, zona horaria Europe/Madrid");
        await lesson.Page.ClickAsync("#place-open");
        Assert.Equal("8,72° O", await lesson.Page.InputValueAsync("#place-longitude"));
        await lesson.Page.FillAsync("#place-name", "La escuela");
        await lesson.Page.FillAsync("#place-latitude", "91,5");
        await lesson.Page.FillAsync("#place-longitude", "70,25 O");
        await lesson.Page.FillAsync("#place-zone", "America/Santiago");
        await lesson.Page.ClickAsync(".place-form button[type=submit]");
        await Assertions.Expect(lesson.Page.Locator(".place-form .problem")).ToHaveTextAsync("La latitud 91,5 está fuera de -90 a +90 grados (norte positivo). ¿Has cambiado la latitud por la longitud?");
        await lesson.Page.FillAsync("#place-latitude", "33,5 S");
        await lesson.Page.ClickAsync(".place-form button[type=submit]");
        await Assertions.Expect(line).ToContainTextAsync("La escuela, 33,5° S 70,25° O, zona horaria America/Santiago");

        // The same place in an English lesson is written with points and W, and can be taken again as it stands.
        await lesson.OpenAsync(published.Address("06-your-own-noon"));
        await Assertions.Expect(line).ToContainTextAsync("La escuela, 33.5° S 70.25° W, clock zone America/Santiago");
        await lesson.Page.ClickAsync("#place-open");
        await lesson.Page.ClickAsync(".place-form button[type=submit]");
        await Assertions.Expect(lesson.Page.Locator(".place-form")).ToBeHiddenAsync();
    }
}
