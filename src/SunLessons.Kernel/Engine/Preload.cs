using System.Reflection;
using System.Text;
using SunLessons.Cells.Hosting;
using SunLessons.Cells.Running;

namespace SunLessons.Kernel.Engine;

/// <summary>
/// What every cell finds without importing anything: the library, NodaTime, and what lesson cells say. The namespaces are read
/// from the assemblies, so a namespace that does not exist is never named.
/// </summary>
internal static class Preload
{
    private static readonly string[] Names =
        ["SunLessons", "SunLessons.Figures", "SunLessons.Plotly", "SunLessons.Workshop", "SunLessons.Cells", "NodaTime", "MathNet.Numerics", "SunLessons.Kernel"];

    /// <summary>The assemblies whose types cells can name.</summary>
    public static IReadOnlyList<Assembly> Assemblies { get; } = Load();

    /// <summary>The using directives that the first submission consists of.</summary>
    public static string Usings { get; } = Compose();

    private static List<Assembly> Load()
    {
        var loaded = new List<Assembly> { typeof(IWidgetHost).Assembly, typeof(Preload).Assembly };
        foreach (var name in Names)
        {
            try
            {
                var assembly = Assembly.Load(name);
                if (!loaded.Contains(assembly))
                {
                    loaded.Add(assembly);
                }
            }
            catch (FileNotFoundException)
            {
                // Not part of this copy of the program: then cells cannot use it either.
            }
        }

        return loaded;
    }

    private static string Compose()
    {
        var usings = new StringBuilder();
        var names = CellUsings.Namespaces(Assemblies.Where(a => a.GetName().Name is { } name && name.StartsWith("SunLessons", StringComparison.Ordinal) && name != "SunLessons.Kernel"))
            .Append("NodaTime");
        foreach (var name in names)
        {
            usings.Append("using ").Append(name).Append(";\n");
        }

        var verbs = Assemblies.Where(a => a.GetName().Name is "SunLessons.Cells" or "SunLessons.Kernel").SelectMany(CellUsings.Verbs);
        foreach (var type in verbs)
        {
            usings.Append("using static ").Append(type).Append(";\n");
        }

        return usings.ToString();
    }
}
