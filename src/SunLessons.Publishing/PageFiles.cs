using System.Text;
using SunLessons.Notebooks;

namespace SunLessons.Publishing;

/// <summary>Files to be written together at the end, when nothing can go wrong any more with a lesson.</summary>
internal sealed class PageFiles(string target)
{
    private readonly SortedDictionary<string, byte[]> _files = new(StringComparer.Ordinal);

    public void Add(string name, string text) => Add(name, Encoding.UTF8.GetBytes(text));

    public void Add(string name, byte[] bytes) => _files[name] = bytes;

    /// <summary>Writes each by atomic replace; names what was written.</summary>
    public IReadOnlyList<string> Write()
    {
        foreach (var (name, bytes) in _files)
        {
            var file = Path.Combine(target, name.Replace('/', Path.DirectorySeparatorChar));
            Directory.CreateDirectory(Path.GetDirectoryName(file)!);
            SafeFile.Replace(file, bytes);
        }

        return [.. _files.Keys];
    }
}
