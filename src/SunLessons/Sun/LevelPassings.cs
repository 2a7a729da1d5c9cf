namespace SunLessons.Sun;

/// <summary>
/// When the Sun's centre passes a level on its way up and down, from one lower transit of the meridian to the next: rising and setting, dawn and dusk.
/// </summary>
/// <param name="Up">The first passing upwards; null if there is none.</param>
/// <param name="Down">The first passing downwards; null if there is none.</param>
/// <param name="Lowest">The least geometric altitude that was met.</param>
/// <param name="Highest">The greatest geometric altitude that was met.</param>
internal readonly record struct LevelPassings(SunInstant? Up, SunInstant? Down, Altitude Lowest, Altitude Highest)
{
    // An hour between samples; between them the altitude has at most one turning point, which is looked for where it could matter.
    private const int Samples = 24;

    /// <summary>Whether the Sun stays above the level all day; without meaning where it passes it.</summary>
    public bool StaysAbove(Altitude level) => Lowest.Radians >= level.Radians;

    public static LevelPassings Around(SunInstant transit, GeoPoint place, Altitude level)
    {
        double Height(double day) => AltitudeRadians(transit.PlusDays(day), place) - level.Radians;

        var samples = new List<(double Day, double Height)>(Samples + 3);
        for (var i = 0; i <= Samples; i++)
        {
            var day = (double)i / Samples - 0.5;
            samples.Add((day, Height(day)));
        }

        AddTurningPoints(samples, Height);
        SunInstant? up = null, down = null;
        for (var i = 1; i < samples.Count; i++)
        {
            var (before, after) = (samples[i - 1], samples[i]);
            if (before.Height < 0.0 && after.Height >= 0.0)
            {
                up ??= transit.PlusDays(Crossing(before, after, Height));
            }
            else if (before.Height >= 0.0 && after.Height < 0.0)
            {
                down ??= transit.PlusDays(Crossing(before, after, Height));
            }
        }

        Altitude Geometric(double height) => Altitude.FromAngle(Angle.FromRadians(height + level.Radians));
        return new LevelPassings(up, down, Geometric(samples.Min(p => p.Height)), Geometric(samples.Max(p => p.Height)));
    }

    // Seen from the Earth's centre, as almanacs do for rising and setting: the parallax (8.8") is neglected beside 34' of air.
    public static double AltitudeRadians(SunInstant instant, GeoPoint place)
    {
        var sun = SolarEphemeris.At(instant);
        var (sinF, cosF) = Math.SinCos(place.Latitude.Radians);
        var (sinD, cosD) = Math.SinCos(sun.Declination.Radians);
        return Math.Asin(Math.Clamp(sinF * sinD + cosF * cosD * Math.Cos(sun.HourAngleAt(place.Longitude).Radians), -1.0, 1.0));
    }

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
}
