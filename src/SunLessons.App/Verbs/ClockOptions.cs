using System.CommandLine;
using NodaTime;
using SunLessons.CivilTime;

namespace SunLessons.App.Verbs;

/// <summary>A date and a time by the clock of a place. A time that the clock shows twice is never chosen silently.</summary>
/// <param name="timeOption">The name of the option for the time.</param>
/// <param name="timeDescription">What the help says of it.</param>
public sealed class ClockOptions(string timeOption, string timeDescription)
{
    private readonly Option<string?> _date = new("--date") { Description = "The day, year first, such as 2026-11-03.", HelpName = "date" };
    private readonly Option<string?> _time = new(timeOption) { Description = timeDescription, HelpName = "hours:minutes" };
    private readonly Option<bool> _earlier = new("--earlier") { Description = "Where the clock was moved back and shows that time twice: the first of the two." };
    private readonly Option<bool> _later = new("--later") { Description = "The second of the two." };

    /// <summary>Adds the options to a verb.</summary>
    public void AddTo(Command verb)
    {
        verb.Options.Add(_date);
        verb.Options.Add(_time);
        verb.Options.Add(_earlier);
        verb.Options.Add(_later);
    }

    /// <summary>Whether any of the options was given.</summary>
    public bool AnyGiven(ParseResult parsed) =>
        parsed.GetValue(_date) is not null || parsed.GetValue(_time) is not null || parsed.GetValue(_earlier) || parsed.GetValue(_later);

    /// <summary>The time option's text, or null.</summary>
    public string? Time(ParseResult parsed) => parsed.GetValue(_time);

    /// <summary>Whether one of the two times of a doubled hour was named.</summary>
    public bool NamesOneOfTwo(ParseResult parsed) => parsed.GetValue(_earlier) || parsed.GetValue(_later);

    /// <summary>The day.</summary>
    /// <exception cref="BadInputException">It is missing, cannot be read or lies outside the years 1900 to 2100.</exception>
    public LocalDate Date(ParseResult parsed) => parsed.GetValue(_date) is { } date
        ? Typed.SunDate(date)
        : throw new BadInputException("The date is missing; give --date with year, month and day, such as --date 2026-11-03.");

    /// <summary>The date and time on the clock.</summary>
    /// <exception cref="BadInputException">One is missing or cannot be read.</exception>
    public LocalDateTime Clock(ParseResult parsed)
    {
        var date = Date(parsed);
        return parsed.GetValue(_time) is { } time
            ? date.At(Typed.ClockTime(time))
            : throw new BadInputException($"The time is missing; give {_time.Name} with what the clock shows, such as {_time.Name} 14:30.");
    }

    /// <summary>The instant that the clock meant.</summary>
    /// <exception cref="BadInputException">A part is missing or wrong, the clock never showed that time, or showed it twice and none was named.</exception>
    public Instant Read(ParseResult parsed, CivilZone zone)
    {
        var answer = zone.InstantOf(Clock(parsed));
        var (earlier, later) = (parsed.GetValue(_earlier), parsed.GetValue(_later));
        if (earlier && later)
        {
            throw new BadInputException("Both --earlier and --later were given; give the one that is meant.");
        }

        switch (answer)
        {
            case ClockAnswer.One when earlier || later:
                throw new BadInputException($"The clock shows that time once, so there is nothing to choose; leave {(earlier ? _earlier : _later).Name} out.");
            case ClockAnswer.One one:
                return one.Instant;
            case ClockAnswer.Doubled doubled when earlier || later:
                return earlier ? doubled.Earlier : doubled.Later;
            case ClockAnswer.Doubled doubled:
                throw new BadInputException($"{doubled.Message.TrimEnd('.')} (write --earlier or --later).");
            default:
                throw new BadInputException(answer.Message);
        }
    }
}
