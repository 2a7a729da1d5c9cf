using System.Net;
using System.Text.Json.Nodes;

namespace SunLessons.Cells.Hosting;

/// <summary>A widget that stands still: its words and drawings, for a page before its script runs and for front ends that know no widgets.</summary>
public static class StillWidget
{
    private const string Reference = "IPY_MODEL_";

    /// <summary>A widget, and all that is in it, as HTML. Buttons are left out: nothing would hear them.</summary>
    /// <param name="reference">The widget's identifier, with or without "IPY_MODEL_" before it.</param>
    /// <param name="find">Gives model name and state of a widget by its identifier.</param>
    public static string Html(string reference, Func<string, (string Model, JsonObject State)> find)
    {
        ArgumentNullException.ThrowIfNull(reference);
        ArgumentNullException.ThrowIfNull(find);
        var (model, state) = find(reference.StartsWith(Reference, StringComparison.Ordinal) ? reference[Reference.Length..] : reference);
        var label = E((string?)state["description"] ?? "");
        return model switch
        {
            "VBoxModel" or "HBoxModel" => $"<div class=\"{(model == "HBoxModel" ? "group-horizontal" : "group-vertical")}\"{Mark("part", state["_sunlessons_role"])}{Mark("key", state["_sunlessons_key"])}>"
                + string.Concat(state["children"]!.AsArray().Select(child => Html((string)child!, find))) + "</div>",
            "HTMLModel" => $"<div class=\"markup\">{(string?)state["value"]}</div>",
            "DropdownModel" when state["index"] is JsonValue index => $"<p class=\"still\">{label}: {E((string)state["_options_labels"]![(int)index]!)}</p>",
            "RadioButtonsModel" or "DropdownModel" => $"<div class=\"still\"><p>{label}</p><ul>"
                + string.Concat(state["_options_labels"]!.AsArray().Select(option => $"<li>{E((string)option!)}</li>")) + "</ul></div>",
            "CheckboxModel" => $"<p class=\"still\">{((bool?)state["value"] == true ? "☑" : "☐")} {label}</p>",
            "TextModel" or "BoundedFloatTextModel" => $"<p class=\"still\">{label}: {E(state["value"]?.ToString() is { Length: > 0 } value ? value : "______________")}</p>",
            "FloatSliderModel" or "IntSliderModel" => $"<p class=\"still\">{label}: {E((string?)state["_sunlessons_text"] ?? state["value"]!.ToJsonString())}</p>",
            "DatePickerModel" => $"<p class=\"still\">{label}: {E((string?)state["_sunlessons_text"] ?? "")}</p>",
            _ => "",
        };
    }

    private static string Mark(string name, JsonNode? value) => value is null ? "" : $" data-{name}=\"{E((string)value!)}\"";

    private static string E(string text) => WebUtility.HtmlEncode(text);
}
