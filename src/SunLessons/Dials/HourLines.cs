namespace SunLessons.Dials;

/// <summary>One line of the scale.</summary>
/// <param name="Time">The reading it stands for.</param>
/// <param name="Clockwise">
/// The angle on the plate from the noon line, clockwise seen from above positive: positive in the afternoon on a northern dial,
/// NEGATIVE in the afternoon on a southern one, whose numbers run anticlockwise.
/// </param>
public readonly record struct HourLine(DialTime Time, Angle Clockwise);

/// <summary>Hour lines of a level dial, found by the <see cref="ForwardModel"/> of a dial that stands right.</summary>
public static class HourLines
{
    /// <summary>
    /// The line for one reading on a scale for a latitude, measured from the noon line.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">The latitude is the equator, where a level dial has no hour lines.</exception>
    public static HourLine At(Latitude scale, DialTime time)
    {
        if (ForwardModel.Read(FlatDial.For(scale), DialStance.True, scale, time.HourAngle, NeverSetting(scale)) is DialReading.Shows shows)
        {
            return new HourLine(time, shows.ShadowClockwise);
        }

        throw new ArgumentOutOfRangeException(
            nameof(scale),
            "A level dial for latitude 0 degrees has no hour lines; give a latitude from -90 to +90 degrees other than 0.");
    }

    /// <summary>Lines from a first to a last reading, both included, one every so many minutes.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The step is not above zero, or the latitude is the equator.</exception>
    public static IReadOnlyList<HourLine> Between(Latitude scale, DialTime first, DialTime last, int everyMinutes)
    {
        if (everyMinutes <= 0)
        {
            throw new ArgumentOutOfRangeException(
                nameof(everyMinutes), $"Step {everyMinutes} minutes is not above 0; give 1 to 60 minutes, such as 15.");
        }

        var lines = new List<HourLine>();
        for (var i = 0; first.MinutesOfDay + i * (double)everyMinutes <= last.MinutesOfDay + 1e-9; i++)
        {
            lines.Add(At(scale, DialTime.FromHours((first.MinutesOfDay + i * (double)everyMinutes) / 60.0)));
        }

        return lines;
    }

    /// <summary>
    /// An imaginary Sun that stands so near the raised pole that it never sets there: every hour, midnight too, then has its shadow.
    /// Any other declination gives the same line, because Sun and style stay in one plane.
    /// </summary>
    private static SolarDeclination NeverSetting(Latitude latitude) =>
        SolarDeclination.FromDegrees(latitude.IsSouthern ? -90.0 - latitude.Degrees / 2.0 : 90.0 - latitude.Degrees / 2.0);
}
