using System.Text.Json.Nodes;
using SunLessons.Figures;

namespace SunLessons.Cells.Hosting;

/// <summary>
/// All that cells need from where they run. The kernel answers it with comms; a page that holds the lesson itself answers it directly.
/// Models are those of <c>@jupyter-widgets/controls</c> 2.0.0, so that every front end that knows the standard shows them.
/// Safe to call from any thread.
/// </summary>
public interface IWidgetHost
{
    /// <summary>
    /// Opens a widget. The host adds what is the same for every widget of that model (module, view name, versions, layout).
    /// </summary>
    /// <param name="model">The standard's model name without package, such as <c>FloatSliderModel</c>.</param>
    /// <param name="state">Attributes by their names in the standard. The object belongs to the host afterwards.</param>
    IWidgetChannel Open(string model, JsonObject state);

    /// <summary>Shows a widget in the output of the running cell, with a plain text for front ends without widgets.</summary>
    void Display(IWidgetChannel root, string plainText);

    /// <summary>Shows any other output of the running cell: MIME type to content. Text content is a JSON string.</summary>
    void Display(IReadOnlyDictionary<string, JsonNode> mimeBundle);

    /// <summary>Writes figures for a page that draws them itself (<see cref="FrontEnd.DrawsFigures"/>); null where no page can.</summary>
    IFigurePen? Pen { get; }

    /// <summary>What the page told us about itself; the same object for as long as the host lives.</summary>
    FrontEnd FrontEnd { get; }

    /// <summary>Stores a learner's answer, prediction or control position under a name; null forgets it.</summary>
    void Record(string key, JsonNode? value);
}
