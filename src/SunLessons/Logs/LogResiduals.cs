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

            if (zone.InstantOf(observation.Clock) is not ClockAnswer.One one)
            {
                unused.Add((observation, $"Line {CsvTable.Text(observation.Line)}: {zone.InstantOf(observation.Clock).Message}"));
                continue;
            }

            var hourAngle = ApparentDay.HourAngleAt(place, one.Instant);
            var declination = SunNow.At(one.Instant).Declination;
            if (ForwardModel.Read(design, presumed, place.Latitude, hourAngle, declination) is not DialReading.Shows shows)
            {
                var nothing = (DialReading.Nothing)ForwardModel.Read(design, presumed, place.Latitude, hourAngle, declination);
                unused.Add((observation, $"Line {CsvTable.Text(observation.Line)}: {nothing.Sentence}"));
                continue;
            }

            readings.Add(new LogResidual(
                observation, one.Instant, hourAngle, declination, Minutes(observation.Shown, hourAngle), Minutes(observation.Shown, shows.Time.HourAngle)));
        }

        return new LogResiduals(place, design, presumed, readings, unused);
    }

    private static double Minutes(DialTime shown, HourAngle expected) => (shown.HourAngle.Angle - expected.Angle).AroundZero().TimeMinutes;
}
