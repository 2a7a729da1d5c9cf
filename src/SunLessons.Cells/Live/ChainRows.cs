using SunLessons.Figures;
using SunLessons.Readings;

namespace SunLessons.Cells.Live;

/// <summary>The library's chain as rows for a learner: what the dial showed, each step, and its total uncertainty with the last time.</summary>
internal static class ChainRows
{
    public static IEnumerable<StepRow> Of(ReadingChain chain)
    {
        yield return new StepRow("what the dial shows", "", "", ReadingChain.TimeText(chain.ShownTime), Doubt(chain.ShownStandardUncertaintyMinutes));
        foreach (var step in chain.Steps)
        {
            yield return StepRow.Of(Name(step.Name), step.Amount, step.Cause, ReadingChain.TimeText(step.RunningTime), Doubt(step.StandardUncertaintyMinutes));
        }
    }

    private static string Doubt(double minutes) => "±" + Axis.Numeral(minutes, 1) + " min";

    private static string Name(StepName name) => name.ToString().ToLowerInvariant();
}
