using System.Reflection;
using SunLessons.Figures;

namespace SunLessons.Cells.Running;

/// <summary>What every cell finds without importing it: what C# scripts usually find, the library, NodaTime, and what lesson cells say.</summary>
public static class CellUsings
{
    // Parts of the library that lessons do not speak to.
    private static readonly string[] Inner = ["Hosting", "Layout", "Parts", "Running", "Tables"];

    /// <summary>Namespaces, and the classes whose methods cells call by their bare names.</summary>
    public static IReadOnlyList<string> All { get; } =
    [
        "System", "System.Text", "System.Collections", "System.Collections.Generic", "System.Threading.Tasks", "System.Linq", "NodaTime",
        .. Namespaces([typeof(Angle).Assembly, typeof(Figure).Assembly, typeof(Say).Assembly]),
        .. Verbs(typeof(Say).Assembly),
    ];

    /// <summary>The classes of an assembly whose methods cells call by their bare names.</summary>
    public static IEnumerable<string> Verbs(Assembly assembly) => assembly.GetExportedTypes()
        .Where(type => type is { IsAbstract: true, IsSealed: true, Namespace: "SunLessons.Cells" or "SunLessons.Kernel.Verbs" })
        .Select(type => type.FullName!);

    /// <summary>The namespaces of the library that cells speak to, read from its assemblies, so that none is named that does not exist.</summary>
    public static IEnumerable<string> Namespaces(IEnumerable<Assembly> assemblies) => assemblies
        .SelectMany(assembly => assembly.GetExportedTypes().Select(type => type.Namespace))
        .OfType<string>()
        .Where(name => !Inner.Contains(name[(name.LastIndexOf('.') + 1)..]))
        .Distinct()
        .Order(StringComparer.Ordinal);
}
