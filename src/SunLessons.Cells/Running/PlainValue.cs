using System.Globalization;

namespace SunLessons.Cells.Running;

/// <summary>Values that are one thing, as text: numbers with a point whatever the country.</summary>
public static class PlainValue
{
    /// <summary>The text of a value that is one thing (a number, a text, an angle, a time); null for what has parts.</summary>
    public static string? Of(object? value) => value switch
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
