using NodaTime;

namespace SunLessons.Dials.Faces;

/// <summary>What the numbers at the hour lines mean. Immutable.</summary>
public abstract record HourNumbering
{
    private HourNumbering()
    {
    }

    /// <summary>Local apparent time: 12 is the Sun on the meridian.</summary>
    public static HourNumbering LocalApparent { get; } = new Apparent();

    /// <summary>The local apparent time at which the line of a number stands.</summary>
    /// <param name="number">The number at the line.</param>
    /// <param name="equationOfTime">
    /// Apparent minus mean time, for a line drawn for one date; leave it zero for straight lines, whose readings then still want the date's correction.
    /// </param>
    public abstract DialTime ApparentAt(DialTime number, EquationOfTime equationOfTime = default);

    /// <summary>Local apparent time; the equation of time does not enter.</summary>
    public sealed record Apparent : HourNumbering
    {
        /// <inheritdoc/>
        public override DialTime ApparentAt(DialTime number, EquationOfTime equationOfTime = default) => number;
    }

    /// <summary>The time of a zone's meridian, the longitude built in: every line is turned by 4 minutes to the degree.</summary>
    /// <param name="Place">The longitude of the dial, east positive.</param>
    /// <param name="ZoneOffset">The zone's offset from universal time, east positive; daylight time included if the dial is to show it.</param>
    public sealed record ZoneTime(Longitude Place, Offset ZoneOffset) : HourNumbering
    {
        /// <summary>By how much local mean time is ahead of the zone's, minutes; negative west of its meridian.</summary>
        public double LocalAheadMinutes => Place.Degrees * 4.0 - ZoneOffset.Seconds / 60.0;

        /// <inheritdoc/>
        public override DialTime ApparentAt(DialTime number, EquationOfTime equationOfTime = default) =>
            DialTime.FromHours(number.Hours + (LocalAheadMinutes + equationOfTime.Minutes) / 60.0);
    }
}
