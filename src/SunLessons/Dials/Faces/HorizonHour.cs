using System.Globalization;

namespace SunLessons.Dials.Faces;

/// <summary>
/// An hour counted from the horizon, on a day of one solar declination: when it is, or why there is none. Rising and setting are those of the Sun's centre on
/// a level horizon without air, as the old dials have them.
/// </summary>
public abstract record HorizonHour
{
    private HorizonHour()
    {
    }

    /// <summary>The hour occurs.</summary>
    /// <param name="HourAngle">The Sun's hour angle then, afternoon positive.</param>
    public sealed record At(HourAngle HourAngle) : HorizonHour;

    /// <summary>The hour does not occur: the Sun neither rises nor sets that day.</summary>
    /// <param name="Sentence">The reason, for people.</param>
    public sealed record None(string Sentence) : HorizonHour;

    /// <summary>When an hour so counted begins.</summary>
    /// <param name="count">How the hours are counted.</param>
    /// <param name="hour">The hour, fractions allowed: 0 to 24 for equal hours, 0 to 12 for unequal ones.</param>
    /// <param name="latitude">The place.</param>
    /// <param name="declination">The Sun's declination.</param>
    /// <exception cref="ArgumentOutOfRangeException">An hour outside its range.</exception>
    public static HorizonHour Of(HorizonHours count, double hour, Latitude latitude, SolarDeclination declination)
    {
        var last = count == HorizonHours.Unequal ? 12.0 : 24.0;
        if (!(hour >= 0.0 && hour <= last))
        {
            throw new ArgumentOutOfRangeException(
                nameof(hour),
                $"Hour {hour.ToString("0.###", CultureInfo.InvariantCulture)} is outside 0 to {last:0}; equal hours run from 0 to 24 and unequal ones from 0 to 12.");
        }

        if (HalfDayHours(latitude, declination) is not { } half)
        {
            return new None("The Sun neither rises nor sets that day, so no hours can be counted from the horizon; choose another date.");
        }

        return new At(HourAngle.FromHours(count switch
        {
            HorizonHours.SinceSunrise => hour - half,
            HorizonHours.SinceSunset => hour + half,
            _ => (hour / 6.0 - 1.0) * half,
        }));
    }

    /// <summary>Half the length of the day, hours of hour angle from noon to sunset, 0 to 12 (ends excluded); null where the Sun neither rises nor sets.</summary>
    public static double? HalfDayHours(Latitude latitude, SolarDeclination declination)
    {
        // The middle of the arc is noon.
        var up = SkyArc.AboveHorizon(latitude, declination);
        return up.IsAll || up.IsNone ? null : up.Half * (12.0 / Math.PI);
    }

    /// <summary>
    /// What such a count shows at an hour angle: 0 up to but not including 24 for equal hours; 0 to 12 for unequal ones, and null at night; null where the Sun
    /// neither rises nor sets.
    /// </summary>
    public static double? HoursCounted(HorizonHours count, HourAngle hourAngle, Latitude latitude, SolarDeclination declination)
    {
        if (HalfDayHours(latitude, declination) is not { } half)
        {
            return null;
        }

        var h = hourAngle.Hours;
        return count switch
        {
            HorizonHours.SinceSunrise => DialTime.FromHours(h + half).Hours,
            HorizonHours.SinceSunset => DialTime.FromHours(h - half).Hours,
            _ => Math.Abs(h) <= half ? 6.0 * (1.0 + h / half) : null,
        };
    }
}
