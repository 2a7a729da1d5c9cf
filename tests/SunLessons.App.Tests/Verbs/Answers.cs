using System.Text.Json.Nodes;

namespace SunLessons.App.Tests.Verbs;

/// <summary>Runs of the real program that must answer.</summary>
internal static class Answers
{
    public static async Task<string> TextAsync(params string[] arguments)
    {
        var run = await Support.Program.RunAsync(arguments);
        Assert.Equal("", run.Errors);
        Assert.Equal(0, run.ExitCode);
        return run.Output.ReplaceLineEndings("\n").TrimEnd();
    }

    public static async Task<JsonObject> JsonAsync(params string[] arguments) =>
        JsonNode.Parse(await TextAsync([.. arguments, "--json"]))!.AsObject();

    /// <summary>A number by the names on the way to it, such as <c>answers/0/steps/2/amount_minutes</c>.</summary>
    public static double Number(this JsonObject answer, string way) => answer.At(way)!.GetValue<double>();

    public static JsonNode? At(this JsonObject answer, string way)
    {
        JsonNode? node = answer;
        foreach (var name in way.Split('/'))
        {
            if (node is JsonObject fields)
            {
                Assert.True(fields.ContainsKey(name), $"There is no field {name} on the way {way}.");
                node = fields[name];
            }
            else
            {
                node = node![int.Parse(name, System.Globalization.CultureInfo.InvariantCulture)];
            }
        }

        return node;
    }

    /// <summary>A clock's minutes after midnight, from a field such as <c>2026-06-21T14:36:42.123</c>.</summary>
    public static double MinutesOfDay(this JsonObject answer, string way) =>
        NodaTime.Text.LocalDateTimePattern.ExtendedIso.Parse(answer.At(way)!.GetValue<string>()).Value.NanosecondOfDay / 6e10;
}
