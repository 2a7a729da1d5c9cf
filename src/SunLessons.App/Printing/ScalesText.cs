using SunLessons.App.Verbs;
using SunLessons.CivilTime;
using SunLessons.Dials;
using SunLessons.Readings;

namespace SunLessons.App.Printing;

/// <summary>The scales of a dial in their order of merit, as text for a terminal.</summary>
public static class ScalesText
{
    /// <summary>The whole answer.</summary>
    public static string Of(ScalesAnswer answer)
    {
        var lines = new Lines();
        var clock = answer.Place.Zone.ClockAt(answer.Instant);
        var year = answer.Instant.InUtc().Year;
        lines.Paragraph($"{PlainWords.Place(answer.Place)}, clock of {answer.Place.ZoneId} (time-zone rules {CivilZones.TzdbVersion}): {PlainWords.Date(clock.Date)}, {ReadingChain.TimeText(clock)}");
        lines.Paragraph($"The dial stands level and true; its style is set to {(answer.Style == StyleSet.ForPlace ? "the latitude of the place" : "the latitude of the scale used")}.");
        lines.Gap();
        lines.Raw($"  {"scale for",-10} {"error now",10}   {$"worst of {year}",14}   on         at solar time");
        foreach (var scale in answer.Ranked)
        {
            Row(lines, scale);
        }

        lines.Gap();
        lines.Paragraph("Error: what the dial shows less the Sun's own time, so + is fast. The worst is taken over the year with the Sun 5° high or more. A reading is freed of it by clock --scale-latitude.");
        if (answer.Ranked[0].WorstFastMinutes is not null)
        {
            lines.Paragraph($"Use the scale for {PlainWords.Latitude(answer.Ranked[0].Scale)}.");
        }

        return lines.ToString();
    }

    private static void Row(Lines lines, RankedScale scale)
    {
        var now = scale.FastMinutesNow is { } minutes ? PlainWords.Signed(minutes, "0.0") + " min" : "dark";
        if (scale is { WorstFastMinutes: { } worst, WorstOn: { } on, WorstAt: { } at })
        {
            lines.Raw($"  {PlainWords.Latitude(scale.Scale),-10} {now,10}   {PlainWords.Signed(worst, "0.0") + " min",14}   {PlainWords.DayAndMonth(on),-9}  {at}");
            return;
        }

        lines.Hanging($"  {PlainWords.Latitude(scale.Scale),-10} ", "cannot be used: " + scale.Why);
    }
}
