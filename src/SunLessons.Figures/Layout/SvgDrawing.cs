using System.Globalization;
using System.Net;

namespace SunLessons.Figures.Layout;

/// <summary>The SVG text of one figure, from back to front: ground, grid, fills, lines, markers, words.</summary>
internal sealed class SvgDrawing(PlotFrame frame, SvgOptions options)
{
    private const string Grid = "#d4d4d4";
    private const string Edge = "#595959";
    private readonly DrawingText _text = new();

    private Figure Figure => frame.Figure;

    public string Text()
    {
        var id = options.IdPrefix ?? "f" + Hash(Figure.Title + "\n" + Figure.Description + "\n" + Figure.Summary);
        var w = N(frame.Width);
        var h = N(frame.Height);
        _text.Add($"<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"sunlessons-drawing\" viewBox=\"0 0 {w} {h}\" width=\"{w}\" height=\"{h}\" role=\"img\" aria-labelledby=\"{E(id)}-t {E(id)}-d\" font-family=\"Arial, Helvetica, 'Liberation Sans', sans-serif\" font-size=\"{frame.Size}\" fill=\"#000000\">\n");
        _text.Add($"<title id=\"{E(id)}-t\">{E(Figure.Title)}</title>\n<desc id=\"{E(id)}-d\">{E(Figure.Description)} {E(Figure.Summary)}</desc>\n");
        _text.Add($"<rect width=\"{w}\" height=\"{h}\" fill=\"#ffffff\"/>\n");
        Headings();
        if (Figure.ShowsAxes)
        {
            Axes();
        }

        Marks();
        for (var i = 0; i < Figure.Series.Length; i++)
        {
            Draw(Figure.Series[i], frame.Looks[i], i);
        }

        Words();
        _text.Add("</svg>\n");
        return _text.ToString();
    }

    private static string N(double value) => Hundredths.Text(value);

    private static string E(string text) => WebUtility.HtmlEncode(text);

    // FNV-1a, 32 bit: only to make ids that differ between figures and never between runs.
    private static string Hash(string text)
    {
        var hash = 2166136261u;
        foreach (var letter in text)
        {
            hash = (hash ^ letter) * 16777619u;
        }

        return hash.ToString("x8", CultureInfo.InvariantCulture);
    }

    private static string Dashes(LineStyle style, double width) => style switch
    {
        LineStyle.Dash => $" stroke-dasharray=\"{N(4 * width)} {N(2.4 * width)}\"",
        LineStyle.Dot => $" stroke-dasharray=\"{N(0.1)} {N(2.2 * width)}\"",
        LineStyle.DashDot => $" stroke-dasharray=\"{N(4 * width)} {N(2.2 * width)} {N(0.1)} {N(2.2 * width)}\"",
        _ => "",
    };

    private string Colour(Ink ink) => options.BlackOnly ? "#000000" : ink.Hex();

    private void Line(double x1, double y1, double x2, double y2, string stroke, double width, string more = "") =>
        _text.Add($"<line x1=\"{x1}\" y1=\"{y1}\" x2=\"{x2}\" y2=\"{y2}\" stroke=\"{stroke}\" stroke-width=\"{width}\"{more}/>\n");

