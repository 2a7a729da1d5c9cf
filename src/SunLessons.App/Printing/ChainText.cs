using System.Globalization;
using System.Text;
using NodaTime.Text;
using SunLessons.Places;
using SunLessons.Readings;

namespace SunLessons.App.Printing;

/// <summary>A chain of corrections as text for a terminal: 80 columns wide or a little more, no colour needed.</summary>
public static class ChainText
{
    /// <summary>The whole chain, from the place to what was taken as right.</summary>
    public static string Of(Place place, ReadingChain chain)
    {
        var text = new StringBuilder();
        Line(text, $"{place.Name}, {chain.Place}, clock zone {chain.ZoneId} (time-zone rules {chain.TzdbVersion})");
        Line(text, $"{DatePattern.Format(chain.Date)}: the dial showed {chain.Shown} (local apparent time)");
        text.AppendLine();
        Line(text, $"  {"step",-10} {"amount",10}   {"then it is",-10}  give or take, k = 1");
        foreach (var step in chain.Steps)
        {
            Line(text, $"  {Name(step.Name),-10} {Minutes(step.Amount.Minutes),10}   {ReadingChain.TimeText(step.RunningTime),-10}  {step.StandardUncertaintyMinutes:0.00} min");
            Line(text, $"             {step.InWords}");
        }

        text.AppendLine();
        Line(text, $"Clock: {chain.Summary} (k = 2)");
        if (chain.DoubledHour is { } doubled)
        {
            text.AppendLine(doubled);
        }

        var largest = chain.Budget.Largest().Select(line => string.Create(CultureInfo.InvariantCulture, $"{line.Quantity.Name} {line.Contribution:0.00} min"));
        Line(text, $"Largest parts (k = 1): {string.Join("; ", largest)}.");
        foreach (var sentence in chain.TakenAsRight)
        {
            Line(text, $"Not measured: {sentence}");
        }

        return text.ToString().TrimEnd();
    }

    internal static string Name(StepName name) => name switch
    {
        StepName.Scale => "scale",
        StepName.Setting => "setting",
        StepName.Longitude => "longitude",
        StepName.Date => "date",
        StepName.Law => "law",
        _ => throw new ArgumentOutOfRangeException(nameof(name)),
    };

    private static readonly LocalDatePattern DatePattern = LocalDatePattern.CreateWithInvariantCulture("d MMMM uuuu");

    private static string Minutes(double minutes) => minutes.ToString("+0.0;-0.0;0.0", CultureInfo.InvariantCulture) + " min";

    private static void Line(StringBuilder text, FormattableString line) => text.AppendLine(line.ToString(CultureInfo.InvariantCulture));
}
