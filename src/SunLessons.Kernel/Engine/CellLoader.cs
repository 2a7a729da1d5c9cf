using System.Reflection;
using System.Runtime.Loader;
using Microsoft.CodeAnalysis;

namespace SunLessons.Kernel.Engine;

/// <summary>
/// Where compiled cells are loaded. What the program itself is made of comes from the program, so that cells and kernel share types and
/// values; files named by a cell (<c>#r "path"</c>) come from where the cell said, and what they need from beside them.
/// </summary>
internal sealed class CellLoader() : AssemblyLoadContext("cells")
{
    private readonly Dictionary<string, string> _files = new(StringComparer.OrdinalIgnoreCase);
    private readonly List<string> _folders = [];

    /// <summary>Notes what a cell refers to beyond what all cells do.</summary>
    public void Note(IEnumerable<MetadataReference> references)
    {
        foreach (var path in references.OfType<PortableExecutableReference>().Select(r => r.FilePath).OfType<string>())
        {
            _files[Path.GetFileNameWithoutExtension(path)] = path;
            if (Path.GetDirectoryName(path) is { } folder && !_folders.Contains(folder))
            {
                _folders.Add(folder);
            }
        }
    }

    protected override Assembly? Load(AssemblyName assemblyName)
    {
        if (assemblyName.Name is not { } name || _folders.Count == 0)
        {
            return null;
        }

        var beside = _folders.Select(folder => Path.Combine(folder, name + ".dll")).FirstOrDefault(File.Exists);
        var path = _files.GetValueOrDefault(name) ?? beside;
        if (path is null)
        {
            return null;
        }

        try
        {
            // The program's own comes first: two copies of one type would not be the same type.
            return Default.LoadFromAssemblyName(assemblyName);
        }
        catch (FileNotFoundException)
        {
            return LoadFromAssemblyPath(path);
        }
    }
}