    // The middle of small letters stands about a third of the letter size above the line they are written on.
    private void Word(string text, double x, double middle, string anchor = "start", string more = "") =>
        _text.Add($"<text x=\"{x}\" y=\"{middle + frame.Size * 0.35}\"{(anchor == "start" ? "" : $" text-anchor=\"{anchor}\"")}{more}>{E(text)}</text>\n");

    private void Headings()
    {
        var y = 6 + frame.TitleSize * 0.65;
        foreach (var line in frame.TitleLines)
        {
            Word(line, 12, y, more: $" font-size=\"{N(frame.TitleSize)}\" font-weight=\"bold\"");
            y += frame.TitleSize * 1.3;
        }

        y += (frame.LineHeight - frame.TitleSize * 1.3) / 2 + 2;
        foreach (var line in frame.YTitleLines)
        {
            Word(line, 12, y);
            y += frame.LineHeight;
        }
    }

    private void Axes()
    {
        var plot = frame.Plot;
        foreach (var tick in frame.YTicks)
        {
            var y = frame.PixelY(tick.Value);
            Line(plot.Left, y, plot.Right, y, tick.Value == 0 ? Edge : Grid, 1);
            Line(plot.Left - 6, y, plot.Left, y, Edge, 1);
            Word(tick.Text, plot.Left - 10, y, "end");
        }

        var row = 0;
        foreach (var tick in frame.XTicks)
        {
            var x = frame.PixelX(tick.Value);
            if (Figure.X.Kind != AxisKind.Names)
            {
                Line(x, plot.Top, x, plot.Bottom, tick.Value == 0 && Figure.EqualScales ? Edge : Grid, 1);
            }

            Line(x, plot.Bottom, x, plot.Bottom + 6, Edge, 1);
            Word(tick.Text, x, plot.Bottom + 10 + frame.LineHeight * (0.5 + row % frame.XTickRows), "middle");
            row++;
        }

        _text.Add($"<rect x=\"{plot.Left}\" y=\"{plot.Top}\" width=\"{plot.Width}\" height=\"{plot.Height}\" fill=\"none\" stroke=\"{Edge}\" stroke-width=\"1\"/>\n");
        for (var i = 0; i < frame.XTitleLines.Count; i++)
        {
            // Under the middle of the frame, or as near to it as the sheet lets the words be.
            var half = TextMeasure.Width(frame.XTitleLines[i], frame.Size) / 2 + 6;
            var middle = Math.Clamp((plot.Left + plot.Right) / 2, Math.Min(half, frame.Width / 2), Math.Max(frame.Width - half, frame.Width / 2));
            Word(frame.XTitleLines[i], middle, frame.Height - 8 - frame.LineHeight * (frame.XTitleLines.Count - i - 0.5), "middle");
        }
    }

    private void Marks()
    {
        var plot = frame.Plot;
        foreach (var mark in Figure.Marks)
        {
            if (mark.Across && mark.At >= frame.YExtent.Min && mark.At <= frame.YExtent.Max)
            {
                Line(plot.Left, frame.PixelY(mark.At), plot.Right, frame.PixelY(mark.At), "#000000", 1.5, " stroke-dasharray=\"2 4\"");
            }
            else if (!mark.Across && mark.At >= frame.XExtent.Min && mark.At <= frame.XExtent.Max)
            {
                Line(frame.PixelX(mark.At), plot.Top, frame.PixelX(mark.At), plot.Bottom, "#000000", 1.5, " stroke-dasharray=\"2 4\"");
            }
        }
    }

    private void Draw(Series series, Look look, int order)
    {
        var colour = Colour(look.Ink);
        var track = frame.Tracks[order];
        switch (series.Kind)
        {
            case SeriesKind.Bars:
                DrawBars(look, order);
                return;
            case SeriesKind.Shape:
                Shape(track.Points(), look);
                return;
            case SeriesKind.Area:
                Fill(track.Points(), colour);
                break;
        }

        if (series.Kind != SeriesKind.Points)
        {
            var before = _text.Length;
            _text.Add("<path d=\"");
            var begun = _text.Length;
            Clipping.Path(_text, track, frame.Plot);
            if (_text.Length > begun)
            {
                _text.Add($"\" fill=\"none\" stroke=\"{colour}\" stroke-width=\"{look.Width}\" stroke-linejoin=\"round\" stroke-linecap=\"{(look.Line is LineStyle.Dot or LineStyle.DashDot ? "round" : "butt")}\"{Dashes(look.Line, look.Width)}/>\n");
            }
            else
            {
                _text.CutTo(before);
            }
        }

        if (look.Marker == MarkerShape.None)
        {
            return;
        }

        // A line shows some six of its markers, set off from those of its neighbours.
        var every = series.Kind is SeriesKind.Line or SeriesKind.Area ? Math.Max(1, series.Count / 6) : 1;
        var first = every == 1 ? 0 : (every / 2 + order * every / 5) % every;
        var looks = $"fill=\"{(look.Marker is MarkerShape.Disc or MarkerShape.Diamond ? colour : "#ffffff")}\" stroke=\"{colour}\" stroke-width=\"2\"/>\n";
        for (var i = first; i < series.Count; i += every)
        {
            if (track.HasPoint(i) && frame.Plot.Contains(track.X[i], track.Y[i]))
            {
                Marker(look.Marker, track.X[i], track.Y[i], series.Strong ? 7 : 5, looks);
            }
        }
    }

    private void Marker(MarkerShape shape, double x, double y, double r, string looks)
    {
        switch (shape)
        {
            case MarkerShape.Disc:
                _text.Add($"<circle cx=\"{x}\" cy=\"{y}\" r=\"{r}\" {looks}");
                break;
            case MarkerShape.Square:
                _text.Add($"<rect x=\"{x - r}\" y=\"{y - r}\" width=\"{2 * r}\" height=\"{2 * r}\" {looks}");
                break;
            case MarkerShape.Diamond:
                _text.Add($"<path d=\"M{x} {y - r * 1.3}L{x + r * 1.3} {y}L{x} {y + r * 1.3}L{x - r * 1.3} {y}Z\" {looks}");
                break;
            default:
                _text.Add($"<path d=\"M{x} {y - r * 1.2}L{x + r * 1.2} {y + r}L{x - r * 1.2} {y + r}Z\" {looks}");
                break;
        }
    }

    private void DrawBars(Look look, int order)
    {
        // The first run of bars is full, the second empty, the next ones in between: told apart in black as well. On paper full is grey, for a mark on a black
        // bar would be lost, and so much ink soaks the sheet.
        var place = Figure.Series.Take(order).Count(s => s.Kind == SeriesKind.Bars);
        var fill = place switch { 0 => options.BlackOnly ? "0.4" : "1", 1 => "0", 2 => options.BlackOnly ? "0.8" : "0.5", _ => options.BlackOnly ? "0.15" : "0.25" };
        foreach (var bar in Bars.Of(frame, order))
        {
            _text.Add($"<rect x=\"{bar.Left}\" y=\"{Math.Min(bar.Foot, bar.End)}\" width=\"{bar.Right - bar.Left}\" height=\"{Math.Abs(bar.End - bar.Foot)}\" fill=\"{Colour(look.Ink)}\" fill-opacity=\"{fill}\" stroke=\"{Colour(look.Ink)}\" stroke-width=\"2\"/>\n");
        }

        if (frame.YExtent.Min < 0 && frame.YExtent.Max > 0)
        {
            Line(frame.Plot.Left, frame.PixelY(0), frame.Plot.Right, frame.PixelY(0), Edge, 1);
        }
    }

    private void Shape((double X, double Y)[] points, Look look)
    {
        var path = Clipping.Polygon(points, frame.Plot);
        if (path.Length > 0)
        {
            _text.Add($"<path d=\"{path}\" fill=\"{Colour(look.Ink)}\" fill-opacity=\"0.06\" stroke=\"{Colour(look.Ink)}\" stroke-width=\"{look.Width}\" stroke-linejoin=\"round\"{Dashes(look.Line, look.Width)}/>\n");
        }
    }

    private void Fill((double X, double Y)[] points, string colour)
    {
        var zero = Math.Clamp(frame.PixelY(0), frame.Plot.Top, frame.Plot.Bottom);
        foreach (var run in Clipping.Runs(points))
        {
            var path = Clipping.Polygon([(run[0].X, zero), .. run, (run[^1].X, zero)], frame.Plot);
            if (path.Length > 0)
            {
                _text.Add($"<path d=\"{path}\" fill=\"{colour}\" fill-opacity=\"0.15\" stroke=\"none\"/>\n");
            }
        }
    }

    private void Words()
    {
        foreach (var label in frame.Labels)
        {
            if (label.InMargin)
            {
                Line(label.FromX + 3, label.FromY, label.X - 4, label.Y, Colour(label.Ink), 1);
            }

            var y = label.Y - (label.Lines.Count - 1) * frame.LineHeight / 2;
            foreach (var line in label.Lines)
            {
                // A white edge keeps words readable where a grid line or a curve has to pass behind them.
                Word(line, label.X, y, label.Anchor, label.InMargin ? "" : " paint-order=\"stroke\" stroke=\"#ffffff\" stroke-width=\"4\" stroke-linejoin=\"round\"");
                y += frame.LineHeight;
            }
        }
    }
}
