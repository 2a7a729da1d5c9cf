using System.Text.Json.Nodes;
using SunLessons.Cells.Hosting;

namespace SunLessons.Cells.Parts;

/// <summary>Standard widgets with the attributes that all of ours share.</summary>
internal static class Build
{
    /// <summary>As wide as the page lets it be, up to a width that reads well. Front ends of the standard cut controls at 300 px where nothing is said.</summary>
    public static JsonObject Wide => new() { ["width"] = "auto", ["max_width"] = "44em" };

    /// <summary>As wide as its words.</summary>
    public static JsonObject Natural => new() { ["width"] = "auto" };

    public static Part Html(IWidgetHost host, string html, string role) => new(host, "HTMLModel", new JsonObject { ["value"] = html, ["_sunlessons_role"] = role });

    public static Part Button(IWidgetHost host, string words, string role, Action clicked) => new(
        host,
        "ButtonModel",
        new JsonObject { ["description"] = words, ["disabled"] = false, ["layout"] = Natural, ["_sunlessons_role"] = role },
        custom: content =>
        {
            if (Json.Text(content["event"]) == "click")
            {
                clicked();
            }
        });

    public static Part Text(IWidgetHost host, string description, string label, string value, string placeholder, Action<string> changed, Action? submitted = null)
    {
        var enter = submitted is null ? null : new EnterKey(submitted);
        return new Part(
            host,
            "TextModel",
            new JsonObject
            {
                ["value"] = value,
                ["description"] = description,
                ["placeholder"] = placeholder,
                ["disabled"] = false,

                // A half-typed answer is no answer: the page sends the text when the field is left or Enter is pressed.
                ["continuous_update"] = false,
                ["layout"] = Wide,
                ["_sunlessons_label"] = label,
            },
            change =>
            {
                if (change["value"] is JsonValue text && text.TryGetValue<string>(out var words))
                {
                    changed(words);
                    enter?.TextCame();
                }
            },
            content =>
            {
                if (Json.Text(content["event"]) == "submit")
                {
                    enter?.Pressed();
                }
            });
    }

    public static Part Options(IWidgetHost host, string model, string description, string label, IEnumerable<string> options, int? index, Action<int> changed) => new(
        host,
        model,
        new JsonObject
        {
            ["_options_labels"] = Labels(options),
            ["index"] = index,
            ["description"] = description,
            ["disabled"] = false,
            ["layout"] = Wide,
            ["_sunlessons_label"] = label,
        },
        change =>
        {
            if (Json.Number(change["index"]) is { } chosen)
            {
                changed((int)chosen);
            }
        });

    public static JsonArray Labels(IEnumerable<string> options) => new([.. options.Select(o => (JsonNode)o)]);

    public static Part Box(IWidgetHost host, string role, IEnumerable<Part> children, string? key = null, bool row = false)
    {
        var state = new JsonObject
        {
            ["children"] = new JsonArray([.. children.Select(c => (JsonNode)c.Reference)]),
            ["_sunlessons_role"] = role,
        };
        if (key is not null)
        {
            state["_sunlessons_key"] = key;
        }

        return new Part(host, row ? "HBoxModel" : "VBoxModel", state);
    }
}
