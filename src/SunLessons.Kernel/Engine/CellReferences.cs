using System.Collections.Immutable;
using System.IO.MemoryMappedFiles;
using System.Reflection;
using Microsoft.CodeAnalysis;

namespace SunLessons.Kernel.Engine;

/// <summary>
/// What cells are compiled against: the framework and the library. Each file is mapped into memory and described to the compiler once for
/// the life of the kernel: references made anew for each cell cost 5 MB a cell (measured), because the compiler keeps its tables by reference.
/// </summary>
internal static class CellReferences
{
    private static readonly Lazy<ImmutableArray<PortableExecutableReference>> Made = new(Make);

    public static ImmutableArray<PortableExecutableReference> All => Made.Value;

    /// <summary>The one with an assembly's name, with or without ".dll" behind it.</summary>
    public static PortableExecutableReference? Find(string name) =>
        All.FirstOrDefault(reference => Path.GetFileNameWithoutExtension(reference.FilePath) == (name.EndsWith(".dll", StringComparison.OrdinalIgnoreCase) ? name[..^4] : name));

    private static ImmutableArray<PortableExecutableReference> Make()
    {
        var framework = Path.GetDirectoryName(typeof(object).Assembly.Location)!;
        var trusted = ((string)AppContext.GetData("TRUSTED_PLATFORM_ASSEMBLIES")!).Split(Path.PathSeparator);
        return
        [
            .. trusted.Where(path => Path.GetDirectoryName(path) == framework).Select(path => Read(path, null)).OfType<PortableExecutableReference>(),
            .. Preload.Assemblies.Select(assembly => Read(assembly.Location, Documentation(assembly))).OfType<PortableExecutableReference>(),
        ];
    }

    /// <summary>A reference to the assembly in a file; null when the file holds no managed code.</summary>
    private static unsafe PortableExecutableReference? Read(string path, DocumentationProvider? documentation)
    {
        // Neither is ever let go: the compiler reads from here as long as the kernel lives.
        var file = MemoryMappedFile.CreateFromFile(path, FileMode.Open, null, 0, MemoryMappedFileAccess.Read);
        var view = file.CreateViewAccessor(0, 0, MemoryMappedFileAccess.Read);
        byte* start = null;
        view.SafeMemoryMappedViewHandle.AcquirePointer(ref start);
        try
        {
            var module = ModuleMetadata.CreateFromImage((nint)start, (int)view.Capacity);
            return AssemblyMetadata.Create(module).GetReference(documentation, filePath: path);
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
}
