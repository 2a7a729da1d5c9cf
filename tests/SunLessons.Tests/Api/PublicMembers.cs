using System.Reflection;

namespace SunLessons.Tests.Api;

/// <summary>The public surface of the library by reflection.</summary>
internal static class PublicMembers
{
    private const BindingFlags Declared = BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly;

    public static Assembly Library => typeof(Angle).Assembly;

    public static IReadOnlyList<Type> Types { get; } = [.. Library.GetExportedTypes().OrderBy(type => type.FullName, StringComparer.Ordinal)];

    public static IEnumerable<PropertyInfo> Properties(Type type) => type.GetProperties(Declared).Where(p => p.Name != "EqualityContract");

    public static IEnumerable<FieldInfo> Fields(Type type) => type.GetFields(Declared).Where(f => !f.IsSpecialName);

    /// <summary>What a person wrote: no accessors, and none of what the compiler adds to a record or a delegate.</summary>
    public static IEnumerable<MethodInfo> Methods(Type type) => typeof(Delegate).IsAssignableFrom(type) ? [] : type.GetMethods(Declared).Where(method =>
        (!method.IsSpecialName || method.Name.StartsWith("op_", StringComparison.Ordinal))
        && method.Name is not ("Deconstruct" or "Equals" or "GetHashCode" or "GetType" or "<Clone>$" or "op_Equality" or "op_Inequality" or "BeginInvoke" or "EndInvoke")
        && !(method.Name == "ToString" && method.GetCustomAttribute<System.Runtime.CompilerServices.CompilerGeneratedAttribute>() is not null));

    /// <summary>Those that a caller can write; the compiler's copy constructor is not among them.</summary>
    public static IEnumerable<ConstructorInfo> Constructors(Type type) => typeof(Delegate).IsAssignableFrom(type) ? [] : type.GetConstructors(Declared)
        .Where(c => !c.IsStatic && !(c.GetParameters() is [var only] && only.ParameterType == type));
}
