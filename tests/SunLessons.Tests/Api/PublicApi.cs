using System.Globalization;
using System.Reflection;
using System.Text;

namespace SunLessons.Tests.Api;

/// <summary>The public API as text, a line a member, so that a change of it is seen in review.</summary>
internal static class PublicApi
{
    private static readonly NullabilityInfoContext Nullability = new();

    public static string Text()
    {
        var text = new StringBuilder();
        foreach (var type in PublicMembers.Types)
        {
            text.Append(Kind(type)).Append(' ').Append(Name(type)).Append(Bases(type)).Append('\n');
            foreach (var line in Members(type).Order(StringComparer.Ordinal))
            {
                text.Append("    ").Append(line).Append('\n');
            }
        }

        return text.ToString();
    }

    private static IEnumerable<string> Members(Type type)
    {
        if (type.IsEnum)
        {
            return Enum.GetValues(type).Cast<object>().Select(value => string.Create(CultureInfo.InvariantCulture, $"{value} = {Convert.ToInt64(value, CultureInfo.InvariantCulture)}"));
        }

        if (typeof(Delegate).IsAssignableFrom(type))
        {
            var invoke = type.GetMethod("Invoke")!;
            return [$"{Name(invoke.ReturnType)} ({Parameters(invoke.GetParameters())})"];
        }

        return
        [
            .. PublicMembers.Constructors(type).Select(c => $"new({Parameters(c.GetParameters())})"),
            .. PublicMembers.Fields(type).Select(f => $"{(f.IsLiteral ? "const" : "static readonly")} {Name(f.FieldType)} {f.Name}{(f.IsLiteral ? $" = {Convert.ToString(f.GetRawConstantValue(), CultureInfo.InvariantCulture)}" : "")}"),
            .. PublicMembers.Properties(type).Select(p =>
                $"{(p.GetMethod!.IsStatic ? "static " : "")}{Name(p.PropertyType, Nullability.Create(p).ReadState)} {(p.GetIndexParameters() is { Length: > 0 } index ? $"this[{Parameters(index)}]" : p.Name)} {{ get;{(p.SetMethod is { IsPublic: true } ? " init;" : "")} }}"),
            .. PublicMembers.Methods(type).Select(m =>
                $"{(m.IsStatic ? "static " : "")}{Name(m.ReturnType, Nullability.Create(m.ReturnParameter).ReadState)} {m.Name}({Parameters(m.GetParameters())})"),
        ];
    }

    private static string Kind(Type type) => type switch
    {
        { IsEnum: true } => "enum",
        { IsValueType: true } => "struct",
        { IsInterface: true } => "interface",
        _ when typeof(Delegate).IsAssignableFrom(type) => "delegate",
        { IsAbstract: true, IsSealed: true } => "static class",
        { IsAbstract: true } => "abstract class",
        { IsSealed: true } => "class",
        _ => "open class",
    };

    private static string Bases(Type type) => type.BaseType is { } parent && PublicMembers.Types.Contains(parent) ? " : " + Name(parent) : "";

    private static string Parameters(ParameterInfo[] parameters) => string.Join(", ", parameters.Select(p =>
        $"{(p.IsOut ? "out " : "")}{Name(p.ParameterType.IsByRef ? p.ParameterType.GetElementType()! : p.ParameterType, Nullability.Create(p).ReadState)} {p.Name}"
        + (p.HasDefaultValue ? $" = {(p.DefaultValue is null ? "default" : Convert.ToString(p.DefaultValue, CultureInfo.InvariantCulture))}" : "")));

    private static string Name(Type type, NullabilityState state = NullabilityState.NotNull)
    {
        if (Nullable.GetUnderlyingType(type) is { } inner)
        {
            return Name(inner) + "?";
        }

        var suffix = !type.IsValueType && state == NullabilityState.Nullable ? "?" : "";
        if (type.IsArray)
        {
            return $"{Name(type.GetElementType()!)}[{new string(',', type.GetArrayRank() - 1)}]{suffix}";
        }

        if (type.IsGenericParameter)
        {
            return type.Name;
        }

        var plain = type.IsNested ? Name(type.DeclaringType!) + "." + type.Name : type.Namespace is "System" or "System.Collections.Generic" ? type.Name : type.FullName ?? type.Name;
        plain = plain.Replace("SunLessons.", "", StringComparison.Ordinal);
        return (type.IsGenericType ? $"{plain.Split('`')[0]}<{string.Join(", ", type.GetGenericArguments().Select(a => Name(a)))}>" : plain) + suffix;
    }
}
