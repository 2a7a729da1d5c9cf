using System.CommandLine;
using SunLessons.App.Printing;
using SunLessons.Readings;

namespace SunLessons.App.Verbs;

/// <summary><c>clock</c>: from what a dial showed to the clock, step by step.</summary>
public static class ClockVerb
{
    /// <summary>Makes the verb.</summary>
    public static Command Create()
    {
        var place = new PlaceOptions();
        var date = new Option<string>("--date") { Description = "The day, year first, such as 2026-11-03.", HelpName = "date", Required = true };
        var shown = new Option<string>("--shown") { Description = "What the dial showed, such as 11:30.", HelpName = "hours:minutes", Required = true };
        var json = new Option<bool>("--json") { Description = "Answer as JSON, with units in the names of the fields." };
        var verb = new Command("clock", "From what a dial showed to the clock: named steps with amount, sign in words, uncertainty and cause.");
        place.AddTo(verb);
        verb.Options.Add(date);
        verb.Options.Add(shown);
        verb.Options.Add(json);
        verb.SetAction(parsed =>
        {
            var where = place.Read(parsed);
            var answer = Answer(() => ClockFromDial.Read(where, Typed.Date(parsed.GetValue(date)!), Typed.DialTime(parsed.GetValue(shown)!)));
            var writer = Console.Out;
            switch (answer)
            {
                case ClockReading.One one:
                    writer.WriteLine(parsed.GetValue(json) ? ChainJson.Of(where, [one.Chain]).ToJsonString(ChainJson.Indented) : ChainText.Of(where, one.Chain));
                    return 0;
                case ClockReading.Several several when parsed.GetValue(json):
                    writer.WriteLine(ChainJson.Of(where, several.Chains).ToJsonString(ChainJson.Indented));
                    return 0;
                case ClockReading.Several several:
                    writer.WriteLine(several.Sentence);
                    foreach (var chain in several.Chains)
                    {
                        writer.WriteLine();
                        writer.WriteLine(ChainText.Of(where, chain));
                    }

                    return 0;
                case ClockReading.None none:
                    throw new BadInputException(none.Sentence);
                default:
                    throw new InvalidOperationException($"A kind of answer was added and not handled: {answer}.");
            }
        });
        return verb;
    }

    /// <summary>An amount outside a documented range is the user's to mend: its sentence is shown, not a stack of calls.</summary>
    internal static T Answer<T>(Func<T> compute)
    {
        try
        {
            return compute();
        }
        catch (ArgumentOutOfRangeException outside)
        {
            throw new BadInputException(outside.Message.Split(" (Parameter ", 2)[0]);
        }
    }
}
