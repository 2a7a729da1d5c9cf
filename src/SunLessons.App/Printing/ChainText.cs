using SunLessons.Places;
using SunLessons.Readings;

namespace SunLessons.App.Printing;

/// <summary>Chains of corrections as text for a terminal.</summary>
public static class ChainText
{
    /// <summary>All answers of one reading.</summary>
    /// <param name="place">The place.</param>
    /// <param name="profile">What is known of the dial.</param>
    /// <param name="chains">Usually one; several where a reading fits several times.</param>
    /// <param name="sentence">Where there are several, the sentence that names them; else null.</param>
    public static string Of(Place place, DialProfile profile, IReadOnlyList<ReadingChain> chains, string? sentence)
    {
        var lines = new Lines();
        if (sentence is not null)
        {
            lines.Paragraph(sentence).Gap();
        }

        lines.Paragraph($"{PlainWords.Place(place)}, clock of {place.ZoneId} (time-zone rules {chains[0].TzdbVersion})");
        lines.Optional(DialWords.Plate(profile.Face)).Optional(DialWords.Setting(profile.Setting));
        foreach (var chain in chains)
        {
            lines.Paragraph($"{PlainWords.Date(chain.Date)}: the dial showed {chain.Shown}");
            lines.Gap();
            Steps(lines, chain);
            lines.Gap();
            lines.Paragraph($"Clock: {chain.Summary} (k = 2: in 95 of 100 cases)");
            Notes(lines, chain);
            lines.Gap();
        }

        return lines.ToString();
    }

    /// <summary>The table of the steps.</summary>
    internal static void Steps(Lines lines, ReadingChain chain)
    {
        lines.Raw($"  {"step",-10} {"amount",10}   {"then it is",-10}   give or take (k = 1)");
        foreach (var step in chain.Steps)
        {
            lines.Raw($"  {Name(step.Name),-10} {Minutes(step.Amount.Minutes),10}   {ReadingChain.TimeText(step.RunningTime),-10}   {step.StandardUncertaintyMinutes:0.00} min");
            lines.Hanging("             ", step.InWords);
        }
    }

    /// <summary>What is left to say of a chain: doubled hours, cautions, the largest doubts and what was not measured.</summary>
    internal static void Notes(Lines lines, ReadingChain chain)
    {
        foreach (var sentence in new[] { chain.DoubledHour, chain.Caution }.OfType<string>())
        {
            lines.Paragraph(sentence);
        }

        var largest = chain.Budget.Largest().Select(line => $"{line.Quantity.Name} {PlainWords.Number(line.Contribution, "0.00")} min");
        lines.Paragraph($"Largest doubts (k = 1): {string.Join("; ", largest)}.");
        foreach (var sentence in chain.TakenAsRight)
        {
            lines.Paragraph($"Not measured: {sentence}");
        }
    }

    /// <summary>The name of a step.</summary>
    internal static string Name(StepName name) => name switch
    {
        StepName.Scale => "scale",
        StepName.Setting => "setting",
        StepName.Longitude => "longitude",
        StepName.Date => "date",
        StepName.Law => "law",
        _ => throw new ArgumentOutOfRangeException(nameof(name)),
    };

    private static string Minutes(double minutes) => PlainWords.Signed(minutes, "0.0") + " min";
}
