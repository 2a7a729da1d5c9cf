using System.Text.Json.Nodes;

namespace SunLessons.Jupyter.Widgets;

/// <summary>
/// What is the same for every widget of a model: package, versions, view and style. Names and versions from the published model
/// specification of Jupyter widgets ("jupyterwidgetmodels", protocol 2.1: @jupyter-widgets/base and controls 2.0.0).
/// </summary>
public static class WidgetModels
{
    /// <summary>The comm target of widgets.</summary>
    public const string Target = "jupyter.widget";

    /// <summary>Version of the widget protocol, sent as metadata of comm_open.</summary>
    public const string ProtocolVersion = "2.1.0";

    private const string Base = "@jupyter-widgets/base";
    private const string Controls = "@jupyter-widgets/controls";
    private const string PackageVersion = "2.0.0";

    // The style model of each control. Boxes and DatePicker-like inputs without an entry take a description style or none.
    private static readonly Dictionary<string, string> Styles = new()
    {
        ["FloatSliderModel"] = "SliderStyleModel",
        ["IntSliderModel"] = "SliderStyleModel",
        ["FloatLogSliderModel"] = "SliderStyleModel",
        ["FloatRangeSliderModel"] = "SliderStyleModel",
        ["IntRangeSliderModel"] = "SliderStyleModel",
        ["SelectionSliderModel"] = "SliderStyleModel",
        ["ButtonModel"] = "ButtonStyleModel",
        ["CheckboxModel"] = "CheckboxStyleModel",
        ["HTMLModel"] = "HTMLStyleModel",
        ["HTMLMathModel"] = "HTMLMathStyleModel",
        ["LabelModel"] = "LabelStyleModel",
        ["TextModel"] = "TextStyleModel",
        ["TextareaModel"] = "TextStyleModel",
        ["BoundedFloatTextModel"] = "DescriptionStyleModel",
        ["BoundedIntTextModel"] = "DescriptionStyleModel",
        ["FloatTextModel"] = "DescriptionStyleModel",
        ["IntTextModel"] = "DescriptionStyleModel",
        ["DropdownModel"] = "DescriptionStyleModel",
        ["RadioButtonsModel"] = "DescriptionStyleModel",
        ["SelectModel"] = "DescriptionStyleModel",
        ["DatePickerModel"] = "DescriptionStyleModel",
        ["TimeModel"] = "DescriptionStyleModel",
        ["ToggleButtonModel"] = "ToggleButtonStyleModel",
        ["ToggleButtonsModel"] = "ToggleButtonsStyleModel",
        ["FloatProgressModel"] = "ProgressStyleModel",
        ["IntProgressModel"] = "ProgressStyleModel",
        ["ValidModel"] = "DescriptionStyleModel",
    };

    // Views that are not named as their model is: a page reports an error for the name that would be expected.
    private static readonly Dictionary<string, string> Views = new()
    {
        ["BoundedFloatTextModel"] = "FloatTextView",
        ["BoundedIntTextModel"] = "IntTextView",
        ["FloatProgressModel"] = "ProgressView",
        ["IntProgressModel"] = "ProgressView",
    };

    /// <summary>The models of controls that have a style model.</summary>
    public static IReadOnlyCollection<string> Styled => Styles.Keys;

    /// <summary>The style model that goes with a control; null when it has none (boxes).</summary>
    /// <param name="model">Model name, as "FloatSliderModel".</param>
    public static string? StyleOf(string model) => Styles.GetValueOrDefault(model);

    /// <summary>The attributes that every widget of a model carries; the caller adds its own and the references to layout and style.</summary>
    /// <param name="model">Model name; "LayoutModel" and the style models too.</param>
    public static JsonObject Describe(string model)
    {
        var layout = model == "LayoutModel";
        var style = model.EndsWith("StyleModel", StringComparison.Ordinal);
        // Styles live in the controls package, but their view is the base package's: with the controls package there a page reports errors.
        return new JsonObject
        {
            ["_model_module"] = layout ? Base : Controls,
            ["_model_module_version"] = PackageVersion,
            ["_model_name"] = model,
            ["_view_count"] = null,
            ["_view_module"] = layout || style ? Base : Controls,
            ["_view_module_version"] = PackageVersion,
            ["_view_name"] = style ? "StyleView" : Views.GetValueOrDefault(model) ?? model[..^"Model".Length] + "View",
        };
    }
}
