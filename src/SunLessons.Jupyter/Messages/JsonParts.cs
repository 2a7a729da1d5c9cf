using System.Text.Json.Nodes;

namespace SunLessons.Jupyter.Messages;

/// <summary>Reads members of a JSON object that another program wrote: what is absent or of another kind gives the value for absence, never an exception.</summary>
public static class JsonParts
{
    /// <summary>A text member.</summary>
    /// <param name="from">The object.</param>
    /// <param name="name">The member's name.</param>
    /// <param name="whenAbsent">What to give when there is no such text.</param>
    public static string Text(this JsonObject from, string name, string whenAbsent = "") =>
        from[name] is JsonValue value && value.TryGetValue<string>(out var text) ? text : whenAbsent;

    /// <summary>A whole-number member.</summary>
    /// <param name="from">The object.</param>
    /// <param name="name">The member's name.</param>
    /// <param name="whenAbsent">What to give when there is no such number.</param>
    public static int Integer(this JsonObject from, string name, int whenAbsent = 0) =>
        from[name] is JsonValue value && value.TryGetValue<int>(out var number) ? number : whenAbsent;

    /// <summary>A true-or-false member.</summary>
    /// <param name="from">The object.</param>
    /// <param name="name">The member's name.</param>
    /// <param name="whenAbsent">What to give when there is no such member.</param>
    public static bool Flag(this JsonObject from, string name, bool whenAbsent = false) =>
        from[name] is JsonValue value && value.TryGetValue<bool>(out var flag) ? flag : whenAbsent;

    /// <summary>A member that is an object; an empty one when there is none.</summary>
    /// <param name="from">The object.</param>
    /// <param name="name">The member's name.</param>
    public static JsonObject Object(this JsonObject from, string name) => from[name] as JsonObject ?? [];

    /// <summary>A member that is a list of texts; empty when there is none.</summary>
    /// <param name="from">The object.</param>
    /// <param name="name">The member's name.</param>
    public static IReadOnlyList<string> Texts(this JsonObject from, string name) =>
        from[name] is JsonArray items
            ? [.. items.OfType<JsonValue>().Select(v => v.TryGetValue<string>(out var text) ? text : null).OfType<string>()]
            : [];

    /// <summary>A copy that belongs to no other object, so that it can be put into a message.</summary>
    /// <param name="from">The object.</param>
    public static JsonObject Copy(this JsonObject from) => (JsonObject)from.DeepClone();
}
