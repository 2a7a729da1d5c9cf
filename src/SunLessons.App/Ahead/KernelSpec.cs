using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using SunLessons.Jupyter.Client;

namespace SunLessons.App.Ahead;

/// <summary>
/// The kernelspec: the one small file by which Jupyter finds our kernel and knows how to start it ("Making kernels for Jupyter",
/// documentation of jupyter_client).
/// </summary>
/// <param name="dataFolder">One of Jupyter's data folders.</param>
public sealed class KernelSpec(string dataFolder)
{
    /// <summary>The name that notebooks and Jupyter's commands use.</summary>
    public const string Name = "sunlessons";

    /// <summary>The name that people see.</summary>
    public const string DisplayName = "SunLessons (C#)";

    private static readonly JsonSerializerOptions Written = new() { WriteIndented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>The folder that belongs to this kernelspec alone.</summary>
    public string Folder { get; } = Path.Combine(dataFolder, "kernels", Name);

    /// <summary>The file in it.</summary>
    public string File => Path.Combine(Folder, "kernel.json");

    /// <summary>Whether it is there.</summary>
    public bool IsThere => System.IO.File.Exists(File);

    /// <summary>
    /// Writes it, or puts the new one in the place of an older one. Jupyter sees the old file or the new one, never a part.
    /// </summary>
    /// <param name="command">What starts the kernel.</param>
    /// <exception cref="IOException">The folder cannot be made or written.</exception>
    /// <exception cref="UnauthorizedAccessException">It may not.</exception>
    public void Write(KernelCommand command)
    {
        var json = new JsonObject
        {
            ["argv"] = new JsonArray([command.Executable, .. command.Arguments.Select(argument => (JsonNode)argument)]),
            ["display_name"] = DisplayName,
            ["language"] = "csharp",
            // The kernel hears an interrupt as a message on every system; signals do not exist on all of them.
            ["interrupt_mode"] = "message",
            ["metadata"] = new JsonObject { ["debugger"] = false },
        };
        Directory.CreateDirectory(Folder);
        var half = Path.Combine(Folder, $".{Guid.NewGuid():N}.half");
        try
        {
            System.IO.File.WriteAllText(half, json.ToJsonString(Written) + "\n");
            System.IO.File.Move(half, File, overwrite: true);
        }
        finally
        {
            System.IO.File.Delete(half);
        }
    }

    /// <summary>
    /// Removes it, and its folder when nothing else is in there. Returns whether it was there.
    /// </summary>
    /// <exception cref="IOException">It cannot be removed.</exception>
    /// <exception cref="UnauthorizedAccessException">It may not.</exception>
    public bool Remove()
    {
        if (!IsThere)
        {
            return false;
        }

        System.IO.File.Delete(File);
        if (!Directory.EnumerateFileSystemEntries(Folder).Any())
        {
            Directory.Delete(Folder);
        }

        return true;
    }

    /// <summary>The command that it holds, word by word; null when it is not there or does not hold one.</summary>
    public IReadOnlyList<string>? Command() => CommandIn(File);

    /// <summary>The command in a kernelspec's file, word by word; null when there is none.</summary>
    /// <param name="file">Path of a kernel.json.</param>
    public static IReadOnlyList<string>? CommandIn(string file)
    {
        try
        {
            return JsonNode.Parse(System.IO.File.ReadAllText(file)) is JsonObject json && json["argv"] is JsonArray { Count: > 0 } words
                ? [.. words.Select(word => word!.GetValue<string>())]
                : null;
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException or JsonException or InvalidOperationException or NullReferenceException)
        {
            return null;
        }
    }
}
