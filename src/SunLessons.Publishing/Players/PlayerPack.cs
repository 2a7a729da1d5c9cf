using System.Reflection.Metadata;
using System.Reflection.PortableExecutable;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace SunLessons.Publishing.Players;

/// <summary>
/// Packs a published WebAssembly player into two scripts that any page can load, from a disk too: what every lesson needs, and what only changing a cell
/// needs. In a script, because a page from a disk may load scripts from beside it and nothing else.
/// </summary>
internal static class PlayerPack
{
    private const string Main = "SunLessons.Player.dll";
    private const string Compiling = "SunLessons.Scripts";

    // The compiler asks for old code pages only when it reads a file in one; a page gives it text.
    private const string Unused = "System.Text.Encoding.CodePages.dll";
    // The signs of a packed text need no escape; the usual writer would escape some all the same.
    private static readonly JsonSerializerOptions Plain = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };
    private const string Begin = "/*json-start*/";
    private const string End = "/*json-end*/";

    /// <summary>Writes player.js, compiler.js and the assemblies that cells are compiled against (refs) into a folder.</summary>
    /// <param name="framework">The published player's folder of runtime files.</param>
    /// <param name="target">Where the packs go.</param>
    public static void Write(string framework, string target)
    {
        var assemblies = Directory.EnumerateFiles(framework, "*.dll").ToDictionary(file => Path.GetFileName(file)!, File.ReadAllBytes);
        var needed = Closure(assemblies);
        var files = new Dictionary<string, byte[]>(StringComparer.Ordinal);
        foreach (var name in needed)
        {
            files[name] = assemblies[name];
        }

        foreach (var name in (string[])["dotnet.js", "dotnet.runtime.js", "dotnet.native.js"])
        {
            files[name] = System.Text.Encoding.UTF8.GetBytes(Addressed(name, File.ReadAllText(Path.Combine(framework, name)), needed));
        }

        files["dotnet.native.wasm"] = File.ReadAllBytes(Path.Combine(framework, "dotnet.native.wasm"));
        Directory.CreateDirectory(Path.Combine(target, "refs"));
        foreach (var (name, bytes) in assemblies)
        {
            File.WriteAllBytes(Path.Combine(target, "refs", name), bytes);
        }

        WritePack(Path.Combine(target, "player.js"), "player", files);
        // The compiler's assemblies lean on each other: those that lean on nothing that is still to come go first.
        WritePack(Path.Combine(target, "compiler.js"), "compiler", LoadOrder(assemblies, needed).ToDictionary(name => name, name => assemblies[name]));
    }

    /// <summary>What the player needs while no cell is changed: everything that it reaches without the compiler.</summary>
    private static HashSet<string> Closure(Dictionary<string, byte[]> assemblies)
    {
        var reached = new HashSet<string>(StringComparer.Ordinal) { Main, "System.Private.CoreLib.dll", "System.Runtime.InteropServices.JavaScript.dll" };
        var open = new Queue<string>(reached);
        while (open.TryDequeue(out var name))
        {
            foreach (var next in References(assemblies[name]).Where(next => next != Compiling + ".dll" && assemblies.ContainsKey(next) && reached.Add(next)))
            {
                open.Enqueue(next);
            }
        }

        // Cells name the library's facades, which the player's own code may not.
        reached.UnionWith(((string[])["System.Runtime.dll", "System.Linq.dll", "System.Collections.dll", "System.Console.dll"]).Where(assemblies.ContainsKey));

        return reached;
    }

    private static List<string> LoadOrder(Dictionary<string, byte[]> assemblies, HashSet<string> loaded)
    {
        var order = new List<string>();
        var seen = new HashSet<string>(loaded, StringComparer.Ordinal);
        void Visit(string name)
        {
            if (seen.Add(name))
            {
                foreach (var next in References(assemblies[name]).Where(next => next != Unused && assemblies.ContainsKey(next)))
                {
                    Visit(next);
                }

                order.Add(name);
            }
        }

        Visit(Compiling + ".dll");
        return order;
    }

    private static IEnumerable<string> References(byte[] assembly)
    {
        using var image = new PEReader(new MemoryStream(assembly));
        var metadata = image.GetMetadataReader();
        return [.. metadata.AssemblyReferences.Select(handle => metadata.GetString(metadata.GetAssemblyReference(handle).Name) + ".dll")];
    }

    /// <summary>
    /// The runtime's scripts ask for their own address, which is none that a page from a disk can use: they get one that is never asked. The list of what
    /// to load keeps what is needed.
    /// </summary>
    private static string Addressed(string name, string script, HashSet<string> needed)
    {
        const string own = "import.meta.url";
        if (name != "dotnet.runtime.js" && !script.Contains(own, StringComparison.Ordinal))
        {
            throw new PublishProblemException($"The runtime's script {name} does not say '{own}' any more, so it cannot be packed; use the SDK that global.json names.");
        }

        script = script.Replace(own, $"\"https://player.invalid/_framework/{name}\"", StringComparison.Ordinal);
        if (name != "dotnet.js")
        {
            return script;
        }

        var from = script.IndexOf(Begin, StringComparison.Ordinal);
        var to = script.IndexOf(End, StringComparison.Ordinal);
        if (from < 0 || to < from)
        {
            throw new PublishProblemException("The runtime's script dotnet.js carries no list of its files any more, so it cannot be packed; use the SDK that global.json names.");
        }

        from += Begin.Length;
        var boot = JsonNode.Parse(script[from..to])!;
        foreach (var list in boot["resources"]!.AsObject().Select(pair => pair.Value).OfType<JsonArray>())
        {
            list.RemoveAll(file => (string)file!["name"]! is { } dll && dll.EndsWith(".dll", StringComparison.Ordinal) && !needed.Contains(dll));
            foreach (var file in list)
            {
                // Checked when the whole pack was fetched; the file inside differs from the hash of the one outside.
                file!.AsObject().Remove("hash");
                file.AsObject().Remove("integrity");
            }
        }

        return script[..from] + boot.ToJsonString() + script[to..];
    }

    private static void WritePack(string file, string name, Dictionary<string, byte[]> files)
    {
        var pack = new JsonObject(files.Select(pair => KeyValuePair.Create(pair.Key, (JsonNode?)PackedText.Of(pair.Value))));
        File.WriteAllText(file, $"sunlessonsPack(\"{name}\",{pack.ToJsonString(Plain)});\n");
    }
}
