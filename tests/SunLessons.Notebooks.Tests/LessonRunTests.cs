using System.Text.Json.Nodes;
using SunLessons.Jupyter.Client;
using SunLessons.Notebooks.Review;

namespace SunLessons.Notebooks.Tests;

/// <summary>Every lesson from a clean kernel: all cells run, what the text quotes is what the cells give, and it lives anywhere on Earth.</summary>
public class LessonRunTests
{
    public static TheoryData<string> Ids() => LessonsTests.Ids();

    [Theory]
    [MemberData(nameof(Ids))]
    public async Task It_runs_from_a_clean_kernel_its_text_quotes_its_cells_and_its_controls_wait_for_a_prediction(string id)
    {
        Notebook lesson = LessonsTests.Shelf.Find(id).ReadNotebook();
        await using LessonRun run = await LessonRun.StartAsync(lesson, LessonRun.Hello("Vigo", 42.24, -8.72, "Europe/Madrid"));
        Assert.Equal("", string.Join("\n", run.Problems));
        IReadOnlyDictionary<string, string> values = run.Values;
        var quoted = lesson.Cells.Where(cell => cell.Language == "markdown").SelectMany(cell => Prose.QuotedValues(cell.Source)).ToList();
        Assert.NotEmpty(quoted);
        Assert.Equal(
            string.Join("\n", quoted.Select(quote => $"{quote.Name} = {quote.Text}")),
            string.Join("\n", quoted.Select(quote => $"{quote.Name} = {values.GetValueOrDefault(quote.Name, "(no cell gave it)")}")));

        string[] controls = [.. run.Widgets.Where(pair => Role(pair.Value) is "number" or "choice" or "switch").Select(pair => pair.Key)];
        Assert.NotEmpty(controls);
        Assert.All(controls, control => Assert.True(run.Widgets[control]["disabled"]!.GetValue<bool>()));

        string[] figures = [.. run.Widgets.Where(pair => Role(pair.Value) == "figure").Select(pair => pair.Key)];
        Dictionary<string, string> before = figures.ToDictionary(figure => figure, figure => Sentence(run, figure));
        Assert.NotEmpty(figures);
        Assert.All(before.Values, sentence => Assert.True(GivesNothingAway(sentence), $"Before the prediction a figure says: {sentence}"));

        foreach (JsonObject prediction in run.Widgets.Values.Where(state => Role(state) == "prediction").ToArray())
        {
            Record(run, prediction);
        }

        await LessonRun.Until(() => controls.All(control => !run.Widgets[control]["disabled"]!.GetValue<bool>()), "the controls woke");
        Assert.Contains(run.Record.Keys, key => key.StartsWith("prediction:", StringComparison.Ordinal));

        // A control then moves a figure. The second to last option or a middle position differs from where each begins.
        string moving = controls.First(control => Role(run.Widgets[control]) == "number");
        run.Set(moving, new JsonObject { ["value"] = (run.Widgets[moving]["max"]!.GetValue<double>() * 3 + run.Widgets[moving]["min"]!.GetValue<double>()) / 4 });
        await LessonRun.Until(() => figures.Any(figure => Sentence(run, figure) != before[figure] && !Sentence(run, figure).StartsWith("Record", StringComparison.Ordinal)), "a figure moved");
    }

    [Theory]
    [MemberData(nameof(Ids))]
    public async Task It_runs_where_no_page_of_ours_listens(string id)
    {
        await using LessonRun run = await LessonRun.StartAsync(LessonsTests.Shelf.Find(id).ReadNotebook(), hello: null);
        Assert.Equal("", string.Join("\n", run.Problems));
        Assert.Contains(run.Widgets.Values, state => state["value"]?.ToString().Contains("<svg") == true);
    }

    [Theory]
    [MemberData(nameof(Ids))]
    public async Task It_lives_at_any_place_on_Earth(string id)
    {
        // Begun where the Sun does not rise in November and moved from there over the whole Earth, in one kernel.
        await using LessonRun run = await LessonRun.StartAsync(LessonsTests.Shelf.Find(id).ReadNotebook(), LessonRun.Hello("far north", 78.2, 15.6, "Arctic/Longyearbyen"));
        Assert.Equal("", string.Join("\n", run.Problems));
        Assert.DoesNotContain(run.Outputs.Values.SelectMany(outputs => outputs), output => output is StreamOutput { Name: "stderr" });
        foreach (JsonObject place in new[]
        {
            LessonRun.Place("Dunedin", -45.87, 170.5, "Pacific/Auckland"),
            LessonRun.Place("Nairobi", -1.29, 36.82, "Africa/Nairobi"),
            LessonRun.Place("Kathmandu", 27.72, 85.32, "Asia/Kathmandu"),
            LessonRun.Place("on the equator", 0.0, 0.0, "Africa/Accra"),
            LessonRun.Place("near the date line", -13.8, -171.8, "Pacific/Apia"),
            LessonRun.Place("far north", 78.2, 15.6, "Arctic/Longyearbyen"),
        })
        {
            string name = place["name"]!.ToString();
            run.MoveTo(place);
            await LessonRun.Until(() => run.Widgets.Values.Any(state => state["value"]?.ToString().Contains(name) == true), $"something in {id} spoke of {name}");
            Assert.DoesNotContain(run.Widgets.Values, state => state["value"]?.ToString().Contains("cannot be worked out") == true);
        }
    }

    /// <summary>Answers a prediction as a page would: the second of its answers, or noon in each field of a sketch.</summary>
    private static void Record(LessonRun run, JsonObject prediction)
    {
        string[] Children(JsonObject box) => [.. box["children"]!.AsArray().Select(child => child!.ToString()["IPY_MODEL_".Length..])];
        string[] parts = Children(prediction);
        string button = parts.Single(part => Role(run.Widgets[part]) == "record-prediction");
        run.Press(button);
        foreach (string part in parts.Concat(parts.Where(part => Role(run.Widgets[part]) == "sketch-fields").SelectMany(part => Children(run.Widgets[part]))))
        {
            switch (run.Widgets[part]["_model_name"]?.ToString())
            {
                case "RadioButtonsModel":
                    run.Set(part, new JsonObject { ["index"] = 1 });
                    break;
                case "TextModel":
                    run.Set(part, new JsonObject { ["value"] = "12:00" });
                    break;
            }
        }

        run.Press(button);
    }

    private static string Sentence(LessonRun run, string figure) => run.Widgets[figure]["_sunlessons_summary"]?.ToString() ?? "";

    // Asleep, or at rest with everything switched off: no number but zeros, apart from what the controls themselves say.
    private static bool GivesNothingAway(string sentence) =>
        sentence.StartsWith("Record your guess", StringComparison.Ordinal) || sentence.StartsWith("My sketch:", StringComparison.Ordinal) || !sentence.Replace("4 Jan", "", StringComparison.Ordinal).Any(sign => sign is >= '1' and <= '9');

    private static string Role(JsonObject state) => state["_sunlessons_role"]?.ToString() ?? "";
}
