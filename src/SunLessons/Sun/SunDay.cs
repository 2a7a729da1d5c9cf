using NodaTime;
using SunLessons.Places;

namespace SunLessons.Sun;

/// <summary>One day of the Sun over a place: its transit of the meridian, and what it does at the horizon before and after.</summary>
/// <param name="Transit">When the centre crosses the meridian: a faultless dial shows 12.</param>
/// <param name="TransitAltitude">Geometric altitude of the centre then, seen from the Earth's centre.</param>
/// <param name="Events">Rising and setting, or why not.</param>
/// <remarks>
/// Measured against ERFA 2.0 at 150 random places and days between 64° S and 64° N, 1900 to 2100: rise, transit and set agree within 0.06 s,
/// of which 0.043 s is the rounding of the reference (1e-6 day). Real air makes real sunsets wander by a minute and more.
/// </remarks>
public sealed record SunDay(SunInstant Transit, Altitude TransitAltitude, SunEvents Events)
{
    // 34' of refraction and 16' of semidiameter, the convention of almanacs (Explanatory Supplement to the Astronomical Almanac).
    private static readonly double HorizonRadians = Angle.FromDegrees(-50.0 / 60.0).Radians;

    // An hour between samples; between them the altitude has at most one turning point, which is looked for where it could matter.
    private const int Samples = 24;

    /// <summary>The day of a civil date at a place: its transit is the one nearest to 12:00 of standard time (daylight time taken off).</summary>
    /// <exception cref="ArgumentOutOfRangeException">A date outside the years 1900 to 2100.</exception>
    public static SunDay For(Place place, LocalDate date)
    {
        ArgumentNullException.ThrowIfNull(place);
        return Around(SunInstant.FromInstant(StandardNoon(date, place)), place.Point);
    }

    /// <summary>The day of a date by the local mean time of a longitude, no zone involved.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A date outside the years 1900 to 2100.</exception>
    public static SunDay For(GeoPoint place, LocalDate date) =>
        Around(SunInstant.FromInstant(SolarEphemeris.LocalMeanNoon(date, place.Longitude)), place);

    /// <summary>The day whose transit lies nearest to an instant.</summary>
    /// <exception cref="ArgumentOutOfRangeException">An instant outside the years 1900 to 2100.</exception>
    public static SunDay Around(SunInstant instant, GeoPoint place)
    {
        var transit = NearestTransit(instant, place.Longitude);
        return new SunDay(transit, AltitudeAt(transit, place), EventsAround(transit, place));
    }

    /// <summary>12:00 by the zone's base offset: what the place's clock would show without daylight time.</summary>
    internal static Instant StandardNoon(LocalDate date, Place place)
    {
        var zone = place.Zone;
        var noon = date.At(LocalTime.Noon);

        // The base offset at the noon that UTC would give is a day off at most; asked again there it is the date's own.
        var guess = noon.WithOffset(zone.RuleAt(noon.InUtc().ToInstant()).BaseOffset).ToInstant();
        return noon.WithOffset(zone.RuleAt(guess).BaseOffset).ToInstant();
    }

    private static SunInstant NearestTransit(SunInstant instant, Longitude longitude)
    {
        // The hour angle grows by one turn a day to 1 part in 3000 (30 s a day), so three steps leave less than a microsecond.
        for (var i = 0; i < 3; i++)
        {
            instant = instant.PlusDays(-SolarEphemeris.At(instant).HourAngleAt(longitude).Degrees / 360.0);
        }

        return instant;
    }

