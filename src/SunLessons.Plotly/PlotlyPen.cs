using System.Text.Json.Nodes;

namespace SunLessons.Figures;

/// <summary>For pages that draw with plotly.js: whole figures once, then only the columns that changed.</summary>
public sealed class PlotlyPen : IFigurePen
{
    /// <inheritdoc/>
    public string MimeType => PlotlyWriter.MimeType;

    /// <inheritdoc/>
    public JsonObject Whole(Figure figure) => PlotlyWriter.WriteTree(figure);

    /// <inheritdoc/>
    public IFigureChanges After(Figure sent) => new PlotlyColumns(sent);
}
