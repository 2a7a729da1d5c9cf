using NodaTime;
using SunLessons.Sun;

namespace SunLessons.Dials.Faces;

/// <summary>
/// The figure of eight on which the shadow of the nodus lies at one time of the clock through the year: longitude and equation of time built in.
/// </summary>
/// <param name="Clock">The time of the zone's clock.</param>
/// <param name="Numbering">The zone.</param>
/// <param name="Points">One point a date, dark ones included with their reason.</param>
/// <remarks>
/// Sun's place as measured at <see cref="SolarEphemeris"/> (equation of time within 0.02 s for given UT1). A loop serves other years too: those of
/// 2024 to 2035 lie within 0.42 minutes of each other on every date, because dates shift in the four-year round while the equation of time moves by up to half
/// a minute a day in December.
/// </remarks>
public sealed record LoopedHourLine(DialTime Clock, HourNumbering.ZoneTime Numbering, IReadOnlyList<LoopPoint> Points)
{
    /// <summary>Draws the loop.</summary>
    /// <param name="layout">The face at its latitude.</param>
    /// <param name="numbering">The dial's longitude and the zone's offset.</param>
    /// <param name="clock">The time of the zone's clock.</param>
    /// <param name="year">The year, 1900 to 2100.</param>
    /// <param name="everyDays">The step between points, days, 1 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">A year outside 1900 to 2100 or a step below 1.</exception>
    public static LoopedHourLine Of(FaceLayout layout, HourNumbering.ZoneTime numbering, DialTime clock, int year, int everyDays = 1)
    {
        ArgumentNullException.ThrowIfNull(layout);
        ArgumentNullException.ThrowIfNull(numbering);
        var points = new List<LoopPoint>();
        foreach (var date in YearDates.Of(year, everyDays))
        {
            var instant = date.AtMidnight().WithOffset(numbering.ZoneOffset).ToInstant() + Duration.FromHours(clock.Hours);
            var sun = SolarEphemeris.At(SunInstant.FromInstant(instant));
            var hourAngle = sun.HourAngleAt(numbering.Place);
            points.Add(new LoopPoint(date, sun.Declination, sun.EquationOfTime, hourAngle, layout.ShadowOfNodus(hourAngle, sun.Declination)));
        }

        return new LoopedHourLine(clock, numbering, points);
    }
}
