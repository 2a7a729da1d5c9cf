using System.Runtime.InteropServices;

namespace SunLessons.Figures.Layout;

/// <summary>
/// Finds room for a few words near a point: tries places around it, counts what each would cover, takes the cheapest.
/// The order of the tries is fixed, so the same figure always gives the same drawing.
/// </summary>
internal sealed class LabelPlacer
{
    // Beyond the tip of the largest marker, a strong diamond, with a little white between.
    private const double Away = 13;

    // Between samples of what is drawn, in CSS pixels: some five of them under a small letter's height.
    private const double Every = 4;
    private static readonly double[] Reaches = [Away, Away * 1.7, Away * 3.0];
    private static readonly double[] Parts = [0.015, 0.985, 0.25, 0.5, 0.75];
    private readonly PlotFrame _frame;
    private readonly Box _room;
    private readonly List<Box> _taken = [];
    private InkMap? _ink;

    public LabelPlacer(PlotFrame frame, List<PlacedText> placed)
    {
        _frame = frame;
        _room = new Box(frame.Plot.Left + 2, frame.Plot.Top + 2, frame.Plot.Right - 2, frame.Plot.Bottom - 2);
        Placed = placed;
        _taken.AddRange(placed.Select(Taken));
    }

    public List<PlacedText> Placed { get; }

    public void Fix(string text, double x, double y) => Add(new PlacedText([text], x, y, "middle", Ink.Black, x, y, InMargin: false));

    public void Near(string text, double x, double y, Ink ink)
    {
        var search = new Search(this, Wrapped(text, 0.45), ink, (x, y), habit: 0.3);
        var half = search.Half;
        foreach (var d in Reaches)
        {
            search.Try(x + d, y, "start");
            search.Try(x, y - d - half, "middle");
            search.Try(x + d * 0.7, y - d * 0.7 - half, "start");
            search.Try(x + d * 0.7, y + d * 0.7 + half, "start");
            search.Try(x - d, y, "end");
            search.Try(x - d * 0.7, y - d * 0.7 - half, "end");
            search.Try(x - d * 0.7, y + d * 0.7 + half, "end");
            search.Try(x, y + d + half, "middle");
        }

        Add(search.Best);
    }

    /// <summary>Puts words beyond the end of a bar.</summary>
    public void Beyond(string text, double x, double y, bool above, Ink ink)
    {
        var search = new Search(this, Wrapped(text, 0.3), ink, (x, y), habit: 0.3);
        var off = search.Half + 3;
        for (var k = 1; k <= 5; k += 2)
        {
            search.Try(x, above ? y - off * k : y + off * k, "middle");
            search.Try(x, above ? y + off * k : y - off * k, "middle");
        }

        Add(search.Best);
    }

    public void Along(Mark mark)
    {
        if (!(mark.Across ? Within(mark.At, _frame.YExtent) : Within(mark.At, _frame.XExtent)))
        {
            return;
        }

        // A reference line is as well named at one height as at another.
        var search = new Search(this, Wrapped(mark.Text, 0.45), Ink.Black, of: null, habit: 0.1);
        var half = search.Half;
        var plot = _frame.Plot;
        if (mark.Across)
        {
            var y = _frame.PixelY(mark.At);
            foreach (var part in Parts)
            {
                var x = plot.Left + part * plot.Width;
                var anchor = part < 0.1 ? "start" : part > 0.9 ? "end" : "middle";
                search.Try(x, y - half - 2, anchor);
                search.Try(x, y + half + 2, anchor);
            }
        }
        else
        {
            var x = _frame.PixelX(mark.At);
            for (var row = 0; row < 8; row++)
            {
                var y = plot.Top + half + 4 + row * plot.Height / 8;
                search.Try(x + 6, y, "start");
                search.Try(x - 6, y, "end");
            }
        }

        Add(search.Best);
    }

    private static bool Within(double value, Extent extent) => value >= extent.Min && value <= extent.Max;

    private IReadOnlyList<string> Wrapped(string text, double part) => TextMeasure.Wrap(text, _frame.Size, Math.Max(_frame.Plot.Width * part, 80));

    private void Add(PlacedText text)
    {
        Placed.Add(text);
        _taken.Add(Taken(text));
    }

    private Box Taken(PlacedText text) => text.Box(TextMeasure.Widest(text.Lines, _frame.Size), _frame.LineHeight);

