using System.Collections.Concurrent;
using System.Collections.Immutable;
using System.IO.MemoryMappedFiles;
using System.Reflection;
using Microsoft.CodeAnalysis;

namespace SunLessons.Kernel.Engine;

/// <summary>
/// What cells are compiled against: the framework and the library. Each file is mapped into memory and described to the compiler once for
/// the life of the kernel: references made anew for each cell cost 5 MB a cell (measured), because the compiler keeps its tables by reference.
/// Of the framework's assemblies that declare nothing and only point to others (80 of 172), those that nothing here refers to are left out:
/// the compiler looks through every reference for each type it needs, and a cell takes a third less time without them (6.0 ms, then 4.0).
/// A library named by a cell that refers to one of them gets it by <see cref="Find"/>.
/// </summary>
internal static class CellReferences
{
    private static readonly Lazy<ImmutableArray<PortableExecutableReference>> Made = new(Make);
    private static readonly ConcurrentDictionary<string, PortableExecutableReference?> LeftOut = new();
    private static readonly string Framework = Path.GetDirectoryName(typeof(object).Assembly.Location)!;

    public static ImmutableArray<PortableExecutableReference> All => Made.Value;

    /// <summary>The one with an assembly's name, with or without ".dll" behind it; also one of those that <see cref="All"/> leaves out.</summary>
    public static PortableExecutableReference? Find(string name)
    {
        name = name.EndsWith(".dll", StringComparison.OrdinalIgnoreCase) ? name[..^4] : name;
        return All.FirstOrDefault(reference => Path.GetFileNameWithoutExtension(reference.FilePath) == name) ?? LeftOut.GetOrAdd(name, FindLeftOut);
    }

    private static PortableExecutableReference? FindLeftOut(string name)
    {
        var path = Path.Combine(Framework, name + ".dll");
        return File.Exists(path) ? Read(path, null)?.Reference : null;
    }

    private static ImmutableArray<PortableExecutableReference> Make()
    {
        var trusted = ((string)AppContext.GetData("TRUSTED_PLATFORM_ASSEMBLIES")!).Split(Path.PathSeparator);
        Described[] framework = [.. trusted.Where(path => Path.GetDirectoryName(path) == Framework).Distinct().Select(path => Read(path, null)).OfType<Described>()];
        Described[] library = [.. Preload.Assemblies.Select(assembly => Read(assembly.Location, Documentation(assembly))).OfType<Described>()];
        var kept = framework.Where(one => one.Declares).Concat(library).ToList();
        var named = new HashSet<string>();
        // Grows while it is walked: what is kept for the sake of another refers to others itself.
        for (var i = 0; i < kept.Count; i++)
        {
            var wanted = kept[i].RefersTo.Where(named.Add).ToArray();
            kept.AddRange(framework.Where(one => !one.Declares && wanted.Contains(Path.GetFileNameWithoutExtension(one.Reference.FilePath))));
        }

        return [.. kept.Select(one => one.Reference)];
    }

    /// <summary>A reference to the assembly in a file; null when the file holds no managed code.</summary>
    private static unsafe Described? Read(string path, DocumentationProvider? documentation)
    {
        // Neither is ever let go: the compiler reads from here as long as the kernel lives.
        var file = MemoryMappedFile.CreateFromFile(path, FileMode.Open, null, 0, MemoryMappedFileAccess.Read);
        var view = file.CreateViewAccessor(0, 0, MemoryMappedFileAccess.Read);
        byte* start = null;
        view.SafeMemoryMappedViewHandle.AcquirePointer(ref start);
        try
        {
            var module = ModuleMetadata.CreateFromImage((nint)start, (int)view.Capacity);
            var tables = module.GetMetadataReader();
            return new Described(
                AssemblyMetadata.Create(module).GetReference(documentation, filePath: path),
                tables.TypeDefinitions.Any(type => (tables.GetTypeDefinition(type).Attributes & TypeAttributes.VisibilityMask) == TypeAttributes.Public),
                [.. tables.AssemblyReferences.Select(reference => tables.GetString(tables.GetAssemblyReference(reference).Name))]);
        }
        catch (BadImageFormatException)
        {
            return null;
        }
    }

    private static XmlDocumentationProvider? Documentation(Assembly assembly)
    {
        var xml = Path.ChangeExtension(assembly.Location, ".xml");
        return File.Exists(xml) ? XmlDocumentationProvider.CreateFromFile(xml) : null;
    }

    /// <param name="Reference">The reference.</param>
    /// <param name="Declares">Whether the assembly declares a public type itself.</param>
    /// <param name="RefersTo">The names of the assemblies that it refers to.</param>
    private sealed record Described(PortableExecutableReference Reference, bool Declares, string[] RefersTo);
}
