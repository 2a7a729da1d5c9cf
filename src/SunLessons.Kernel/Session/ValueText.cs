using System.Globalization;
using System.Text.Json.Nodes;
using Microsoft.DotNet.Interactive.Formatting;

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

        if (Plain(value) is { } text)
        {
            return new JsonObject { ["text/plain"] = text };
        }

        return new JsonObject
        {
            ["text/plain"] = Formatter.ToDisplayString(value, "text/plain").ReplaceLineEndings("\n").TrimEnd('\n'),
            ["text/html"] = Formatter.ToDisplayString(value, "text/html"),
        };
    }

    /// <summary>The text of a value that is one thing (a number, a text, an angle, a time); null for what has parts.</summary>
    public static string? Plain(object? value) => value switch
    {
        null => "null",
        string text => text,
        bool flag => flag ? "true" : "false",
        char one => one.ToString(),
        Enum or Type => value.ToString(),
        IFormattable formattable when IsOneThing(value.GetType()) => formattable.ToString(null, CultureInfo.InvariantCulture),
        _ when IsOneThing(value.GetType()) => value.ToString() ?? "",
        _ => null,
    };

    private static bool IsOneThing(Type type)
    {
        if (type.IsPrimitive || type.Namespace == "System" && type.IsValueType && !type.FullName!.StartsWith("System.ValueTuple", StringComparison.Ordinal))
        {
            return true;
        }

        // The library's own types and NodaTime's say in ToString what they are; a compiler-made record text would list their parts.
        var ours = type.Namespace is { } name && (name.StartsWith("SunLessons", StringComparison.Ordinal) || name.StartsWith("NodaTime", StringComparison.Ordinal));
        return ours && type.GetMethod("ToString", Type.EmptyTypes) is { } own
            && own.DeclaringType == type
            && !own.IsDefined(typeof(System.Runtime.CompilerServices.CompilerGeneratedAttribute), false);
    }
}
