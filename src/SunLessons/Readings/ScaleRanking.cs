using NodaTime;
using SunLessons.Dials;
using SunLessons.Dials.Planning;

namespace SunLessons.Readings;

/// <summary>Which of the latitude scales that a dial carries serves a place best. The dial is taken to stand level and true.</summary>
public static class ScaleRanking
{
    /// <summary>The least altitude of the Sun at which a reading counts unless another is given: lower, shadows are long and faint.</summary>
    public static Altitude LeastSun => ScaleError.LeastSun;

    // Five minutes of hour angle: the error bends so slowly that the worst between two samples is missed by less than 0.001 of itself.
    private const double StepDegrees = 1.25;

    /// <summary>The scales, best first by the worst error of the year; a scale that cannot be used comes last with its reason.</summary>
    /// <param name="place">Where the dial stands.</param>
    /// <param name="now">The moment of the reading; its year is the year judged.</param>
    /// <param name="scales">The latitudes of the scales, north positive.</param>
    /// <param name="style">To what the style is set.</param>
    /// <param name="leastSun">The least geometric altitude at which a reading counts; null for <see cref="LeastSun"/>.</param>
    /// <exception cref="ArgumentException">No scale was given, or the year is outside 1900 to 2100.</exception>
    public static IReadOnlyList<RankedScale> Rank(
        GeoPoint place, Instant now, IEnumerable<Latitude> scales, StyleSet style = StyleSet.ForScale, Altitude? leastSun = null)
    {
        ArgumentNullException.ThrowIfNull(scales);
        var today = now.InUtc().Date;
        if (ApparentDay.OutsideYears(today) is { } outside)
        {
            throw new ArgumentException(outside, nameof(now));
        }

        var year = today.Year;
        var days = Enumerable.Range(0, CalendarSystem.Iso.GetDaysInYear(year))
            .Select(i => new LocalDate(year, 1, 1).PlusDays(i))
            .Select(date => (Date: date, SunNow.At(date.At(LocalTime.Noon).InUtc().ToInstant()).Declination))
            .ToList();
        var lights = Lights(place.Latitude, days, leastSun ?? LeastSun);
        var ranked = scales
            .Select(scale => Judged(scale, place, now, style, lights))
            .OrderBy(scale => scale.WorstSizeMinutes)
            .ToList();
        return ranked.Count > 0
            ? ranked
            : throw new ArgumentException("No scale was given; name the latitudes that the dial carries, such as 35,40,45.", nameof(scales));
    }

    private static List<(LocalDate Date, HourAngle HourAngle, LocalDirection Sun)> Lights(
        Latitude place, List<(LocalDate Date, SolarDeclination Declination)> days, Altitude leastSun)
    {
        var lights = new List<(LocalDate, HourAngle, LocalDirection)>();
        foreach (var (date, declination) in days)
        {
            for (var h = -180.0 + StepDegrees; h <= 180.0; h += StepDegrees)
            {
                var hourAngle = HourAngle.FromDegrees(h);
                var sun = LocalDirection.FromHourAngle(hourAngle, declination, place);
                if (sun.Up >= leastSun.Angle.Sin)
                {
                    lights.Add((date, hourAngle, sun));
                }
            }
        }

        return lights;
    }

    private static RankedScale Judged(
        Latitude scale, GeoPoint place, Instant now, StyleSet style, List<(LocalDate Date, HourAngle HourAngle, LocalDirection Sun)> lights)
    {
        var dial = new DialProfile { ScaleLatitude = scale, Style = style }.DialAt(place.Latitude);
        if (ForwardModel.ScaleFault(dial) is { } fault)
        {
            return new RankedScale(scale, null, null, null, null, fault.Sentence);
        }

        double? worst = null;
        LocalDate? on = null;
        DialTime? at = null;
        foreach (var (date, hourAngle, sun) in lights)
        {
            if (ForwardModel.Read(dial, DialStance.True, sun) is DialReading.Shows shows)
            {
                var fast = (shows.Time.HourAngle.Angle - hourAngle.Angle).AroundZero().TimeMinutes;
                if (worst is null || Math.Abs(fast) > Math.Abs(worst.Value))
                {
                    (worst, on, at) = (fast, date, DialTime.FromHourAngle(hourAngle));
                }
            }
        }

        var error = DialError.FastMinutes(
            dial, DialStance.True, place.Latitude, ApparentDay.HourAngleAt(place, now), SunNow.At(now).Declination);
        return new RankedScale(
            scale, error, worst, on, at, worst is null ? "The Sun never stands high enough here in that year; allow a lower Sun." : null);
    }
}
