using System.CommandLine;
using System.CommandLine.Parsing;
using SunLessons.Dials;
using SunLessons.Dials.Faces;
using SunLessons.Magnetism;
using SunLessons.Places;
using SunLessons.Readings;

namespace SunLessons.App.Verbs;

/// <summary>What is known of the dial: for what latitude it was made, to what its style is set, and how it stands.</summary>
public sealed class DialOptions
{
    // A scale for the other side of the equator is a slip of the sign, unless place and scale lie close together in the tropics.
    private const double FarthestAcrossEquatorDegrees = 30.0;

    private readonly Option<string?> _inclination = new("--plate-inclination") { Description = "For a plate that does not lie level: how far its lit face leans from looking straight up, 90 for a wall.", HelpName = "degrees" };
    private readonly Option<string?> _declination = new("--plate-declination") { Description = "Where that face looks, from south, west positive, such as -32.5 for a wall that looks 32.5 degrees east of south.", HelpName = "degrees" };
    private readonly Option<string?> _scale = new("--scale-latitude") { Description = "The latitude that the dial's scale was made for, such as 49 or -35; the place's own where it is left out.", HelpName = "degrees" };
    private readonly Option<string?> _style = new("--style") { Description = "With --scale-latitude or --scales: to what the style (gnomon) is set, scale (the scale's latitude, taken where it is left out) or place (the place's latitude).", HelpName = "place|scale" };
    private readonly Option<string?> _noonLine = new("--noon-line") { Description = "How the dial stands: true azimuth of the north end of its noon line, clockwise positive, such as 12.5 or -3.", HelpName = "degrees" };
    private readonly Option<string?> _line = new("--variation-line") { Description = "How it was set: the needle was brought over the variation line engraved for this magnetic declination, such as \"15 W\"; 0 for the noon line itself.", HelpName = "degrees" };
    private readonly Option<string?> _reading = new("--compass-reading") { Description = "How it was set: what the compass, its sights along the noon line, read.", HelpName = "degrees" };
    private readonly Option<string?> _card = new("--card") { Description = "With --compass-reading: which way the figures grow on the card seen from above, clockwise (90 at the right hand of 0) or anticlockwise (90 at the left hand).", HelpName = "clockwise|anticlockwise" };
    private readonly Option<string?> _compass = new("--compass") { Description = "With --compass-reading: needle (a needle over a fixed card, read at its north end) or card (a moving card, read at the mark on the case).", HelpName = "needle|card" };
    private readonly Option<string?> _indexError = new("--index-error") { Description = "With --compass-reading: what the compass reads too much.", HelpName = "degrees" };
    private readonly Option<string?> _needleError = new("--needle-error") { Description = "With --variation-line: how far the needle stands clockwise of magnetic north by its own fault.", HelpName = "degrees" };
    private readonly Option<string?> _variation = new("--variation") { Description = "With a compass setting: the magnetic declination of the place and date, where it is known better than by the model, such as \"1.2 W\".", HelpName = "degrees" };
    private readonly Option<bool> _dateTable = new("--date-table") { Description = "The correction for the date is worked by hand from a table of whole minutes; only the doubt grows." };
    private readonly Option<string?> _scalesApart = new("--scales-apart") { Description = "The dial carries scales so many degrees of latitude apart and the nearest is read as if it were the place's own; only the doubt grows.", HelpName = "degrees" };
    private readonly Option<bool> _westPositive = new("--west-positive") { Description = "Numbers without a letter after --variation-line and --variation count west as positive, as some old tables do." };

    /// <summary>Adds the options to a verb.</summary>
    public void AddTo(Command verb)
    {
        foreach (var option in All())
        {
            verb.Options.Add(option);
        }
    }

    /// <summary>To what the style is set.</summary>
    /// <exception cref="BadInputException">The word is none of the two.</exception>
    public StyleSet Style(ParseResult parsed) => parsed.GetValue(_style) is { } word
        ? OneOf(_style, word, ("scale", StyleSet.ForScale), ("place", StyleSet.ForPlace))
        : StyleSet.ForScale;

