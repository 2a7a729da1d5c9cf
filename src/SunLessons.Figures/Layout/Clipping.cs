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

    /// <summary>Writes the path of a line inside a frame; nothing when none of it is.</summary>
    public static void Path(DrawingText text, Track track, Box box)
    {
        var (xs, ys) = (track.X, track.Y);
        var (left, top, right, bottom) = (box.Left, box.Top, box.Right, box.Bottom);
        var run = false;

        // The point before and, where it is inside, its hundredths; where the pen stands, in hundredths, nowhere at first.
        var (x0, y0, in0, h0, v0) = (0.0, 0.0, false, 0L, 0L);
        var (penX, penY) = (long.MinValue, long.MinValue);
        for (var i = 0; i < xs.Length; i++)
        {
            var (x, y) = (xs[i], ys[i]);
            if (!double.IsFinite(x) || !double.IsFinite(y))
            {
                run = false;
                (penX, penY) = (long.MinValue, long.MinValue);
                continue;
            }

            var inside = x >= left && x <= right && y >= top && y <= bottom;
            var (h, v) = inside ? (Hundredths.Of(x), Hundredths.Of(y)) : (0L, 0L);
            if (run)
            {
                var (fromX, fromY, toX, toY) = (h0, v0, h, v);
                var drawn = true;
                if (!(in0 && inside))
                {
                    var part = Segment((x0, y0), (x, y), box);
                    drawn = part is not null;
                    if (part is { } cut)
                    {
                        (fromX, fromY, toX, toY) = (Hundredths.Of(cut.From.X), Hundredths.Of(cut.From.Y), Hundredths.Of(cut.To.X), Hundredths.Of(cut.To.Y));
                    }
                }

                if (drawn)
                {
                    if (penX != fromX || penY != fromY)
                    {
                        text.Add('M', fromX, fromY);
                    }

                    if (fromX != toX || fromY != toY)
                    {
                        text.Add('L', toX, toY);
                    }

                    (penX, penY) = (toX, toY);
                }
            }

            (x0, y0, in0, h0, v0) = (x, y, inside, h, v);
            run = true;
        }
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
}
