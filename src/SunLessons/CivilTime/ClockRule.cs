using System.Globalization;
using NodaTime;

namespace SunLessons.CivilTime;

/// <summary>
/// What the law adds to universal time at one place and instant, taken apart as it is taught: a base offset, which belongs to a
/// meridian, and an amount of daylight time on top. East of Greenwich positive. <see cref="WallOffset"/> is their sum.
/// </summary>
/// <remarks>
/// The time-zone database calls Ireland's summer clock "standard" and its winter clock one hour of NEGATIVE saving; Morocco's
/// Ramadan clock and Namibia's winters of 1994 to 2017 are written the same way. Here the base offset is then the smaller wall
/// offset of that calendar year and daylight time is the rest, so that "base + daylight" stays true in every country and daylight
/// time is never negative. A year without any such saving (Ireland 1969 and 1970) has no smaller offset to show: its whole offset is the base.
/// </remarks>
/// <param name="BaseOffset">Offset from UTC without daylight time, east positive.</param>
/// <param name="Daylight">Daylight time on top of it; zero or positive.</param>
/// <param name="Abbreviation">The database's short name in force, such as <c>CEST</c> or <c>+0545</c>.</param>
public sealed record ClockRule(Offset BaseOffset, Offset Daylight, string Abbreviation)
{
    /// <summary>What a clock on the wall is ahead of UTC, east positive: base offset plus daylight time.</summary>
    public Offset WallOffset => BaseOffset + Daylight;

    /// <summary>Hours of the base offset, east positive; 5.75 for Kathmandu.</summary>
    public double BaseHours => BaseOffset.Seconds / 3600.0;

    /// <summary>Minutes of daylight time, zero or positive.</summary>
    public double DaylightMinutes => Daylight.Seconds / 60.0;

    /// <summary>
    /// The meridian whose mean time is the base time, 15° to the hour, east positive. Not a <see cref="Longitude"/>: the clocks of
    /// Kiritimati keep +14 h, the time of meridian +210°.
    /// </summary>
    public Angle Meridian => Angle.FromDegrees(BaseOffset.Seconds / 240.0);

    /// <summary>Whether daylight time is in force.</summary>
    public bool IsDaylightTime => Daylight > Offset.Zero;

    /// <summary>Such as <c>UTC+1 and 60 min daylight time</c> or <c>UTC+5:45</c>.</summary>
    public override string ToString() => IsDaylightTime
        ? string.Create(CultureInfo.InvariantCulture, $"{OffsetText.Utc(BaseOffset)} and {DaylightMinutes:0.##} min daylight time")
        : OffsetText.Utc(BaseOffset);
}
