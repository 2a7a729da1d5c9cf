using System.Globalization;
using NodaTime;
using NodaTime.Text;
using SunLessons.CivilTime;
using SunLessons.Uncertainty;

namespace SunLessons.Readings;

/// <summary>The whole way from what a dial showed to the clock: one answer, with every step, its cause and its uncertainty. Immutable.</summary>
/// <remarks>
/// The amounts are exact differences of runs of the dial model, so the reading plus all amounts IS the clock time. Where two faults meet, what they do together
/// beyond each alone falls to the later step.
/// </remarks>
public sealed record ReadingChain
{
    internal ReadingChain()
    {
    }

    /// <summary>The place.</summary>
    public required GeoPoint Place { get; init; }

    /// <summary>The zone whose clock is wanted.</summary>
    public required string ZoneId { get; init; }

    /// <summary>The version of the zone's rules, such as <c>2026f</c>.</summary>
    public required string TzdbVersion { get; init; }

    /// <summary>The day of the reading: the date on which that day's solar noon falls by the clock.</summary>
    public required LocalDate Date { get; init; }

    /// <summary>What the dial showed.</summary>
    public required DialTime Shown { get; init; }

    /// <summary>What the dial showed, as a time with its date, before the first step.</summary>
    public required LocalDateTime ShownTime { get; init; }

    /// <summary>The steps in their order: scale, setting, longitude, date, law.</summary>
    public required IReadOnlyList<ReadingStep> Steps { get; init; }

    /// <summary>The clock time; its date may be the day before or after <see cref="Date"/>.</summary>
    public required LocalDateTime Clock { get; init; }

    /// <summary>The moment itself.</summary>
    public required Instant Instant { get; init; }

    /// <summary>The law of the zone at that moment.</summary>
    public required ClockRule Rule { get; init; }

    /// <summary>The Sun's true hour angle: local apparent time less twelve hours.</summary>
    public required HourAngle HourAngle { get; init; }

    /// <summary>The Sun's declination at that moment.</summary>
    public required SolarDeclination Declination { get; init; }

    /// <summary>The equation of time at that moment.</summary>
    public required EquationOfTime EquationOfTime { get; init; }

    /// <summary>The Sun's azimuth at that moment.</summary>
    public required Azimuth SunAzimuth { get; init; }

    /// <summary>The Sun's altitude at that moment, geometric.</summary>
    public required Altitude SunAltitude { get; init; }

    /// <summary>The uncertainty of the clock time, minutes, part by part.</summary>
    public required Budget Budget { get; init; }

    /// <summary>A warning about the setting in one sentence, such as a weak field for the compass; else null.</summary>
    public required string? Caution { get; init; }

    /// <summary>Sentences naming what was taken as right without being measured, and is therefore not in <see cref="Budget"/>.</summary>
    public required IReadOnlyList<string> TakenAsRight { get; init; }

    /// <summary>When the clock shows this time twice that night, one sentence that names both; else null.</summary>
    public required string? DoubledHour { get; init; }

    /// <summary>The standard uncertainty of reading the shadow itself, minutes, before any step.</summary>
    public required double ShownStandardUncertaintyMinutes { get; init; }

    /// <summary>All steps together.</summary>
    public ReadingCorrection Total => Steps.Aggregate(ReadingCorrection.FromMinutes(0.0), (sum, step) => sum + step.Amount);

    /// <summary>One step by its name.</summary>
    public ReadingStep this[StepName name] => Steps.Single(step => step.Name == name);

    /// <summary>Such as <c>14:36.7 on 21 June 2026 (UTC+1 and 60 min daylight time), give or take 3.0 min</c>.</summary>
    public string Summary => string.Create(
        CultureInfo.InvariantCulture,
        $"{TimeText(Clock)} on {DateText(Clock.Date)} ({Rule}), give or take {Budget.ExpandedUncertainty:0.0} min");

    /// <summary>Hours and minutes to a tenth, such as <c>14:36.7</c>; the last tenth of a day is not rounded over midnight.</summary>
    public static string TimeText(LocalDateTime time)
    {
        var tenths = Math.Min((long)Math.Round(time.NanosecondOfDay / 6e9, MidpointRounding.AwayFromZero), 14399);
        return string.Create(CultureInfo.InvariantCulture, $"{tenths / 600:00}:{tenths % 600 / 10:00}.{tenths % 10}");
    }

    internal static string DateText(LocalDate date) => LocalDatePattern.CreateWithInvariantCulture("d MMMM uuuu").Format(date);
}
