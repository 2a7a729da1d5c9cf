using NodaTime;
using SunLessons.Cells.Live;
using SunLessons.Readings;

namespace SunLessons.Cells.Talks;

/// <summary>What an audience sees at one press.</summary>
/// <param name="Name">The step as a heading.</param>
/// <param name="ShortName">The step in a word, for the figure.</param>
/// <param name="Amount">How much, with its sign in words; empty where nothing is added.</param>
/// <param name="Cause">Why.</param>
/// <param name="Clock">The time after it, in words.</param>
/// <param name="Hours">The time after it, hours from midnight of the day of the reading.</param>
public sealed record TalkCard(string Name, string ShortName, string Amount, string Cause, string Clock, double Hours)
{
    internal static TalkCard Only(string sentence) => new(Worded($"No single time"), "", "", sentence, "", 0);

    internal static IEnumerable<TalkCard> Of(ReadingChain chain)
    {
        var day = chain.Date.AtMidnight();
        double Hours(LocalDateTime time) => Period.Between(day, time, PeriodUnits.Ticks).Ticks / (double)NodaConstants.TicksPerHour;
        yield return new TalkCard(Worded($"The dial shows"), Worded($"dial"), "", "", Numbered(ReadingChain.TimeText(chain.ShownTime)), Hours(chain.ShownTime));
        var number = 0;
        foreach (var step in chain.Steps)
        {
            number++;
            var row = StepRow.Of(Translated(step.Name.ToString().ToLowerInvariant()), step.Amount, "", "");
            yield return new TalkCard($"{number}. {Capital(row.Name)}", row.Name, Capital(Translated(step.Amount.InWords())), Capital(ChainRows.Cause(chain, step)), Numbered(ReadingChain.TimeText(step.RunningTime)), Hours(step.RunningTime));
        }

        yield return new TalkCard(Worded($"By the clock"), Worded($"clock"), "", Capital(Translated(chain.Summary)), Numbered(ReadingChain.TimeText(chain.Clock)), Hours(chain.Clock));
    }

    private static string Capital(string words) => words.Length == 0 ? words : char.ToUpperInvariant(words[0]) + words[1..];
}
