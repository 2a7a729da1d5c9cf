using System.Security.Cryptography;
using System.Text;
using System.Text.Json.Nodes;
using SunLessons.Notebooks;

namespace SunLessons.Publishing;

/// <summary>Files to be written together at the end, when nothing can go wrong any more with a lesson.</summary>
internal sealed class PageFiles(string target)
{
    private readonly SortedDictionary<string, byte[]> _files = new(StringComparer.Ordinal);

    public void Add(string name, string text) => Add(name, Encoding.UTF8.GetBytes(text));

    public void Add(string name, byte[] bytes) => _files[name] = bytes;

    /// <summary>Adds the script that keeps all files added so far, under a version made of their contents.</summary>
    public void AddOfflineWorker(string name)
    {
        using var all = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        foreach (var (file, bytes) in _files)
        {
            all.AppendData(Encoding.UTF8.GetBytes(file));
            all.AppendData(bytes);
        }

        var names = new JsonArray([.. _files.Keys.Select(file => (JsonNode)file)]);
        Add(name, Asset.Text("offline.js")
            .Replace("VERSION", Convert.ToHexStringLower(all.GetHashAndReset())[..16], StringComparison.Ordinal)
            .Replace("FILES", names.ToJsonString(), StringComparison.Ordinal));
    }

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