    private static SunEvents EventsAround(SunInstant transit, GeoPoint place)
    {
        double Height(double day) => AltitudeRadians(transit.PlusDays(day), place) - HorizonRadians;

        var samples = new List<(double Day, double Height)>(Samples + 3);
        for (var i = 0; i <= Samples; i++)
        {
            var day = (double)i / Samples - 0.5;
            samples.Add((day, Height(day)));
        }

        AddTurningPoints(samples, Height);
        double? rise = null, set = null;
        for (var i = 1; i < samples.Count; i++)
        {
            var (before, after) = (samples[i - 1], samples[i]);
            if (before.Height < 0.0 && after.Height >= 0.0)
            {
                rise ??= Crossing(before, after, Height);
            }
            else if (before.Height >= 0.0 && after.Height < 0.0)
            {
                set ??= Crossing(before, after, Height);
            }
        }

        return (rise, set) switch
        {
            ({ } r, { } s) => new SunEvents.RisesAndSets(transit.PlusDays(r), transit.PlusDays(s)),
            ({ } r, null) => new SunEvents.RisesOnly(transit.PlusDays(r)),
            (null, { } s) => new SunEvents.SetsOnly(transit.PlusDays(s)),
            _ when samples[0].Height >= 0.0 => new SunEvents.NeverSets(Geometric(samples.Min(p => p.Height))),
            _ => new SunEvents.NeverRises(Geometric(samples.Max(p => p.Height))),
        };
    }

    private static Altitude Geometric(double heightRadians) => Altitude.FromAngle(Angle.FromRadians(heightRadians + HorizonRadians));

    // A Sun that only just peeps over the horizon, or only just dips under it, could do so between two samples.
    private static void AddTurningPoints(List<(double Day, double Height)> samples, Func<double, double> height)
    {
        for (var i = samples.Count - 2; i > 0; i--)
        {
            var (a, b, c) = (samples[i - 1], samples[i], samples[i + 1]);
            var top = b.Height < 0.0 && b.Height >= a.Height && b.Height > c.Height;
            var bottom = b.Height >= 0.0 && b.Height <= a.Height && b.Height < c.Height;
            if (!top && !bottom)
            {
                continue;
            }

            var sign = top ? 1.0 : -1.0;
            var (low, high) = (a.Day, c.Day);

            // Thirds: each step keeps two thirds of the two hours; 40 steps leave less than a millisecond of time.
            for (var step = 0; step < 40; step++)
            {
                var (left, right) = (low + (high - low) / 3.0, high - (high - low) / 3.0);
                (low, high) = sign * height(left) > sign * height(right) ? (low, right) : (left, high);
            }

            var day = (low + high) / 2.0;
            samples.Insert(day < b.Day ? i : i + 1, (day, height(day)));
        }
    }

    private static double Crossing((double Day, double Height) a, (double Day, double Height) b, Func<double, double> height)
    {
        // False position with the stale end's height halved (Illinois rule; Dowell and Jarratt 1971): six steps or so where halving takes
        // thirty. 1e-9 day is 0.1 ms.
        var (stale, fresh) = (a, b);
        while (Math.Abs(fresh.Day - stale.Day) > 1e-9)
        {
            var day = fresh.Day - fresh.Height * (fresh.Day - stale.Day) / (fresh.Height - stale.Height);
            var next = (Day: day, Height: height(day));
            if (Math.Abs(next.Day - fresh.Day) <= 1e-9)
            {
                return next.Day;
            }

            stale = next.Height >= 0.0 != fresh.Height >= 0.0 ? fresh : (stale.Day, stale.Height / 2.0);
            fresh = next;
        }

        return fresh.Day;
    }

    private static Altitude AltitudeAt(SunInstant instant, GeoPoint place) => Altitude.FromAngle(Angle.FromRadians(AltitudeRadians(instant, place)));

    // Seen from the Earth's centre, as almanacs do for rising and setting: the parallax (8.8") is neglected beside 34' of air.
    private static double AltitudeRadians(SunInstant instant, GeoPoint place)
    {
        var sun = SolarEphemeris.At(instant);
        var (sinF, cosF) = Math.SinCos(place.Latitude.Radians);
        var (sinD, cosD) = Math.SinCos(sun.Declination.Radians);
        return Math.Asin(Math.Clamp(sinF * sinD + cosF * cosD * Math.Cos(sun.HourAngleAt(place.Longitude).Radians), -1.0, 1.0));
    }
}
