using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using SunLessons.App.Tests.Support;

namespace SunLessons.App.Tests.Verbs;

/// <summary>JSON.md lists every field of every answer, and each of its examples is what the program says.</summary>
public sealed partial class JsonPageTests
{
    // An answer's last digits differ from processor to processor; its rounding is 1e-9, and times are to a millisecond.
    private const double SameNumber = 1e-6;

    public static TheoryData<string> Commands => [.. Sections.Select(section => section.Command)];

    private static IReadOnlyList<Section> Sections { get; } = ReadSections();

    [Fact]
    public void Page_has_an_example_for_each_kind_of_answer() => Assert.Equal(5, Sections.Count);

    [Theory]
    [MemberData(nameof(Commands))]
    public async Task Example_is_what_the_program_says(string command)
    {
        var section = Sections.Single(section => section.Command == command);
        var words = CommandText.Split(command);
        Assert.Equal("sunlessons", words[0]);
        var answer = JsonNode.Parse(await Answers.TextAsync(words[1..]));
        Assert.Equal(section.Fields.Order(StringComparer.Ordinal), Fields(answer, "").Distinct().Order(StringComparer.Ordinal));
        AssertSame(section.Example, answer, "");
    }

    // Other answers of the same verbs have no field that the page does not list.
    [Theory]
    [InlineData("sun --place Tromso --date 2026-12-21 --time 12:00 --json", "day.rise day.set")]
    [InlineData("sun --latitude 10 --longitude 20 --ut1-jd 2461213.0 --tt-minus-ut1 69.1 --json", "")]
    [InlineData("north --latitude 85 --longitude -140 --date 1950-06-21 --json", "")]
    [InlineData("clock --place Nairobi --date 2026-06-21 --shown 16:00 --scale-latitude -20 --noon-line 100 --json", "")]
    [InlineData("clock --latitude 0.5 --longitude 170 --zone Europe/Madrid --date 2026-10-25 --reverse --clock 02:30 --json", "")]
    [InlineData("clock --place Nairobi --date 2026-06-21 --shown 09:00 --scales 0,-5 --json", "")]
    public async Task No_answer_has_fields_of_its_own(string call, string nullAsAWhole)
    {
        var answer = JsonNode.Parse(await Answers.TextAsync(CommandText.Split(call)));
        var listed = Sections.SelectMany(section => section.Fields).ToHashSet(StringComparer.Ordinal);
        Assert.All(Fields(answer, "").Except(nullAsAWhole.Split(' ')), field => Assert.Contains(field, listed));
    }

    [Theory]
    [MemberData(nameof(Commands))]
    public async Task Numbers_have_nine_decimals_at_most(string command) =>
        Assert.DoesNotMatch(@"[0-9]\.[0-9]{10}|[0-9][eE][-+]?[0-9]+[,\s]", await Answers.TextAsync(CommandText.Split(command)[1..]));

    [Fact]
    public async Task Reading_that_fits_two_times_lists_both()
    {
        var answer = await Answers.JsonAsync(CommandText.Split("clock --place Nairobi --date 2026-06-21 --shown 16:00 --scale-latitude -20 --noon-line 100"));
        Assert.StartsWith("This dial shows 16:00.0 twice on 21 June 2026: ", answer.At("several_in_words")!.GetValue<string>(), StringComparison.Ordinal);
        Assert.Equal(2, answer.At("answers")!.AsArray().Count);
        var text = await Answers.TextAsync(CommandText.Split("clock --place Nairobi --date 2026-06-21 --shown 16:00 --scale-latitude -20 --noon-line 100"));
        Assert.Equal(2, text.Split('\n').Count(line => line.StartsWith("Clock: ", StringComparison.Ordinal)));
    }

    private static void AssertSame(JsonNode? expected, JsonNode? actual, string way)
    {
        switch (expected)
        {
            case JsonObject fields:
                Assert.All(fields, field => AssertSame(field.Value, actual![field.Key], $"{way}.{field.Key}"));
                break;
            case JsonArray items:
                Assert.Equal(items.Count, actual!.AsArray().Count);
                for (var i = 0; i < items.Count; i++)
                {
                    AssertSame(items[i], actual[i], $"{way}[{i}]");
                }

                break;
            case JsonValue value when value.GetValueKind() == System.Text.Json.JsonValueKind.Number:
                Assert.True(Math.Abs(value.GetValue<double>() - actual!.GetValue<double>()) < SameNumber, $"{way} is {actual} and not {value}.");
                break;
            default:
                Assert.True(JsonNode.DeepEquals(expected, actual), $"{way} is {actual} and not {expected}.");
                break;
        }
    }

    private static IEnumerable<string> Fields(JsonNode? node, string way) => node switch
    {
        JsonObject fields => fields.SelectMany(field => Fields(field.Value, way.Length == 0 ? field.Key : $"{way}.{field.Key}")),
        JsonArray { Count: 0 } => [way + "[]"],
        JsonArray items => items.SelectMany(item => Fields(item, way + "[]")),
        _ => [way],
    };

    private static List<Section> ReadSections()
    {
        var page = File.ReadAllText(RepositoryFiles.Path("src", "SunLessons.App", "JSON.md")).ReplaceLineEndings("\n");
        return [.. page.Split("\n## ").Skip(1).Select(section => new Section(
            Command().Match(section).Groups[1].Value,
            [.. Row().Matches(section).Select(row => row.Groups[1].Value)],
            JsonNode.Parse(Example().Match(section).Groups[1].Value)!))];
    }

    [GeneratedRegex("```sh\n(.+)\n```")]
    private static partial Regex Command();

    [GeneratedRegex(@"^\| `([^`]+)` \|", RegexOptions.Multiline)]
    private static partial Regex Row();

    [GeneratedRegex("```json\n(.+?)\n```", RegexOptions.Singleline)]
    private static partial Regex Example();

    private sealed record Section(string Command, IReadOnlyList<string> Fields, JsonNode Example);
}
