namespace SunLessons.Figures.Layout;

/// <summary>
/// Where everything of a figure goes in a drawing of a given width: margins wide enough for their words, ticks that do not touch,
/// labels beside their lines. Both writers use it, so that a figure reads the same in a page and on paper.
/// </summary>
internal sealed class PlotFrame
{
    private const double TickLength = 6;
    private const double Gap = 6;

    // The ticks last asked for, and for what: the rounds that settle the margins mostly ask the same again, and words of ticks take long to write.
    private (Extent Extent, int Most, IReadOnlyList<Tick> Ticks)? _yTicks;
    private (Extent Extent, double Width, (IReadOnlyList<Tick> Ticks, int Rows, double ExtraHeight) Lines)? _xTicks;

    public PlotFrame(Figure figure, double width, double height, double size)
    {
        Figure = figure;
        Width = width;
        Size = size;
        Looks = Look.Of(figure);
        TitleLines = TextMeasure.Wrap(figure.Title, TitleSize, width - 4 * Gap);
        YTitleLines = figure.ShowsAxes ? TextMeasure.Wrap(figure.Y.Title, size, width - 4 * Gap) : [];

        XTitleLines = figure.ShowsAxes ? TextMeasure.Wrap(figure.X.Title, size, width - 4 * Gap) : [];

        var xExtent = Extent.Of(figure, across: true);
        var yExtent = Extent.Of(figure, across: false);

        // The words of the vertical axis stand above it, level: turned text is hard to read.
        var top = Gap + TitleLines.Count * TitleSize * 1.3 + YTitleLines.Count * LineHeight + (YTitleLines.Count > 0 ? LineHeight * 0.6 : Gap);
        var margined = MarginLabels(figure, xExtent).ToArray();
        var marginWidth = margined.Length == 0 ? 0 : Math.Min(width * 0.26, margined.Max(i => TextMeasure.Width(figure.Series[i].DirectLabel, size)) + 1);
        var wrapped = margined.ToDictionary(i => i, i => TextMeasure.Wrap(figure.Series[i].DirectLabel, size, marginWidth));
        if (margined.Length > 0)
        {
            // A single word wider than that must still fit.
            marginWidth = wrapped.Values.SelectMany(lines => lines).Max(line => TextMeasure.Width(line, size));
        }

        var right = width - (margined.Length == 0 ? 3 * Gap : marginWidth + 22 + Gap);
        var bottomHeight = figure.ShowsAxes ? TickLength + Gap + LineHeight * (1 + XTitleLines.Count) + Gap : Gap;

        // The left margin depends on the ticks' words, those on the height, and the height for equal scales on the left margin: two rounds settle it.
        var left = figure.ShowsAxes ? 60.0 : Gap;
        for (var round = 0; round < 2; round++)
        {
            var plotWidth = right - left;
            // A figure that has nothing to show yet is its title: an empty plot would be a white wall between the words.
            var plotHeight = figure.IsEmpty ? Gap
                : figure.EqualScales
                ? Math.Clamp(plotWidth * yExtent.Length / xExtent.Length, 200, Math.Max(200, 1.35 * height - top - bottomHeight))
                : Math.Max(140, height - top - bottomHeight - XTickLines(figure, xExtent, plotWidth).ExtraHeight);
            Plot = Box.At(left, top, plotWidth, plotHeight);
            if (figure.EqualScales)
            {
                var perUnit = Math.Max(xExtent.Length / plotWidth, yExtent.Length / plotHeight);
                (XExtent, YExtent) = (xExtent.WidenedTo(perUnit * plotWidth), yExtent.WidenedTo(perUnit * plotHeight));
            }
            else
            {
                (XExtent, YExtent) = (xExtent, yExtent);
            }

            YTicks = YTickLines(figure, Math.Max(2, (int)(plotHeight / 44)));
            if (figure.ShowsAxes)
            {
                var half = XTickLines(figure, XExtent, plotWidth).Ticks is { Count: > 0 } first ? TextMeasure.Width(first[0].Text, size) / 2 - 4 : 0;
                left = Math.Max(Math.Max(Gap + YTicks.Select(t => TextMeasure.Width(t.Text, size)).DefaultIfEmpty(0).Max() + Gap + TickLength, half), 3 * Gap);
            }
        }

        var ticks = XTickLines(figure, XExtent, Plot.Width);
        XTicks = ticks.Ticks;
        XTickRows = ticks.Rows;
        Height = Plot.Bottom + bottomHeight + ticks.ExtraHeight;
        Tracks = [.. figure.Series.Select(TrackOf)];
        Labels = PlaceLabels(wrapped);
    }

    public Figure Figure { get; }

    public double Width { get; }

    public double Height { get; }

    public double Size { get; }

    public double TitleSize => Size * 1.125;

    public double LineHeight => Size * 1.25;

    public IReadOnlyList<string> TitleLines { get; }

    public IReadOnlyList<string> YTitleLines { get; }

    public IReadOnlyList<string> XTitleLines { get; }

    public Box Plot { get; private set; }

    public Extent XExtent { get; private set; }

    public Extent YExtent { get; private set; }

    public IReadOnlyList<Tick> XTicks { get; }

    /// <summary>In how many rows the words of the horizontal ticks stand, taken in turn so that they do not touch.</summary>
    public int XTickRows { get; }

    public IReadOnlyList<Tick> YTicks { get; private set; } = [];

    public IReadOnlyList<Look> Looks { get; }

    /// <summary>The points of each series, in their order.</summary>
    public IReadOnlyList<Track> Tracks { get; }

