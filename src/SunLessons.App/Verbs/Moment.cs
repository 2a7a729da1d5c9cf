using NodaTime;
using SunLessons.CivilTime;
using SunLessons.Sun;

namespace SunLessons.App.Verbs;

/// <summary>The moment that a call asks about.</summary>
public abstract record Moment
{
    private Moment()
    {
    }

    /// <summary>The moment as the sky needs it.</summary>
    public abstract SunInstant Sun { get; }

    /// <summary>A moment of civil time.</summary>
    /// <param name="Instant">When.</param>
    /// <param name="Rule">The law of the clocks then.</param>
    /// <param name="ZoneIsKnown">Whether the zone was given; else times are told in UTC.</param>
    public sealed record Civil(Instant Instant, ClockRule Rule, bool ZoneIsKnown) : Moment
    {
        /// <inheritdoc/>
        public override SunInstant Sun => SunInstant.FromInstant(Instant);
    }

    /// <summary>A moment for which UT1 and TT − UT1 were given: no model, no clock.</summary>
    /// <param name="Given">What was given.</param>
    public sealed record Almanac(SunInstant Given) : Moment
    {
        /// <inheritdoc/>
        public override SunInstant Sun => Given;
    }
}
