using System.CommandLine;
using NodaTime;
using SunLessons.App.Printing;
using SunLessons.Magnetism;

namespace SunLessons.App.Verbs;

/// <summary><c>north</c>: where a compass needle points at a place and date.</summary>
public static class NorthVerb
{
    /// <summary>Makes the verb.</summary>
    public static Command Create()
    {
        var place = new PlaceOptions();
        var date = new Option<string?>("--date") { Description = "The day, year first, such as 2026-11-03, from 1900 to 2029.", HelpName = "date" };
        var json = new Option<bool>("--json") { Description = "Answer as JSON, with units in the names of the fields (see JSON.md)." };
        var verb = new Command("north", "Where a compass needle points: magnetic declination at a place and date, how sure that is, and how it changes.");
        place.AddTo(verb, withHeight: true);
        verb.Options.Add(date);
        verb.Options.Add(json);
        verb.SetAction(parsed =>
        {
            var where = place.Read(parsed, zoneIsNeeded: false);
            var day = Typed.Date(parsed.GetValue(date)
                ?? throw new BadInputException("The date is missing; give --date with year, month and day, such as --date 2026-11-03."));
            switch (MagneticField.At(where.Point, day))
            {
                case NorthAnswer.Known known:
                    var notice = MagneticField.ExpiryNotice(SystemClock.Instance.GetCurrentInstant());
                    Console.Out.WriteLine(parsed.GetValue(json) ? JsonText.Of(NorthJson.Of(where, day, known, notice)) : NorthText.Of(where, day, known, notice));
                    return 0;
                case var none:
                    // A neighbour in time is named in the sentence, but it is no answer.
                    throw new BadInputException(none.Summary);
            }
        });
        return verb;
    }
}
