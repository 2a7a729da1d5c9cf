using SunLessons.App.Verbs;
using SunLessons.Readings;

namespace SunLessons.App.Printing;

/// <summary>What a dial should show, as text for a terminal.</summary>
public static class ReverseText
{
    /// <summary>The whole answer.</summary>
    public static string Of(ReverseAnswer answer)
    {
        var lines = new Lines();
        if (answer.Sentence is not null)
        {
            lines.Paragraph(answer.Sentence).Gap();
        }

        lines.Paragraph($"{PlainWords.Place(answer.Place)}, clock of {answer.Place.ZoneId} (time-zone rules {answer.Chains[0].TzdbVersion})");
        lines.Optional(DialWords.Setting(answer.Profile.Setting));
        foreach (var (chain, setting) in answer.Chains.Zip(answer.Settings))
        {
            lines.Paragraph($"{PlainWords.Date(answer.Clock.Date)}: the clock shows {ReadingChain.TimeText(answer.Clock)} ({chain.Rule})");
            lines.Gap();
            lines.Paragraph($"The dial should show {chain.Shown}, give or take {PlainWords.Number(chain.Budget.ExpandedUncertainty, "0.0")} min (k = 2: in 95 of 100 cases).");
            lines.Gap();
            lines.Raw($"From there to the clock:");
            ChainText.Steps(lines, chain);
            lines.Gap();
            ChainText.Notes(lines, chain);
            lines.Gap();
            lines.Paragraph($"To set it without a compass: {setting.Sentence}");
            lines.Gap();
        }

        foreach (var sentence in answer.Dark)
        {
            lines.Paragraph($"At the other of the two times: {sentence}");
        }

        return lines.ToString();
    }
}
