using System.Text.Json.Nodes;
using Microsoft.DotNet.Interactive.Formatting;
using SunLessons.Cells.Running;

namespace SunLessons.Kernel.Session;

/// <summary>
/// How a value is shown: always as text/plain, and as text/html where a table or a list says more. Types register here their own
/// way, in one place; they know nothing of it themselves.
/// </summary>
internal sealed class ValueText
{
    private readonly List<(Type Type, Func<object, JsonObject> Show)> _ways = [];

    /// <summary>Shows values of a type, and of types derived from it, in a way of its own; the bundle must hold text/plain.</summary>
    public void Register(Type type, Func<object, JsonObject> show) => _ways.Insert(0, (type, show));

    /// <summary>The value by media type.</summary>
    public JsonObject Bundle(object? value)
    {
        if (value is not null && _ways.FirstOrDefault(w => w.Type.IsInstanceOfType(value)) is { Show: { } show })
        {
            return show(value);
        }

        if (PlainValue.Of(value) is { } text)
        {
            return new JsonObject { ["text/plain"] = text };
        }

        return new JsonObject
        {
            ["text/plain"] = Formatter.ToDisplayString(value, "text/plain").ReplaceLineEndings("\n").TrimEnd('\n'),
            ["text/html"] = Formatter.ToDisplayString(value, "text/html"),
        };
    }
}
