using System.Text;

namespace SunLessons.Figures.Layout;

/// <summary>
/// Cuts lines and outlines at the frame by arithmetic: a clip path would need an id that no other drawing of the page has.
/// Lines after Liang and Barsky (1984), outlines after Sutherland and Hodgman (1974).
/// </summary>
internal static class Clipping
{
    /// <summary>Unbroken runs of points; a point that is not a number ends one.</summary>
    public static IEnumerable<(double X, double Y)[]> Runs((double X, double Y)[] points)
    {
        var run = new List<(double, double)>();
        foreach (var point in points)
        {
            if (double.IsFinite(point.X) && double.IsFinite(point.Y))
            {
                run.Add(point);
            }
            else if (run.Count > 0)
            {
                yield return run.ToArray();
                run.Clear();
            }
        }

        if (run.Count > 0)
        {
            yield return run.ToArray();
        }
    }

    /// <summary>The path of a line inside a frame; empty when none of it is.</summary>
    public static string Path((double X, double Y)[] points, Box box)
    {
        var text = new StringBuilder();
        foreach (var run in Runs(points))
        {
            // Where the pen stands, in hundredths; nowhere at first.
            var (penX, penY) = (long.MinValue, long.MinValue);
            var before = run[0];
            var beforeIsInside = box.Contains(before.X, before.Y);
            for (var i = 1; i < run.Length; i++)
            {
                var (a, b) = (before, run[i]);
                var (aIsInside, bIsInside) = (beforeIsInside, box.Contains(b.X, b.Y));
                (before, beforeIsInside) = (b, bIsInside);
                if (!(aIsInside && bIsInside))
                {
                    if (Segment(a, b, box) is not { } part)
                    {
                        continue;
                    }

                    (a, b) = part;
                }

                var (fromX, fromY, toX, toY) = (Hundredths.Of(a.X), Hundredths.Of(a.Y), Hundredths.Of(b.X), Hundredths.Of(b.Y));
                if (penX != fromX || penY != fromY)
                {
                    Append(text, 'M', fromX, fromY);
                }

                if (fromX != toX || fromY != toY)
                {
                    Append(text, 'L', toX, toY);
                }

                (penX, penY) = (toX, toY);
            }
        }

        return text.ToString();
    }

    /// <summary>The closed path of an outline inside a frame; empty when none of it is.</summary>
    public static string Polygon((double X, double Y)[] points, Box box)
    {
        var kept = points.Where(p => double.IsFinite(p.X) && double.IsFinite(p.Y)).ToList();
        kept = Cut(kept, p => p.X - box.Left);
        kept = Cut(kept, p => box.Right - p.X);
        kept = Cut(kept, p => p.Y - box.Top);
        kept = Cut(kept, p => box.Bottom - p.Y);
        return kept.Count < 3 ? "" : "M" + string.Join("L", kept.Select(p => Hundredths.Text(p.X) + " " + Hundredths.Text(p.Y))) + "Z";
    }

    private static List<(double X, double Y)> Cut(List<(double X, double Y)> points, Func<(double X, double Y), double> inside)
    {
        var kept = new List<(double X, double Y)>();
        for (var i = 0; i < points.Count; i++)
        {
            var a = points[i];
            var b = points[(i + 1) % points.Count];
            var (da, db) = (inside(a), inside(b));
            if (da >= 0)
            {
                kept.Add(a);
            }

            if ((da >= 0) != (db >= 0))
            {
                var t = da / (da - db);
                kept.Add((a.X + t * (b.X - a.X), a.Y + t * (b.Y - a.Y)));
            }
        }

        return kept;
    }

    private static ((double X, double Y) From, (double X, double Y) To)? Segment((double X, double Y) a, (double X, double Y) b, Box box)
    {
        var (dx, dy) = (b.X - a.X, b.Y - a.Y);
        var (t0, t1) = (0.0, 1.0);
        return Side(-dx, a.X - box.Left, ref t0, ref t1) && Side(dx, box.Right - a.X, ref t0, ref t1)
            && Side(-dy, a.Y - box.Top, ref t0, ref t1) && Side(dy, box.Bottom - a.Y, ref t0, ref t1) && t0 <= t1
            ? ((a.X + t0 * dx, a.Y + t0 * dy), (a.X + t1 * dx, a.Y + t1 * dy))
            : null;
    }

    // Shortens the part from t0 to t1 at one side of the frame; false when all of it lies beyond.
    private static bool Side(double p, double q, ref double t0, ref double t1)
    {
        if (p == 0)
        {
            return q >= 0;
        }

        var r = q / p;
        if (p < 0)
        {
            t0 = Math.Max(t0, r);
        }
        else
        {
            t1 = Math.Min(t1, r);
        }

        return true;
    }

    private static void Append(StringBuilder text, char pen, long x, long y)
    {
        text.Append(pen);
        Hundredths.Append(text, x);
        text.Append(' ');
        Hundredths.Append(text, y);
    }
}