    /// <summary>All direct labels, notes and words of marks.</summary>
    public IReadOnlyList<PlacedText> Labels { get; }

    public double PixelX(double x) => Plot.Left + (x - XExtent.Min) / XExtent.Length * Plot.Width;

    public double PixelY(double y) => Plot.Bottom - (y - YExtent.Min) / YExtent.Length * Plot.Height;

    /// <summary>The last point of a series that is drawn inside the frame; null when there is none.</summary>
    public static (double X, double Y)? LastPoint(Series series, Extent x, Extent? y = null)
    {
        for (var i = series.Count - 1; i >= 0; i--)
        {
            if (series.X[i] >= x.Min && series.X[i] <= x.Max && double.IsFinite(series.Y[i])
                && (y is not { } e || (series.Y[i] >= e.Min && series.Y[i] <= e.Max)))
            {
                return (series.X[i], series.Y[i]);
            }
        }

        return null;
    }

    // A line that ends near the right edge is named in the margin there; everything else is named beside its own point.
    private static IEnumerable<int> MarginLabels(Figure figure, Extent x) => Enumerable.Range(0, figure.Series.Length).Where(i =>
        figure.Series[i] is { Kind: SeriesKind.Line or SeriesKind.LineWithPoints or SeriesKind.Area } series
        && series.DirectLabel.Length > 0
        && !figure.EqualScales
        && LastPoint(series, x) is { } last
        && last.X >= x.Max - 0.03 * x.Length);

    private IReadOnlyList<Tick> YTickLines(Figure figure, int most)
    {
        if (_yTicks is not { } last || last.Extent != YExtent || last.Most != most)
        {
            _yTicks = (YExtent, most, Ticks.Between(figure.Y, YExtent.Min, YExtent.Max, most));
        }

        return _yTicks.Value.Ticks;
    }

    private (IReadOnlyList<Tick> Ticks, int Rows, double ExtraHeight) XTickLines(Figure figure, Extent x, double plotWidth)
    {
        if (!figure.ShowsAxes)
        {
            return ([], 1, 0);
        }

        if (_xTicks is not { } last || last.Extent != x || last.Width != plotWidth)
        {
            _xTicks = (x, plotWidth, XTicksOf(figure, x, plotWidth));
        }

        return _xTicks.Value.Lines;
    }

    private (IReadOnlyList<Tick> Ticks, int Rows, double ExtraHeight) XTicksOf(Figure figure, Extent x, double plotWidth)
    {
        for (var most = Math.Max(2, (int)(plotWidth / 48)); ; most--)
        {
            var ticks = Ticks.Between(figure.X, x.Min, x.Max, most);
            var spacing = ticks.Count < 2 ? plotWidth : (ticks[1].Value - ticks[0].Value) / x.Length * plotWidth;
            var widest = ticks.Select(t => TextMeasure.Width(t.Text, Size)).DefaultIfEmpty(0).Max() + Size * 0.8;
            var rows = figure.X.Kind == AxisKind.Names ? Math.Max(1, (int)Math.Ceiling(widest / spacing)) : 1;
            if (widest <= spacing * rows || most <= 2)
            {
                return (ticks, rows, (rows - 1) * LineHeight);
            }
        }
    }

    // The same arithmetic as PixelX and PixelY, with everything that is the same for all points asked once.
    private Track TrackOf(Series series)
    {
        var (left, fromX, acrossUnits, width) = (Plot.Left, XExtent.Min, XExtent.Length, Plot.Width);
        var (bottom, fromY, upUnits, height) = (Plot.Bottom, YExtent.Min, YExtent.Length, Plot.Height);
        var x = series.X.AsSpan();
        var y = series.Y.AsSpan();
        var (across, down) = (new double[x.Length], new double[x.Length]);
        for (var i = 0; i < across.Length; i++)
        {
            across[i] = left + (x[i] - fromX) / acrossUnits * width;
            down[i] = bottom - (y[i] - fromY) / upUnits * height;
        }

        return new Track(across, down);
    }

    private List<PlacedText> PlaceLabels(Dictionary<int, IReadOnlyList<string>> wrapped)
    {
        var placed = MarginStack.Place(this, wrapped);
        var placer = new LabelPlacer(this, placed);
        foreach (var note in Figure.Notes.Where(n => n.Centred && n.Text.Length > 0))
        {
            placer.Fix(note.Text, PixelX(note.X), PixelY(note.Y));
        }

        for (var i = 0; i < Figure.Series.Length; i++)
        {
            var series = Figure.Series[i];
            if (wrapped.ContainsKey(i) || series.DirectLabel.Length == 0 || LastPoint(series, XExtent, YExtent) is not { } at)
            {
                continue;
            }

            if (series.Kind == SeriesKind.Bars)
            {
                var bar = Bars.Of(this, i)[^1];
                placer.Beyond(series.DirectLabel, bar.Middle, bar.End, above: bar.End <= bar.Foot, Looks[i].Ink);
                continue;
            }

            placer.Near(series.DirectLabel, PixelX(at.X), PixelY(at.Y), Looks[i].Ink);
        }

        foreach (var note in Figure.Notes.Where(n => !n.Centred && n.Text.Length > 0))
        {
            placer.Near(note.Text, PixelX(note.X), PixelY(note.Y), Ink.Black);
        }

        foreach (var mark in Figure.Marks.Where(m => m.Text.Length > 0))
        {
            placer.Along(mark);
        }

        return placer.Placed;
    }
}