    // A place that costs as much as the cheapest so far is not looked at further.
    private double Cost(in Box box, double habit, double least)
    {
        if (habit >= least)
        {
            return habit;
        }

        var cost = habit + (_room.Holds(box) ? 0.0 : 1000.0 + 50 * Outside(_room, box));
        foreach (ref readonly var other in CollectionsMarshal.AsSpan(_taken))
        {
            if (cost >= least)
            {
                return cost;
            }

            if (box.Left < other.Right && other.Left < box.Right && box.Top < other.Bottom && other.Top < box.Bottom)
            {
                cost += 400;
            }
        }

        // One more than what makes it too dear, so that no rounding of the sum decides.
        return cost >= least ? cost : cost + (_ink ??= Sampled()).Count(box, least - cost + 1);
    }

    private static double Outside(Box room, Box box) =>
        Math.Max(0, room.Left - box.Left) + Math.Max(0, box.Right - room.Right) + Math.Max(0, room.Top - box.Top) + Math.Max(0, box.Bottom - room.Bottom);

    // Only where words look for room at all: those in the margin need none.
    private InkMap Sampled()
    {
        var ink = new InkMap(_frame.Width, _frame.Plot.Bottom);
        for (var i = 0; i < _frame.Tracks.Count; i++)
        {
            var kind = _frame.Figure.Series[i].Kind;
            if (kind == SeriesKind.Bars)
            {
                SampleBars(ink, i);
            }
            else
            {
                Sample(ink, _frame.Tracks[i], kind);
            }
        }

        foreach (var mark in _frame.Figure.Marks)
        {
            SampleMark(ink, mark);
        }

        return ink;
    }

    // Points every few units along what is drawn, so that a long line counts for its length and not for its number of points.
    private static void Sample(InkMap ink, Track track, SeriesKind kind)
    {
        var (xs, ys) = (track.X, track.Y);
        var joined = kind != SeriesKind.Points;

        // A marker is as large as several samples.
        var marked = kind is SeriesKind.Points or SeriesKind.LineWithPoints;
        var follows = false;
        for (var i = 0; i < xs.Length; i++)
        {
            if (!track.HasPoint(i))
            {
                follows = false;
                continue;
            }

            var (x, y) = (xs[i], ys[i]);
            if (follows && joined)
            {
                var (fromX, fromY) = (xs[i - 1], ys[i - 1]);
                var (dx, dy) = (x - fromX, y - fromY);
                ink.AddAlong(fromX, fromY, dx, dy, 1, (int)Math.Min(400, Math.Ceiling(Math.Max(Math.Abs(dx), Math.Abs(dy)) / Every)));
            }

            ink.Add(x, y);
            if (marked)
            {
                ink.Add(x + 4, y - 4);
                ink.Add(x - 4, y + 4);
                ink.Add(x + 4, y + 4);
            }

            follows = true;
        }
    }

    // The outline of each bar; its inside is ground that words may stand on only if it is empty, so it counts as ink too.
    private void SampleBars(InkMap ink, int order)
    {
        foreach (var bar in Bars.Of(_frame, order))
        {
            for (var x = bar.Left; x <= bar.Right; x += Every)
            {
                for (var y = Math.Min(bar.End, bar.Foot); y <= Math.Max(bar.End, bar.Foot); y += Every)
                {
                    ink.Add(x, y);
                }
            }
        }
    }

    private void SampleMark(InkMap ink, Mark mark)
    {
        var plot = _frame.Plot;
        if (mark.Across && Within(mark.At, _frame.YExtent))
        {
            for (var x = plot.Left; x <= plot.Right; x += Every)
            {
                ink.Add(x, _frame.PixelY(mark.At));
            }
        }
        else if (!mark.Across && Within(mark.At, _frame.XExtent))
        {
            for (var y = plot.Top; y <= plot.Bottom; y += Every)
            {
                ink.Add(_frame.PixelX(mark.At), y);
            }
        }
    }

    // Places for some words, tried one after another. Words of a point keep it; those along a line belong to where they stand.
    private struct Search(LabelPlacer placer, IReadOnlyList<string> lines, Ink ink, (double X, double Y)? of, double habit)
    {
        private readonly double _width = TextMeasure.Widest(lines, placer._frame.Size);
        private readonly double _height = lines.Count * (placer._frame.LineHeight * 0.9);
        private double _least = double.PositiveInfinity;
        private double _x, _y;
        private string _anchor = "";
        private int _tries;

        public readonly double Half => lines.Count * placer._frame.LineHeight / 2;

        public readonly PlacedText Best => new(lines, _x, _y, _anchor, ink, of?.X ?? _x, of?.Y ?? _y, InMargin: false);

        public void Try(double x, double y, string anchor)
        {
            // The order itself costs a little, so that of two equally free places the one nearer to the habit of readers wins.
            var cost = placer.Cost(PlacedText.BoxAt(x, y, anchor, _width, _height), habit * _tries++, _least);
            if (cost < _least)
            {
                (_least, _x, _y, _anchor) = (cost, x, y, anchor);
            }
        }
    }
}
