using System.Globalization;

namespace SunLessons;

/// <summary>
/// What a sundial shows: local APPARENT time, hours 0 up to but not including 24, 12 when the shadow stands on the noon line.
/// The default value is midnight. It is not a clock time: that is a NodaTime <c>LocalTime</c>, reached by corrections.
/// </summary>
public readonly record struct DialTime : IComparable<DialTime>
{
    private DialTime(double hours) => Hours = hours;

    /// <summary>Hours from midnight, 0 up to but not including 24.</summary>
    public double Hours { get; }

    /// <summary>Minutes from midnight, 0 up to but not including 1440.</summary>
    public double MinutesOfDay => Hours * 60.0;

    /// <summary>The Sun's hour angle when a faultless dial shows this, afternoon positive.</summary>
    public HourAngle HourAngle => HourAngle.FromHours(Hours - 12.0);

    /// <summary>Makes a reading from hours from midnight; reduced to one day.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not a finite number.</exception>
    public static DialTime FromHours(double hours)
    {
        if (!double.IsFinite(hours))
        {
            throw new ArgumentOutOfRangeException(nameof(hours), "A dial reading must be a finite number of hours, 0 to 24; write 14:30 as 14.5.");
        }

        var h = hours % 24.0;
        if (h < 0)
        {
            h += 24.0;
        }

        return new DialTime(h >= 24.0 ? 0.0 : h);
    }

    /// <summary>Makes a reading from hours and minutes.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Hours outside 0 to 23 or minutes outside 0 up to 60.</exception>
    public static DialTime FromHoursMinutes(int hours, double minutes) =>
        hours is < 0 or > 23 || !(minutes >= 0.0 && minutes < 60.0)
            ? throw new ArgumentOutOfRangeException(
                nameof(hours),
                $"Dial reading {hours}:{minutes.ToString("00.##", CultureInfo.InvariantCulture)} is outside 00:00 to 23:59. Write hours 0 to 23 and minutes 0 to 59, such as 14:30.")
            : new DialTime(hours + minutes / 60.0);

    /// <summary>What a faultless dial shows at an hour angle.</summary>
    public static DialTime FromHourAngle(HourAngle hourAngle) => FromHours(12.0 + hourAngle.Hours);

    /// <inheritdoc/>
    public int CompareTo(DialTime other) => Hours.CompareTo(other.Hours);

    /// <summary>Hours and minutes to a tenth, such as <c>11:39.2</c>.</summary>
    public override string ToString()
    {
        var tenths = (long)Math.Round(Hours * 600.0, MidpointRounding.AwayFromZero) % 14400;
        return string.Create(CultureInfo.InvariantCulture, $"{tenths / 600:00}:{tenths % 600 / 10:00}.{tenths % 10}");
    }
}
