using NodaTime;
using SunLessons.Figures;
using SunLessons.Readings;

namespace SunLessons.Cells.Live;

/// <summary>The library's chain as rows for a learner: what the dial showed, each step, and its total uncertainty with the last time.</summary>
internal static class ChainRows
{
    public static StepsAnswer Of(ClockReading reading) => reading switch
    {
        ClockReading.One one => new StepsAnswer("", [Of(one.Chain).ToArray()]),
        ClockReading.Several several => new StepsAnswer(Translated(several.Sentence), [.. several.Chains.Select(c => Of(c).ToArray())]),
        ClockReading.None none => new StepsAnswer(Translated(none.Sentence), []),
        _ => throw new InvalidOperationException("a reading of an unknown kind"),
    };

    public static IEnumerable<StepRow> Of(ReadingChain chain)
    {
        yield return new StepRow(Worded($"what the dial shows"), "", "", Time(chain.ShownTime), Doubt(chain.ShownStandardUncertaintyMinutes));
        foreach (var step in chain.Steps)
        {
            yield return StepRow.Of(Name(step.Name), step.Amount, Cause(chain, step), Time(step.RunningTime), Doubt(step.StandardUncertaintyMinutes));
        }
    }

    /// <summary>Why a step is taken; the law of the clock is one version's of the zones' rules, so it is said which.</summary>
    public static string Cause(ReadingChain chain, ReadingStep step) =>
        step.Name == StepName.Law ? Worded($"{Translated(step.Cause)} (time-zone rules {chain.TzdbVersion})") : Translated(step.Cause);

    private static string Doubt(double minutes) => "±" + Axis.Numeral(minutes, 1) + " min";

    private static string Name(StepName name) => Translated(name.ToString().ToLowerInvariant());

    private static string Time(LocalDateTime time) => Numbered(ReadingChain.TimeText(time));
}
