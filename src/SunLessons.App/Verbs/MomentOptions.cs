using System.CommandLine;
using SunLessons.Places;
using SunLessons.Sun;

namespace SunLessons.App.Verbs;

/// <summary>When, for the Sun: by the clock of the place, in universal time, or as an almanac counts.</summary>
public sealed class MomentOptions
{
    // The years 1900 to 2100 as Julian dates.
    private const double FirstJulianDate = 2415020.5;
    private const double LastJulianDate = 2488434.5;

    private readonly ClockOptions _clock = new("--time", "What the clock there shows, such as 14:30 or 14:30:15.");
    private readonly Option<string?> _utc = new("--utc") { Description = "Instead of date and clock: universal time, such as 2026-06-21T12:00:00Z.", HelpName = "time" };
    private readonly Option<string?> _ut1 = new("--ut1-jd") { Description = "Instead, to check against an almanac: UT1 as a Julian date, such as 2461213.0; no zone is needed.", HelpName = "days" };
    private readonly Option<string?> _deltaT = new("--tt-minus-ut1") { Description = "With --ut1-jd: TT minus UT1, such as 69.1.", HelpName = "seconds" };

    /// <summary>Adds the options to a verb.</summary>
    public void AddTo(Command verb)
    {
        _clock.AddTo(verb);
        verb.Options.Add(_utc);
        verb.Options.Add(_ut1);
        verb.Options.Add(_deltaT);
    }

    /// <summary>Whether the answer depends on the zone of the place.</summary>
    public bool NeedsZone(ParseResult parsed) => parsed.GetValue(_utc) is null && parsed.GetValue(_ut1) is null;

    /// <summary>The moment that was meant.</summary>
    /// <param name="parsed">The call.</param>
    /// <param name="place">The place.</param>
    /// <param name="zoneIsKnown">Whether its zone was given.</param>
    /// <exception cref="BadInputException">It was not given, given twice, or a part cannot be used.</exception>
    public Moment Read(ParseResult parsed, Place place, bool zoneIsKnown)
    {
        var (utc, ut1, deltaT) = (parsed.GetValue(_utc), parsed.GetValue(_ut1), parsed.GetValue(_deltaT));
        var ways = (_clock.AnyGiven(parsed) ? 1 : 0) + (utc is null ? 0 : 1) + (ut1 is null ? 0 : 1);
        if (ways > 1)
        {
            throw new BadInputException("The moment was given twice; give either --date and --time, or --utc, or --ut1-jd and --tt-minus-ut1.");
        }

        if ((ut1 is null) != (deltaT is null))
        {
            throw new BadInputException("--ut1-jd and --tt-minus-ut1 belong together; give both, such as --ut1-jd 2461213.0 --tt-minus-ut1 69.1.");
        }

        if (ut1 is not null)
        {
            return new Moment.Almanac(SunInstant.FromUt1(
                Typed.Number(ut1, "UT1", "(Julian date, the years 1900 to 2100)", FirstJulianDate, LastJulianDate, "write days, such as 2461213.0 for 12h UT1 on 21 June 2026"),
                Typed.Number(deltaT!, "TT minus UT1", "seconds", -1000.0, 1000.0, "write seconds, such as 69.1 in 2026")));
        }

        if (utc is not null)
        {
            var instant = Typed.Utc(utc);
            return new Moment.Civil(instant, place.Zone.RuleAt(instant), zoneIsKnown);
        }

        if (ways == 0)
        {
            throw new BadInputException(
                "The moment is missing; give --date and --time by the clock of the place, such as --date 2026-06-21 --time 14:30, or --utc, or --ut1-jd and --tt-minus-ut1.");
        }

        var meant = _clock.Read(parsed, place.Zone);
        return new Moment.Civil(meant, place.Zone.RuleAt(meant), true);
    }
}
