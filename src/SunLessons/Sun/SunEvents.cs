namespace SunLessons.Sun;

/// <summary>
/// What the Sun does at the horizon between one midnight and the next (lower transit to lower transit). Rising and setting: the upper limb on a
/// sea horizon through standard air, that is the centre 50′ below it (34′ refraction, 16′ semidiameter; parallax neglected, as in the
/// Astronomical Almanac). Near a pole a day may hold only one of the two.
/// </summary>
public abstract record SunEvents
{
    private SunEvents()
    {
    }

    /// <summary>An ordinary day.</summary>
    /// <param name="Rise">The rising.</param>
    /// <param name="Set">The setting.</param>
    public sealed record RisesAndSets(SunInstant Rise, SunInstant Set) : SunEvents
    {
        /// <summary>Time from rising to setting, hours; negative where the Sun sets first and rises later on the same day.</summary>
        public double DaylightHours => (Set.Ut1DaysFromJ2000 - Rise.Ut1DaysFromJ2000) * 24.0;
    }

    /// <summary>The Sun rises and is still up at the end: the first day of polar day.</summary>
    /// <param name="Rise">The rising.</param>
    public sealed record RisesOnly(SunInstant Rise) : SunEvents;

    /// <summary>The Sun was up at the beginning and sets: the last day of polar day.</summary>
    /// <param name="Set">The setting.</param>
    public sealed record SetsOnly(SunInstant Set) : SunEvents;

    /// <summary>Polar day: the Sun stays up.</summary>
    /// <param name="Lowest">The least geometric altitude of its centre.</param>
    public sealed record NeverSets(Altitude Lowest) : SunEvents;

    /// <summary>Polar night: the Sun stays down.</summary>
    /// <param name="Highest">The greatest geometric altitude of its centre.</param>
    public sealed record NeverRises(Altitude Highest) : SunEvents;
}
