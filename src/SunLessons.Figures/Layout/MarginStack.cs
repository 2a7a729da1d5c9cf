namespace SunLessons.Figures.Layout;

/// <summary>Labels in the margin on the right, each as level with its line's end as the others let it be.</summary>
internal static class MarginStack
{
    public static List<PlacedText> Place(PlotFrame frame, Dictionary<int, IReadOnlyList<string>> wrapped)
    {
        var entries = wrapped
            .Select(pair => (Index: pair.Key, Lines: pair.Value, End: PlotFrame.LastPoint(frame.Figure.Series[pair.Key], frame.XExtent)!.Value))
            .Select(e => (e.Index, e.Lines, X: frame.PixelX(e.End.X), Y: Math.Clamp(frame.PixelY(e.End.Y), frame.Plot.Top, frame.Plot.Bottom), Half: e.Lines.Count * frame.LineHeight / 2 + 2))
            .OrderBy(e => e.Y).ThenBy(e => e.Index)
            .ToArray();
        var middles = entries.Select(e => e.Y).ToArray();

        // Blocks of labels that touch share the move equally: a block stands where the mean of its labels wants it.
        for (var round = 0; round < 60; round++)
        {
            var moved = false;
            for (var k = 0; k + 1 < entries.Length; k++)
            {
                var overlap = middles[k] + entries[k].Half + entries[k + 1].Half - middles[k + 1];
                if (overlap > 0.05)
                {
                    middles[k] -= overlap / 2;
                    middles[k + 1] += overlap / 2;
                    moved = true;
                }
            }

            for (var k = 0; k < entries.Length; k++)
            {
                var kept = Math.Clamp(middles[k], frame.Plot.Top + entries[k].Half - frame.LineHeight / 2, frame.Plot.Bottom - entries[k].Half + frame.LineHeight / 2);
                moved |= Math.Abs(kept - middles[k]) > 0.05;
                middles[k] = kept;
            }

            if (!moved)
            {
                break;
            }
        }

        return [.. entries.Select((e, k) => new PlacedText(e.Lines, frame.Plot.Right + 22, middles[k], "start", frame.Looks[e.Index].Ink, frame.Plot.Right, e.Y, InMargin: true))];
    }
}