    /// <summary>The name of an option that says how the dial stands or for what it was made, if any was given; else null.</summary>
    public string? OtherThanStyle(ParseResult parsed) => All().Where(option => option != _style).FirstOrDefault(option => IsGiven(parsed, option))?.Name;

    /// <summary>The latitude of a scale, if it can belong to a dial at a place.</summary>
    /// <exception cref="BadInputException">It cannot be read, or lies on the far side of the equator.</exception>
    public static Latitude ScaleFor(Place place, string text)
    {
        var scale = Typed.Latitude(text);
        var here = place.Point.Latitude;
        var apart = Math.Abs(scale.Degrees - here.Degrees);
        return scale.IsSouthern != here.IsSouthern && apart > FarthestAcrossEquatorDegrees
            ? throw new BadInputException(
                $"A scale for {scale} and a place at {here} lie on two sides of the equator; a scale for the place's side is needed: write {Printing.PlainWords.Number(-scale.Degrees, "0.####")} if that is meant, south negative.")
            : scale;
    }

    /// <summary>The dial that was described.</summary>
    /// <exception cref="BadInputException">Two descriptions exclude each other, or a part cannot be used.</exception>
    public DialProfile Read(ParseResult parsed, Place place)
    {
        var scale = parsed.GetValue(_scale) is { } latitude ? ScaleFor(place, latitude) : (Latitude?)null;
        var style = Style(parsed);
        var apart = parsed.GetValue(_scalesApart) is { } spacing
            ? Angle.FromDegrees(Typed.Number(spacing, "Spacing of the scales", "degrees", 0.1, 45.0, "write how far apart in latitude they are, such as 5"))
            : (Angle?)null;
        if (scale is not null && apart is not null)
        {
            throw new BadInputException("--scales-apart is for a scale whose latitude is not corrected for, and --scale-latitude corrects for it; give one of them.");
        }

        return scale is null && IsGiven(parsed, _style)
            ? throw new BadInputException("--style needs --scale-latitude: a dial made for the place has its style set for the place; give the latitude of its scale too, such as --scale-latitude 49.")
            : new DialProfile
            {
                Face = PlateFace(parsed),
                ScaleLatitude = scale,
                Style = style,
                Setting = Setting(parsed),
                DateByTable = parsed.GetValue(_dateTable),
                NearestOfScalesApart = apart,
            };
    }

    private Face? PlateFace(ParseResult parsed)
    {
        Needs(parsed, _declination, [_inclination]);
        if (parsed.GetValue(_inclination) is not { } inclination)
        {
            return null;
        }

        if (IsGiven(parsed, _style))
        {
            throw new BadInputException("--style is for a level plate; the style of a face stands where its scale wants it, so leave --style out.");
        }

        return Face.FromDegrees(
            Typed.Number(inclination, "Plate inclination", "degrees", 0.0, 180.0, "write 90 for a wall, 0 for a level plate"),
            parsed.GetValue(_declination) is { } declination
                ? Typed.Number(declination, "Plate declination", "degrees", -180.0, 180.0, "write where the face looks from south, west positive, such as -32.5")
                : 0.0);
    }

    private DialSetting Setting(ParseResult parsed)
    {
        var ways = new Option[] { _noonLine, _line, _reading }.Where(option => IsGiven(parsed, option)).Select(option => option.Name).ToList();
        if (ways.Count > 1)
        {
            throw new BadInputException($"How the dial stands was given twice, by {ways[0]} and {ways[1]}; give one of --noon-line, --variation-line and --compass-reading.");
        }

        foreach (var option in new Option[] { _card, _compass, _indexError })
        {
            Needs(parsed, option, [_reading]);
        }

        Needs(parsed, _needleError, [_line]);
        Needs(parsed, _variation, [_line, _reading]);
        Needs(parsed, _westPositive, [_line, _variation]);
        if (parsed.GetValue(_noonLine) is { } azimuth)
        {
            return new DialSetting.NoonLine(Azimuth.FromDegrees(Typed.Number(
                azimuth, "Noon line", "degrees (true azimuth, clockwise positive)", -180.0, 360.0, "write where its north end points, such as 12.5")));
        }

        if (parsed.GetValue(_line) is { } line)
        {
            var error = parsed.GetValue(_needleError) is { } needle ? Error(needle, "Needle error") : Angle.Zero;
            return new DialSetting.NeedleOnLine(new CompassLine(Quoted(parsed, line), error)) { MeasuredDeclination = Measured(parsed) };
        }

        return parsed.GetValue(_reading) is { } figure
            ? new DialSetting.CompassShowed(
                Instrument(parsed),
                CompassReading.FromDegrees(Typed.Number(figure, "Compass reading", "degrees", 0.0, 360.0, "write the figure on the card, such as 340")))
            {
                MeasuredDeclination = Measured(parsed),
            }
            : new DialSetting.TakenAsRight();
    }

    private Compass Instrument(ParseResult parsed)
    {
        var graduation = parsed.GetValue(_card) is { } card
            ? OneOf(_card, card, ("clockwise", CompassGraduation.Clockwise), ("anticlockwise", CompassGraduation.Anticlockwise))
            : throw new BadInputException(
                "--compass-reading needs --card, because a card graduated the other way means the opposite turn; give --card clockwise (90 at the right hand of 0) or --card anticlockwise.");
        var build = parsed.GetValue(_compass) is { } compass
            ? OneOf(_compass, compass, ("needle", CompassBuild.NeedleOverFixedCard), ("card", CompassBuild.CardReadAtLubberLine))
            : throw new BadInputException(
                "--compass-reading needs --compass, because a needle and a moving card turn opposite ways; give --compass needle (a needle over a fixed card) or --compass card (a moving card).");
        return new Compass(build, graduation, parsed.GetValue(_indexError) is { } index ? Error(index, "Index error") : Angle.Zero);
    }

    private MagneticDeclination? Measured(ParseResult parsed) => parsed.GetValue(_variation) is { } text ? Quoted(parsed, text) : null;

    private MagneticDeclination Quoted(ParseResult parsed, string text) =>
        CompassQuote.TryParse(text, parsed.GetValue(_westPositive) ? CompassQuoteSign.WestPositive : CompassQuoteSign.EastPositive, out var value, out var problem)
            ? value
            : throw new BadInputException(problem);

    private static Angle Error(string text, string name) =>
        Angle.FromDegrees(Typed.Number(text, name, "degrees", -180.0, 180.0, "write degrees, clockwise or too much positive, such as 1.5"));

    private static void Needs(ParseResult parsed, Option option, Option[] others)
    {
        if (IsGiven(parsed, option) && !others.Any(other => IsGiven(parsed, other)))
        {
            throw new BadInputException($"{option.Name} has nothing to act on; give {string.Join(" or ", others.Select(other => other.Name))} too, or leave it out.");
        }
    }

    private static T OneOf<T>(Option option, string typed, (string Word, T Meaning) first, (string Word, T Meaning) second) =>
        typed.Trim().ToLowerInvariant() is var word && word == first.Word
            ? first.Meaning
            : word == second.Word
                ? second.Meaning
                : throw new BadInputException($"{option.Name} “{typed}” is not known; {first.Word} and {second.Word} are allowed: write {option.Name} {first.Word} or {option.Name} {second.Word}.");

    private static bool IsGiven(ParseResult parsed, Option option) => parsed.GetResult(option) is OptionResult { Implicit: false };

    private IEnumerable<Option> All() => [_inclination, _declination, _scale, _style, _noonLine, _line, _reading, _card, _compass, _indexError, _needleError, _variation, _westPositive, _dateTable, _scalesApart];
}
