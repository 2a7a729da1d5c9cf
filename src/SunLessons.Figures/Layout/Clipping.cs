using System.Globalization;
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
            (string, string)? pen = null;
            for (var i = 1; i < run.Length; i++)
            {
                if (Segment(run[i - 1], run[i], box) is not { } part)
                {
                    continue;
                }

                var from = (N(part.From.X), N(part.From.Y));
                var to = (N(part.To.X), N(part.To.Y));
                if (pen != from)
                {
                    text.Append('M').Append(from.Item1).Append(' ').Append(from.Item2);
                }

                if (from != to)
                {
                    text.Append('L').Append(to.Item1).Append(' ').Append(to.Item2);
                }

                pen = to;
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
        return kept.Count < 3 ? "" : "M" + string.Join("L", kept.Select(p => N(p.X) + " " + N(p.Y))) + "Z";
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
        foreach (var (p, q) in new[] { (-dx, a.X - box.Left), (dx, box.Right - a.X), (-dy, a.Y - box.Top), (dy, box.Bottom - a.Y) })
        {
            if (p == 0)
            {
                if (q < 0)
                {
                    return null;
                }

                continue;
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
        }

        return t0 > t1 ? null : ((a.X + t0 * dx, a.Y + t0 * dy), (a.X + t1 * dx, a.Y + t1 * dy));
    }

    private static string N(double value)
    {
        var rounded = Math.Round(value, 2, MidpointRounding.AwayFromZero);
        return (rounded == 0 ? 0 : rounded).ToString("0.##", CultureInfo.InvariantCulture);
    }
}
