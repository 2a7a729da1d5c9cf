using NodaTime;
using SunLessons.Sun;

namespace SunLessons.Readings;

/// <summary>What a dial needs to know of the Sun at a moment, seen from the Earth's centre (the parallax, 8.8″, is 0.01 minutes).</summary>
internal readonly record struct SunNow(SolarDeclination Declination, EquationOfTime EquationOfTime)
{
    public static SunNow At(Instant instant)
    {
        var sun = SolarEphemeris.At(SunInstant.FromInstant(instant));
        return new SunNow(sun.Declination, sun.EquationOfTime);
    }
}
