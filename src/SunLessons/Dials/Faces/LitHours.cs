using NodaTime;
using SunLessons.CivilTime;
using SunLessons.Sun;

namespace SunLessons.Dials.Faces;

/// <summary>
/// Which hours a face is lit, through a day and through the year: the centre of the Sun above a level horizon and before the plate. Air, hills and the Sun's
/// width are left out; the first and the last make the real day at Vigo 9 minutes longer at an equinox.
/// </summary>
public static class LitHours
{
    /// <summary>The Sun's greatest declination either way, 23.44°: the obliquity of our age, which changes by 0.013° in a century (IAU 2006: 23.4393° in 2000).</summary>
    public static Angle GreatestDeclination => Angle.FromDegrees(23.44);

    /// <summary>When a face is lit on a day of a solar declination.</summary>
    public static LitToday On(Face face, Latitude latitude, SolarDeclination declination)
    {
        var up = SkyArc.AboveHorizon(latitude, declination);
        if (up.IsNone)
        {
            return new LitToday.Never(NoReading.SunBelowHorizon, "The Sun does not rise that day; choose another date.");
        }

        var before = SkyArc.Before(FaceAxes.Of(face).Sky(latitude), declination);
        if (before.IsAll && up.IsAll)
        {
            return new LitToday.AllDay();
        }

        var spans = before.IsNone ? [] : Common(up, before);
        return spans.Count > 0
            ? new LitToday.During(spans)
            : new LitToday.Never(NoReading.SunBehindPlate, "The Sun stays behind the plate all that day; choose another date or the plate's other side.");
    }

    /// <summary>When a face is lit on the dates of a year, one every so many days from 1 January.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A step below 1 day, or a year outside 1900 to 2100.</exception>
    public static IReadOnlyList<LitOnDate> ThroughYear(Face face, GeoPoint place, int year, int everyDays = 1)
    {
        var rows = new List<LitOnDate>();
        foreach (var date in YearDates.Of(year, everyDays))
        {
            var declination = SolarEphemeris.At(SunInstant.FromInstant(LocalMeanTime.InstantOf(place.Longitude, date.At(LocalTime.Noon)))).Declination;
            rows.Add(new LitOnDate(date, declination, On(face, place.Latitude, declination)));
        }

        return rows;
    }

    /// <summary>Whether the line of an hour of local apparent time is ever lit, and between which declinations of the Sun.</summary>
    public static LineUse Of(Face face, Latitude latitude, DialTime time)
    {
        // At a fixed hour both heights have the form p cos d + q sin d with cos d above 0: in t = tan d each is a half line.
        var least = -GreatestDeclination.Tan;
        var greatest = GreatestDeclination.Tan;
        foreach (var sky in new[] { PolarFrame.At(latitude), FaceAxes.Of(face).Sky(latitude) })
        {
            var p = time.HourAngle.Angle.Cos * sky.Meridian.Z + time.HourAngle.Angle.Sin * sky.West.Z;
            var q = sky.Pole.Z;

            // Rounding: heights within 1e-15 of nothing are nothing.
            if (Math.Abs(q) < 1e-15)
            {
                if (p < 1e-15)
                {
                    return new LineUse.Never();
                }
            }
            else if (q > 0.0)
            {
                least = Math.Max(least, -p / q);
            }
            else
            {
                greatest = Math.Min(greatest, -p / q);
            }
        }

        return least < greatest
            ? new LineUse.Between(FromTangent(least), FromTangent(greatest))
            : new LineUse.Never();
    }

    private static SolarDeclination FromTangent(double t) => SolarDeclination.FromAngle(Angle.FromRadians(Math.Atan(t)));

    private static List<LitSpan> Common(SkyArc a, SkyArc b)
    {
        var ends = new List<double>();
        foreach (var arc in new[] { a, b })
        {
            if (!arc.IsAll)
            {
                ends.Add(Math.IEEERemainder(arc.Middle - arc.Half, 2.0 * Math.PI));
                ends.Add(Math.IEEERemainder(arc.Middle + arc.Half, 2.0 * Math.PI));
            }
        }

        ends.Sort();
        var lit = new List<(double From, double To)>();
        for (var i = 0; i < ends.Count; i++)
        {
            var from = ends[i];
            var to = i + 1 < ends.Count ? ends[i + 1] : ends[0] + 2.0 * Math.PI;

            // Arcs whose ends fall together to within rounding (1e-9 radians is 0.01 s of time) leave no span between them.
            if (to - from < 1e-9 || !a.Holds((from + to) / 2.0) || !b.Holds((from + to) / 2.0))
            {
                continue;
            }

            if (lit.Count > 0 && from - lit[^1].To < 1e-9)
            {
                lit[^1] = (lit[^1].From, to);
            }
            else
            {
                lit.Add((from, to));
            }
        }

        // The last gap runs over midnight and may go on into the first.
        if (lit.Count > 1 && lit[0].From + 2.0 * Math.PI - lit[^1].To < 1e-9)
        {
            lit[0] = (lit[^1].From, lit[0].To);
            lit.RemoveAt(lit.Count - 1);
        }

        return [.. lit.Select(span => new LitSpan(At(span.From), At(span.To))).OrderBy(span => span.From.Degrees)];
    }

    private static HourAngle At(double radians) => HourAngle.FromAngle(Angle.FromRadians(radians));
}
