using NodaTime;
using SunLessons.CivilTime;
using SunLessons.Dials;
using SunLessons.Places;
using SunLessons.Readings;

namespace SunLessons.Logs;

/// <summary>All readings of a log beside what the dial should have shown. Immutable.</summary>
/// <remarks>The Sun as in <see cref="ClockFromDial"/>; UTC is taken for UT1 (below 0.015 minutes) and the air's bending of light is left out.</remarks>
public sealed record LogResiduals
{
    private LogResiduals(GeoPoint place, FlatDial dial, DialStance presumed, IReadOnlyList<LogResidual> readings, IReadOnlyList<(Observation, string)> unused)
    {
        Place = place;
        Dial = dial;
        Presumed = presumed;
        Readings = readings;
        Unused = unused;
    }

    /// <summary>Where the dial stands.</summary>
    public GeoPoint Place { get; }

    /// <summary>The dial's design.</summary>
    public FlatDial Dial { get; }

    /// <summary>How it was presumed to stand.</summary>
    public DialStance Presumed { get; }

    /// <summary>The readings that can be compared, in the order of the log.</summary>
    public IReadOnlyList<LogResidual> Readings { get; }

    /// <summary>The readings that cannot, each with one sentence saying why.</summary>
    public IReadOnlyList<(Observation Observation, string Why)> Unused { get; }

    /// <summary>Compares a log taken at a named place; as the other overload.</summary>
    public static LogResiduals Of(ObservationLog log, Place place, FlatDial? dial = null, DialStance presumed = default)
    {
        ArgumentNullException.ThrowIfNull(place);
        return Of(log, place.Point, place.Zone, dial, presumed);
    }

    /// <summary>Compares a log.</summary>
    /// <param name="log">The readings.</param>
    /// <param name="place">Where the dial stands.</param>
    /// <param name="zone">The zone of the clock.</param>
    /// <param name="dial">The dial's design; null for one made for the place.</param>
    /// <param name="presumed">How it is presumed to stand; level and true if not given.</param>
    public static LogResiduals Of(ObservationLog log, GeoPoint place, CivilZone zone, FlatDial? dial = null, DialStance presumed = default)
    {
        ArgumentNullException.ThrowIfNull(log);
        ArgumentNullException.ThrowIfNull(zone);
        var design = dial ?? FlatDial.For(place.Latitude);
        var readings = new List<LogResidual>();
        var unused = new List<(Observation, string)>();
        foreach (var observation in log.Observations)
        {
            if (ApparentDay.OutsideYears(observation.Clock.Date) is { } outside)
            {
                unused.Add((observation, $"Line {CsvTable.Text(observation.Line)}: {outside}"));
                continue;
            }

            var moments = Moments(observation, zone).Select(instant => Compared(observation, instant, zone, place, design, presumed)).ToList();
            switch (moments.Where(m => m.Reading is not null).ToList())
            {
                case [var only]:
                    readings.Add(moments.Count == 1 ? only.Reading! : only.Reading! with
                    {
                        Remark = $"The clock showed {ReadingChain.TimeText(observation.Clock)} twice that night; the moment is taken at which the dial was lit.",
                    });
                    break;
                case []:
                    unused.Add((observation, $"Line {CsvTable.Text(observation.Line)}: {(moments.Count == 0 ? zone.InstantOf(observation.Clock).Message : moments[^1].Why)}"));
                    break;
                default:
                    var doubled = (ClockAnswer.Doubled)zone.InstantOf(observation.Clock);
                    unused.Add((
                        observation,
                        $"Line {CsvTable.Text(observation.Line)}: {doubled.Message.Replace(" Say which one you mean: the earlier or the later.", "", StringComparison.Ordinal)} "
                        + $"Write the offset after the time: {ReadingChain.TimeText(observation.Clock)} {OffsetText.Utc(doubled.RuleEarlier.WallOffset)} or {OffsetText.Utc(doubled.RuleLater.WallOffset)}."));
                    break;
            }
        }

        return new LogResiduals(place, design, presumed, readings, unused);
    }

    /// <summary>The instants that a clock reading may mean: one, two in a doubled hour, none in a skipped one.</summary>
    private static Instant[] Moments(Observation observation, CivilZone zone) => observation.ClockOffset is { } offset
        ? [observation.Clock.WithOffset(offset).ToInstant()]
        : zone.InstantOf(observation.Clock) switch
        {
            ClockAnswer.One one => [one.Instant],
            ClockAnswer.Doubled doubled => [doubled.Earlier, doubled.Later],
            _ => [],
        };

    private static (LogResidual? Reading, string? Why) Compared(
        Observation observation, Instant instant, CivilZone zone, GeoPoint place, FlatDial design, DialStance presumed)
    {
        var hourAngle = ApparentDay.HourAngleAt(place, instant);
        var sun = SunNow.At(instant);
        return ForwardModel.Read(design, presumed, place.Latitude, hourAngle, sun.Declination) switch
        {
            DialReading.Shows shows => (
                new LogResidual(
                    observation,
                    instant,
                    zone.RuleAt(instant),
                    hourAngle,
                    sun.Declination,
                    sun.EquationOfTime,
                    Minutes(observation.Shown, hourAngle),
                    Minutes(observation.Shown, shows.Time.HourAngle)),
                null),
            var nothing => (null, ((DialReading.Nothing)nothing).Sentence),
        };
    }

    private static double Minutes(DialTime shown, HourAngle expected) => (shown.HourAngle.Angle - expected.Angle).AroundZero().TimeMinutes;
}
