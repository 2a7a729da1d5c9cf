using System.Net;
using System.Text.Json.Nodes;
using SunLessons.Cells.Hosting;
using SunLessons.Words;

namespace SunLessons.Publishing.Lessons;

/// <summary>Outputs that stand still: what a page shows before its script runs, and all that it shows without.</summary>
internal static class StillHtml
{
    /// <summary>Everything that a cell showed, one under the other.</summary>
    public static string Of(LessonRun run, string cell, WordTable words) => string.Concat(run.Outputs(cell).Select(output => Output(run, output, words)));

    private static string Output(LessonRun run, StillOutput output, WordTable words)
    {
        if (output.Root is { } root)
        {
            return Widget(run.Host, root, words);
        }

        return output.Bundle.TryGetValue("image/svg+xml", out var svg) ? (string)svg!
            : output.Bundle.TryGetValue("text/html", out var html) ? (string)html!
            : output.Bundle.TryGetValue("text/plain", out var plain) ? $"<pre class=\"plain\">{E((string)plain!)}</pre>"
            : "";
    }

    private static string Widget(InMemoryHost host, InMemoryChannel widget, WordTable words)
    {
        var state = widget.State;
        var label = E((string?)state["description"] ?? "");
        return widget.Model switch
        {
            "VBoxModel" or "HBoxModel" => $"<div class=\"{(widget.Model == "HBoxModel" ? "group-horizontal" : "group-vertical")}\"{Mark("part", state["_sunlessons_role"])}{Mark("key", state["_sunlessons_key"])}>"
                + string.Concat(state["children"]!.AsArray().Select(child => Widget(host, LessonRun.Find(host, (string)child!), words))) + "</div>",
            "HTMLModel" => $"<div class=\"markup\">{(string?)state["value"]}</div>",
            "RadioButtonsModel" or "DropdownModel" => $"<div class=\"still\"><p>{label}</p><ul>"
                + string.Concat(state["_options_labels"]!.AsArray().Select(option => $"<li>{E((string)option!)}</li>")) + "</ul></div>",
            "CheckboxModel" => $"<p class=\"still\">☐ {label}</p>",
            "TextModel" or "BoundedFloatTextModel" => $"<p class=\"still\">{label}: ______________</p>",
            "FloatSliderModel" or "IntSliderModel" => $"<p class=\"still\">{label}: {E((string?)state["_sunlessons_text"] ?? state["value"]!.ToJsonString())}</p>",
            _ => "",
        };
    }

    private static string Mark(string name, JsonNode? value) => value is null ? "" : $" data-{name}=\"{E((string)value!)}\"";

    private static string E(string text) => WebUtility.HtmlEncode(text);
}
