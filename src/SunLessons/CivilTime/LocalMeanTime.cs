using NodaTime;

namespace SunLessons.CivilTime;

/// <summary>
/// Local mean time: the even clock of one's own meridian, 4 minutes to the degree of longitude from universal time, east ahead. Clocks kept it before there
/// were zones; a dial keeps it but for the equation of time. No zone and no daylight time enter.
/// </summary>
/// <remarks>Universal time is taken as UTC, which keeps within 0.9 s of the Earth's own (UT1). The time-zone database writes local mean time to the whole second.</remarks>
public static class LocalMeanTime
{
    /// <summary>By how much local mean time is ahead of UTC: positive in the east, −12 to +12 hours.</summary>
    public static Duration AheadOfUtc(Longitude longitude) => Duration.FromSeconds(longitude.Degrees * 240.0);

    /// <summary>What a clock of the meridian shows at an instant.</summary>
    public static LocalDateTime ClockAt(Longitude longitude, Instant instant) => (instant + AheadOfUtc(longitude)).InUtc().LocalDateTime;

    /// <summary>The instant at which a clock of the meridian shows a time; there is always one, and one only.</summary>
    public static Instant InstantOf(Longitude longitude, LocalDateTime clock) => clock.InUtc().ToInstant() - AheadOfUtc(longitude);
}
