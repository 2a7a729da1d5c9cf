using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json.Nodes;
using SunLessons.Figures;
using SunLessons.Readings;

namespace SunLessons.Kernel.Session;

/// <summary>How a reading looks when it is the last thing in a cell: the chain of corrections as a table, or the sentence that says why there is none.</summary>
internal static class ReadingFormats
{
    public static void Register(ValueText values)
    {
        values.Register(typeof(ReadingChain), value => Of((ReadingChain)value));
        values.Register(typeof(ClockReading), value => value switch
        {
            ClockReading.One one => Of(one.Chain),
            ClockReading.Several several => Sentence(several.Sentence),
            ClockReading.None none => Sentence(none.Sentence),
            _ => throw new InvalidOperationException("A kind of reading was added and not handled."),
        });
    }

    private static JsonObject Of(ReadingChain chain)
    {
        ImmutableArray<ImmutableArray<string>> rows =
        [
            ["what the dial showed", "", ReadingChain.TimeText(chain.ShownTime), ""],
            .. chain.Steps.Select(step => ImmutableArray.Create(
                step.Name.ToString().ToLowerInvariant(),
                step.Amount.Minutes.ToString("+0.0;\u22120.0;0.0", CultureInfo.InvariantCulture) + " min",
                ReadingChain.TimeText(step.RunningTime),
                step.Cause)),
        ];
        var table = new DataTable("Clock: " + chain.Summary, ["Step", "Amount", "Then it is", "Because"], rows, rows);
        var lines = rows.Select(row => string.Join("  ", row.Where(cell => cell.Length > 0)));
        return new JsonObject
        {
            ["text/html"] = table.ToHtml(),
            ["text/plain"] = string.Join("\n", lines) + "\nClock: " + chain.Summary,
        };
    }

    private static JsonObject Sentence(string sentence) => new() { ["text/plain"] = sentence };
}
