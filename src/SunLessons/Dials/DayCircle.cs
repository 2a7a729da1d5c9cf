namespace SunLessons.Dials;

/// <summary>
/// The Sun's circle of one day over a place, and where it meets a plane through the dial: the step that every inverse of a dial shares. A reading fixes the plane
/// of style and shadow line; the Sun was in it.
/// </summary>
internal static class DayCircle
{
    // Two crossings nearer than this are one, minutes; a forward run that misses the reading by more is no answer (rounding makes some 1e-9).
    private const double SameMinutes = 1e-5;

    /// <summary>
    /// Hour angles at which the Sun is in a plane and the dial, run forwards, shows the reading, in the order of the day: none, one or two. Nothing is chosen.
    /// </summary>
    /// <param name="normal">The plane's normal along east, north and up; its length does not matter.</param>
    /// <param name="place">The latitude of the place.</param>
    /// <param name="declination">The Sun's declination.</param>
    /// <param name="shown">The reading.</param>
    /// <param name="forwards">What the dial shows at an hour angle: nothing, a time or several.</param>
    public static IReadOnlyList<HourAngle> WhereItShows(
        Vector3 normal, Latitude place, SolarDeclination declination, DialTime shown, Func<HourAngle, IReadOnlyList<DialTime>> forwards)
    {
        var found = new List<HourAngle>();
        foreach (var h in Crossings(normal, place, declination))
        {
            var candidate = HourAngle.FromAngle(Angle.FromRadians(h));
            if (forwards(candidate).Any(time => Apart(time.HourAngle, shown.HourAngle) < SameMinutes)
                && found.TrueForAll(other => Apart(other, candidate) >= SameMinutes))
            {
                found.Add(candidate);
            }
        }

        found.Sort((a, b) => a.Angle.CompareTo(b.Angle));
        return found;
    }

    private static double[] Crossings(Vector3 normal, Latitude place, SolarDeclination declination)
    {
        // normal · sun(H) = a sin H + b cos H + c = 0, the Sun written in the polar frame of the place.
        var sky = PolarFrame.At(place);
        var a = normal.Dot(sky.West) * declination.Angle.Cos;
        var b = normal.Dot(sky.Meridian) * declination.Angle.Cos;
        var c = normal.Dot(sky.Pole) * declination.Angle.Sin;
        var size = Math.Sqrt(a * a + b * b);
        if (size == 0.0 || Math.Abs(c) > size)
        {
            return [];
        }

        // a sin H + b cos H = size cos(H − middle).
        var middle = Math.Atan2(a, b);
        var half = Math.Acos(-c / size);
        return [middle + half, middle - half];
    }

    private static double Apart(HourAngle a, HourAngle b) => Math.Abs((a.Angle - b.Angle).AroundZero().TimeMinutes);
}
