namespace SunLessons.Figures.Layout;

/// <summary>
/// Finds room for a few words near a point: tries places around it, counts what each would cover, takes the cheapest.
/// The order of the tries is fixed, so the same figure always gives the same drawing.
/// </summary>
internal sealed class LabelPlacer
{
    private const double Away = 9;

    // Between samples of what is drawn, in CSS pixels: some five of them under a small letter's height.
    private const double Every = 4;
    private readonly PlotFrame _frame;
    private readonly InkMap _ink;
    private readonly List<Box> _taken = [];

    public LabelPlacer(PlotFrame frame, List<PlacedText> placed)
    {
        _frame = frame;
        Placed = placed;
        _ink = new InkMap(frame.Width, frame.Plot.Bottom);
        _taken.AddRange(placed.Select(Taken));
        foreach (var series in frame.Figure.Series)
        {
            Sample(series);
        }

        foreach (var mark in frame.Figure.Marks)
        {
            SampleMark(mark);
        }
    }

    public List<PlacedText> Placed { get; }

    public void Fix(string text, double x, double y) => Add(new PlacedText([text], x, y, "middle", Ink.Black, x, y, InMargin: false));

    public void Near(string text, double x, double y, Ink ink)
    {
        var lines = TextMeasure.Wrap(text, _frame.Size, Math.Max(_frame.Plot.Width * 0.45, 80));
        var half = lines.Count * _frame.LineHeight / 2;
        IEnumerable<PlacedText> Tries()
        {
            foreach (var reach in new[] { 1.0, 2.2, 4.0 })
            {
                var d = Away * reach;
                yield return new(lines, x + d, y, "start", ink, x, y, false);
                yield return new(lines, x, y - d - half, "middle", ink, x, y, false);
                yield return new(lines, x + d * 0.7, y - d * 0.7 - half, "start", ink, x, y, false);
                yield return new(lines, x + d * 0.7, y + d * 0.7 + half, "start", ink, x, y, false);
                yield return new(lines, x - d, y, "end", ink, x, y, false);
                yield return new(lines, x - d * 0.7, y - d * 0.7 - half, "end", ink, x, y, false);
                yield return new(lines, x - d * 0.7, y + d * 0.7 + half, "end", ink, x, y, false);
                yield return new(lines, x, y + d + half, "middle", ink, x, y, false);
            }
        }

        TakeCheapest(lines, Tries());
    }

    /// <summary>Puts words beyond the end of a bar.</summary>
    public void Beyond(string text, double x, double y, bool above, Ink ink)
    {
        var lines = TextMeasure.Wrap(text, _frame.Size, Math.Max(_frame.Plot.Width * 0.3, 80));
        var off = lines.Count * _frame.LineHeight / 2 + 3;
        TakeCheapest(lines, new[] { 1, 3, 5 }.SelectMany(k => new PlacedText[]
        {
            new(lines, x, above ? y - off * k : y + off * k, "middle", ink, x, y, false),
            new(lines, x, above ? y + off * k : y - off * k, "middle", ink, x, y, false),
        }));
    }

    public void Along(Mark mark)
    {
        if (!(mark.Across ? Within(mark.At, _frame.YExtent) : Within(mark.At, _frame.XExtent)))
        {
            return;
        }

        var lines = TextMeasure.Wrap(mark.Text, _frame.Size, Math.Max(_frame.Plot.Width * 0.45, 80));
        var half = lines.Count * _frame.LineHeight / 2;
        var plot = _frame.Plot;
        IEnumerable<PlacedText> Tries()
        {
            if (mark.Across)
            {
                var y = _frame.PixelY(mark.At);
                foreach (var part in new[] { 0.015, 0.985, 0.25, 0.5, 0.75 })
                {
                    var x = plot.Left + part * plot.Width;
                    var anchor = part < 0.1 ? "start" : part > 0.9 ? "end" : "middle";
                    yield return new(lines, x, y - half - 2, anchor, Ink.Black, x, y - half - 2, false);
                    yield return new(lines, x, y + half + 2, anchor, Ink.Black, x, y + half + 2, false);
                }
            }
            else
            {
                var x = _frame.PixelX(mark.At);
                for (var row = 0; row < 8; row++)
                {
                    var y = plot.Top + half + 4 + row * plot.Height / 8;
                    yield return new(lines, x + 6, y, "start", Ink.Black, x + 6, y, false);
                    yield return new(lines, x - 6, y, "end", Ink.Black, x - 6, y, false);
                }
            }
        }

        // A reference line is as well named at one height as at another.
        TakeCheapest(lines, Tries(), habit: 0.1);
    }

