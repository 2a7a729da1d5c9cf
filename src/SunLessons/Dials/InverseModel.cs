namespace SunLessons.Dials;

/// <summary>
/// From what a dial shows back to the Sun: every true hour angle at which a dial, standing as it does, would show a given time.
/// </summary>
/// <remarks>
/// The reading fixes a half-plane from the style through the shadow's line; the Sun's circle for the day meets its plane in at most two points.
/// Each is kept only if the <see cref="ForwardModel"/> run there shows that very reading, so the two models cannot disagree.
/// </remarks>
public static class InverseModel
{
    // Two crossings nearer than this are one, minutes; a forward run that misses the reading by more is no answer (rounding makes some 1e-9).
    private const double SameMinutes = 1e-5;

    /// <summary>
    /// All true hour angles that fit, in the order of the day; empty when the Sun never throws that shadow on that day.
    /// Nothing is chosen among several.
    /// </summary>
    /// <param name="dial">The dial's design.</param>
    /// <param name="stance">How it really stands.</param>
    /// <param name="place">The latitude of the place where it stands.</param>
    /// <param name="declination">The Sun's declination at that time.</param>
    /// <param name="shown">What the dial shows.</param>
    public static IReadOnlyList<HourAngle> HourAngles(
        FlatDial dial, DialStance stance, Latitude place, SolarDeclination declination, DialTime shown)
    {
        var found = new List<HourAngle>();
        foreach (var h in Crossings(dial, stance, place, declination, shown))
        {
            var candidate = HourAngle.FromAngle(Angle.FromRadians(h));
            if (ForwardModel.Read(dial, stance, place, candidate, declination) is DialReading.Shows shows
                && Apart(shows.Time.HourAngle, shown.HourAngle) < SameMinutes
                && found.TrueForAll(other => Apart(other, candidate) >= SameMinutes))
            {
                found.Add(candidate);
            }
        }

        found.Sort((a, b) => a.Angle.CompareTo(b.Angle));
        return found;
    }

    /// <summary>Hour angles, radians, where the day circle meets the plane of style and shadow line: none, one or two.</summary>
    private static double[] Crossings(FlatDial dial, DialStance stance, Latitude place, SolarDeclination declination, DialTime shown)
    {
        if (dial.ScaleLatitude.Radians == 0.0 || dial.StyleLatitude.Radians == 0.0)
        {
            return [];
        }

        // The shadow's line on the plate: where the scale's own hour plane cuts it.
        var clockwise = HourLines.At(dial.ScaleLatitude, shown).Clockwise;
        var towards = dial.ScaleLatitude.IsSouthern ? -1.0 : 1.0;
        var shadow = new Vector3(towards * clockwise.Sin, towards * clockwise.Cos, 0.0);
        var normal = stance.ToWorld(ForwardModel.Style(dial.StyleLatitude).Cross(shadow));

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
