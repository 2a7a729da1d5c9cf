using System.CommandLine;
using NodaTime;
using SunLessons.App.Printing;
using SunLessons.Places;
using SunLessons.Readings;

namespace SunLessons.App.Verbs;

/// <summary>
/// <c>clock</c>: from what a dial showed to the clock, step by step; the way back with <c>--reverse</c>; which of several scales to use with <c>--scales</c>.
/// </summary>
public sealed class ClockVerb
{
    private readonly PlaceOptions _place = new();
    private readonly ClockOptions _clock = new("--clock", "With --reverse or --scales: what the clock shows, such as 14:30.");
    private readonly Option<string?> _shown = new("--shown") { Description = "What the dial showed, such as 11:30 or 11:30.5.", HelpName = "hours:minutes" };
    private readonly DialOptions _dial = new();
    private readonly Option<bool> _reverse = new("--reverse") { Description = "The way back: what the dial should show at --clock, and how to set it by the clock without a compass." };
    private readonly Option<string?> _scales = new("--scales") { Description = "Which of the scales that a dial carries to use: their latitudes, such as 35,40,45; judged at --clock or --shown and over the year.", HelpName = "degrees,degrees,..." };
    private readonly Option<bool> _json = new("--json") { Description = "Answer as JSON, with units in the names of the fields (see JSON.md)." };

    private ClockVerb()
    {
    }

    /// <summary>Makes the verb.</summary>
    public static Command Create()
    {
        var verb = new ClockVerb();
        var command = new Command("clock", "From what a dial showed to the clock: named steps with amount, sign in words, uncertainty and cause; and the way back.");
        verb._place.AddTo(command);
        verb._clock.AddTo(command);
        command.Options.Add(verb._shown);
        verb._dial.AddTo(command);
        command.Options.Add(verb._reverse);
        command.Options.Add(verb._scales);
        command.Options.Add(verb._json);
        command.SetAction(verb.Run);
        return command;
    }

    private int Run(ParseResult parsed)
    {
        var place = _place.Read(parsed);
        var (shown, clock, scales, reverse) = (parsed.GetValue(_shown), _clock.Time(parsed), parsed.GetValue(_scales), parsed.GetValue(_reverse));
        if (shown is not null && clock is not null)
        {
            throw new BadInputException("Both --shown and --clock were given; give --shown for the way from the dial to the clock, or --clock with --reverse for the way back.");
        }

        if (reverse && scales is not null)
        {
            throw new BadInputException("--reverse and --scales ask two different things; give one at a time.");
        }

        if (scales is not null)
        {
            return Scales(parsed, place, scales, shown);
        }

        if (reverse)
        {
            return shown is null
                ? Reverse(parsed, place)
                : throw new BadInputException("--reverse asks what the dial should show; give --clock with what the clock shows, such as --clock 14:30, and leave --shown out.");
        }

        if (shown is null)
        {
            throw new BadInputException(clock is null
                ? "What the dial showed is missing; give --shown, such as --shown 11:30, or --reverse and --clock for the way back."
                : "--clock alone asks nothing; add --reverse for what the dial should show then, or give --shown with what it showed.");
        }

        return Forward(parsed, place, Typed.DialTime(shown));
    }

    private int Forward(ParseResult parsed, Place place, DialTime shown)
    {
        if (_clock.NamesOneOfTwo(parsed))
        {
            throw new BadInputException("--earlier and --later choose between two clock times, and --shown gives none; leave them out.");
        }

        var profile = _dial.Read(parsed, place);
        var answer = ClockFromDial.Read(place, _clock.Date(parsed), shown, profile);
        var (chains, sentence) = answer switch
        {
            ClockReading.One one => ((IReadOnlyList<ReadingChain>)[one.Chain], null),
            ClockReading.Several several => (several.Chains, several.Sentence),
            ClockReading.None none => throw new BadInputException(none.Sentence),
            _ => throw new InvalidOperationException($"A kind of answer was added and not handled: {answer}."),
        };
        Write(parsed, () => ChainJson.Of(place, chains, sentence), () => ChainText.Of(place, profile, chains, sentence));
        return 0;
    }

    private int Reverse(ParseResult parsed, Place place)
    {
        var (zone, clock, profile) = (place.Zone, _clock.Clock(parsed), _dial.Read(parsed, place));
        var forecast = _clock.NamesOneOfTwo(parsed)
            ? DialFromClock.At(place.Point, zone, _clock.Read(parsed, zone), profile)
            : DialFromClock.At(place, clock, profile);
        IReadOnlyList<DialForecast> each = forecast is DialForecast.Two two ? [two.Earlier, two.Later] : [forecast];
        var chains = each.OfType<DialForecast.One>().Select(one => one.Chain).ToList();
        var dark = each.OfType<DialForecast.None>().Select(none => none.Sentence).Distinct().ToList();
        var sentence = (forecast as DialForecast.Two)?.Sentence;
        if (chains.Count == 0)
        {
            throw new BadInputException(string.Join(' ', [.. sentence is null ? Array.Empty<string>() : [sentence], .. dark]));
        }

        var answer = new ReverseAnswer(place, profile, clock, chains, dark, sentence, [.. chains.Select(chain => SetByClock.At(place.Point, zone, chain.Instant, profile))]);
        Write(parsed, () => ReverseJson.Of(answer), () => ReverseText.Of(answer));
        return 0;
    }

    private int Scales(ParseResult parsed, Place place, string scales, string? shown)
    {
        if (_dial.OtherThanStyle(parsed) is { } name)
        {
            throw new BadInputException($"--scales judges each scale on a dial that stands level and true; leave {name} out.");
        }

        if (shown is null && _clock.Time(parsed) is null)
        {
            throw new BadInputException("--scales needs a moment of the day; give --clock with what the clock shows, or --shown with what the dial showed.");
        }

        var date = _clock.Date(parsed);
        var instant = shown is null ? _clock.Read(parsed, place.Zone) : Reading(place, date, Typed.DialTime(shown));
        var latitudes = scales.Split(',', StringSplitOptions.TrimEntries).Select(scale => DialOptions.ScaleFor(place, scale)).ToList();
        var style = _dial.Style(parsed);
        var answer = new ScalesAnswer(place, instant, style, ScaleRanking.Rank(place.Point, instant, latitudes, style));
        Write(parsed, () => ScalesJson.Of(answer), () => ScalesText.Of(answer));
        return 0;
    }

    // Which scale was read is the question; a few minutes of error in the moment do not change the answer.
    private static Instant Reading(Place place, LocalDate date, DialTime shown) => ClockFromDial.Read(place, date, shown) switch
    {
        ClockReading.One one => one.Chain.Instant,
        ClockReading.Several several => throw new BadInputException(several.Sentence),
        ClockReading.None none => throw new BadInputException(none.Sentence),
        var other => throw new InvalidOperationException($"A kind of answer was added and not handled: {other}."),
    };

    private void Write(ParseResult parsed, Func<System.Text.Json.Nodes.JsonObject> json, Func<string> text) =>
        Console.Out.WriteLine(parsed.GetValue(_json) ? JsonText.Of(json()) : text());
}