    private static bool Within(double value, Extent extent) => value >= extent.Min && value <= extent.Max;

    private void TakeCheapest(IReadOnlyList<string> lines, IEnumerable<PlacedText> tries, double habit = 0.3)
    {
        PlacedText? best = null;
        var least = double.PositiveInfinity;
        var order = 0;
        var width = TextMeasure.Widest(lines, _frame.Size);
        foreach (var text in tries)
        {
            // The order itself costs a little, so that of two equally free places the one nearer to the habit of readers wins.
            var cost = Cost(text, width, habit * order++, least);
            if (cost < least)
            {
                (best, least) = (text, cost);
            }
        }

        Add(best!);
    }

    private void Add(PlacedText text)
    {
        Placed.Add(text);
        _taken.Add(Taken(text));
    }

    private Box Taken(PlacedText text) => text.Box(TextMeasure.Widest(text.Lines, _frame.Size), _frame.LineHeight);

    // A place that costs as much as the cheapest so far is not looked at further.
    private double Cost(PlacedText text, double width, double habit, double least)
    {
        var box = text.Box(width, _frame.LineHeight * 0.9);
        var room = new Box(_frame.Plot.Left + 2, _frame.Plot.Top + 2, _frame.Plot.Right - 2, _frame.Plot.Bottom - 2);
        var cost = habit + (room.Holds(box) ? 0.0 : 1000.0 + 50 * Outside(room, box));
        foreach (var other in _taken)
        {
            if (cost >= least)
            {
                return cost;
            }

            if (box.Overlaps(other))
            {
                cost += 400;
            }
        }

        return cost >= least ? cost : cost + _ink.Count(box);
    }

    private static double Outside(Box room, Box box) =>
        Math.Max(0, room.Left - box.Left) + Math.Max(0, box.Right - room.Right) + Math.Max(0, room.Top - box.Top) + Math.Max(0, box.Bottom - room.Bottom);

    // Points every few units along what is drawn, so that a long line counts for its length and not for its number of points.
    private void Sample(Series series)
    {
        if (series.Kind == SeriesKind.Bars)
        {
            SampleBars(series);
            return;
        }

        (double X, double Y)? before = null;
        for (var i = 0; i < series.Count; i++)
        {
            if (!double.IsFinite(series.X[i]) || !double.IsFinite(series.Y[i]))
            {
                before = null;
                continue;
            }

            var here = (X: _frame.PixelX(series.X[i]), Y: _frame.PixelY(series.Y[i]));
            if (before is { } from && series.Kind != SeriesKind.Points)
            {
                var steps = (int)Math.Min(400, Math.Ceiling(Math.Max(Math.Abs(here.X - from.X), Math.Abs(here.Y - from.Y)) / Every));
                for (var k = 1; k < steps; k++)
                {
                    _ink.Add(from.X + (here.X - from.X) * k / steps, from.Y + (here.Y - from.Y) * k / steps);
                }
            }

            // A marker is as large as several samples.
            for (var k = 0; k < (series.Kind is SeriesKind.Points or SeriesKind.LineWithPoints ? 4 : 1); k++)
            {
                _ink.Add(here.X + (k % 2 == 0 ? -4 : 4) * (k > 0 ? 1 : 0), here.Y + (k < 2 ? -4 : 4) * (k > 0 ? 1 : 0));
            }

            before = here;
        }
    }

    // The outline of each bar; its inside is ground that words may stand on only if it is empty, so it counts as ink too.
    private void SampleBars(Series series)
    {
        foreach (var bar in Bars.Of(_frame, _frame.Figure.Series.IndexOf(series)))
        {
            for (var x = bar.Left; x <= bar.Right; x += Every)
            {
                for (var y = Math.Min(bar.End, bar.Foot); y <= Math.Max(bar.End, bar.Foot); y += Every)
                {
                    _ink.Add(x, y);
                }
            }
        }
    }

    private void SampleMark(Mark mark)
    {
        var plot = _frame.Plot;
        if (mark.Across && Within(mark.At, _frame.YExtent))
        {
            for (var x = plot.Left; x <= plot.Right; x += Every)
            {
                _ink.Add(x, _frame.PixelY(mark.At));
            }
        }
        else if (!mark.Across && Within(mark.At, _frame.XExtent))
        {
            for (var y = plot.Top; y <= plot.Bottom; y += Every)
            {
                _ink.Add(_frame.PixelX(mark.At), y);
            }
        }
    }
}
