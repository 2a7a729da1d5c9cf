using System.Text.Json.Nodes;

namespace SunLessons.Figures;

/// <summary>For pages that put a finished drawing in its place: <c>{"svg":"&lt;svg ...&gt;"}</c>, again and again.</summary>
public sealed class SvgPen : IFigurePen
{
    private int _drawings;

    /// <inheritdoc/>
    public string MimeType => "application/vnd.sunlessons.drawing+json";

    /// <inheritdoc/>
    public JsonObject Whole(Figure figure) => Drawn(figure, NextPrefix());

    /// <inheritdoc/>
    public IFigureChanges After(Figure sent) => new Redrawn(sent, NextPrefix());

    private static JsonObject Drawn(Figure figure, string prefix) => new() { ["svg"] = SvgWriter.Write(figure, new SvgOptions { IdPrefix = prefix }) };

    // Two drawings of one page must not share an id.
    private string NextPrefix() => $"drawing-{Interlocked.Increment(ref _drawings)}";

    private sealed class Redrawn(Figure last, string prefix) : IFigureChanges
    {
        private Figure _last = last;

        public JsonObject Next(Figure figure)
        {
            if (figure.Equals(_last))
            {
                return [];
            }

            _last = figure;
            return Drawn(figure, prefix);
        }
    }
}
