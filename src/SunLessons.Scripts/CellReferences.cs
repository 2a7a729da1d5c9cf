using System.Collections.Immutable;
using Microsoft.CodeAnalysis;

namespace SunLessons.Scripts;

/// <summary>Assemblies that cells may name, read once for many chains.</summary>
public sealed class CellReferences
{
    private CellReferences(IEnumerable<byte[]> assemblies) =>
        All = [.. assemblies.Select(bytes => MetadataReference.CreateFromImage(ImmutableArray.Create(bytes)))];

    internal IReadOnlyList<MetadataReference> All { get; }

    /// <summary>Reads assemblies from their bytes: in a page there are no files.</summary>
    public static CellReferences FromImages(IEnumerable<byte[]> assemblies) => new(assemblies);

    /// <summary>Reads every assembly of a folder.</summary>
    /// <exception cref="DirectoryNotFoundException">There is no such folder.</exception>
    public static CellReferences FromFolder(string folder) =>
        new(Directory.EnumerateFiles(folder, "*.dll").Order(StringComparer.Ordinal).Select(File.ReadAllBytes));
}
