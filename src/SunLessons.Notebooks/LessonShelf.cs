using System.Text.Json.Nodes;
using System.Text.RegularExpressions;

namespace SunLessons.Notebooks;

/// <summary>
/// The lessons under one folder: each is a folder with a file "lesson.ipynb" whose metadata ("sunlessons") says id,
/// title, number and minutes. Nothing outside the folder is ever read: names with "..", separators or other paths are
/// refused, and so are links that lead out of it.
/// </summary>
public sealed partial class LessonShelf
{
    /// <summary>The name of the notebook file in each lesson's folder.</summary>
    public const string FileName = "lesson.ipynb";

    private readonly string _root;

    /// <summary>Makes a shelf over a folder; the folder need not exist yet.</summary>
    /// <param name="folder">The folder that holds one folder a lesson.</param>
    public LessonShelf(string folder) => _root = Path.TrimEndingDirectorySeparator(Path.GetFullPath(folder));

    /// <summary>The full path of the shelf's folder.</summary>
    public string Root => _root;

    [GeneratedRegex("^[a-z0-9]+(-[a-z0-9]+)*$")]
    private static partial Regex NamePattern();

    /// <summary>The lessons in their order in the course. Folders whose notebook cannot be used are left out; see <see cref="Problems"/>.</summary>
    public IReadOnlyList<Lesson> Lessons() => [.. Look().OfType<Lesson>().OrderBy(lesson => lesson.Number).ThenBy(lesson => lesson.Folder, StringComparer.Ordinal)];

    /// <summary>One sentence for each folder whose notebook cannot be used as a lesson.</summary>
    public IReadOnlyList<string> Problems() => [.. Look().OfType<string>()];

    /// <summary>The lesson of that id or folder name.</summary>
    /// <exception cref="NotebookFormatException">There is none, or its file is no lesson; one sentence.</exception>
    public Lesson Find(string idOrFolder)
    {
        if (NamePattern().IsMatch(idOrFolder))
        {
            if (Directory.Exists(Path.Combine(_root, idOrFolder)))
            {
                return Open(idOrFolder);
            }

            if (Lessons().FirstOrDefault(lesson => lesson.Id == idOrFolder) is Lesson byId)
            {
                return byId;
            }
        }

        string known = string.Join(", ", Lessons().Select(lesson => lesson.Id));
        throw new NotebookFormatException(known.Length == 0
            ? $"There is no lesson \"{idOrFolder}\": {_root} holds no lessons; put lesson folders there or name another folder."
            : $"There is no lesson \"{idOrFolder}\"; the lessons here are {known}.");
    }

    private IEnumerable<object> Look()
    {
        if (!Directory.Exists(_root))
        {
            yield break;
        }

        foreach (string path in Directory.EnumerateDirectories(_root).Order(StringComparer.Ordinal))
        {
            string folder = Path.GetFileName(path);
            if (!NamePattern().IsMatch(folder) || !File.Exists(Path.Combine(path, FileName)))
            {
                continue;
            }

            object found;
            try
            {
                found = Open(folder);
            }
            catch (NotebookFormatException problem)
            {
                found = problem.Message;
            }

            yield return found;
        }
    }

    private Lesson Open(string folder)
    {
        string file = Path.Combine(_root, folder, FileName);
        string real = RealPath(file);
        string realRoot = RealPath(_root);
        if (!real.StartsWith(realRoot + Path.DirectorySeparatorChar, StringComparison.Ordinal))
        {
            throw new NotebookFormatException($"{folder}/{FileName} is a link that leads out of {_root}, and only files inside it are read; put the file itself there.");
        }

        JsonObject ours = Notebook.Read(file).SunLessons;
        string? id = Text(ours["id"]);
        string? title = Text(ours["title"]);
        int? number = Whole(ours["number"]);
        int? minutes = Whole(ours["minutes"]);
        if (id is null || !NamePattern().IsMatch(id) || string.IsNullOrWhiteSpace(title) || number is null or < 1 || minutes is null or < 1)
        {
            throw new NotebookFormatException($"{folder}/{FileName} does not say which lesson it is: its metadata \"sunlessons\" needs \"id\" (lower-case letters, digits, hyphens), \"title\", \"number\" and \"minutes\" (whole, from 1); add them.");
        }

        return new(id, title, number.Value, minutes.Value, Text(ours["summary"]) ?? "", folder, file);
    }

    /// <summary>The path with every link in it followed, folder by folder from the root of the disk.</summary>
    private static string RealPath(string path)
    {
        string full = Path.GetFullPath(path);
        string root = Path.GetPathRoot(full)!;
        string real = root;
        foreach (string part in full[root.Length..].Split(Path.DirectorySeparatorChar, StringSplitOptions.RemoveEmptyEntries))
        {
            real = Path.Combine(real, part);
            FileSystemInfo entry = Directory.Exists(real) ? new DirectoryInfo(real) : new FileInfo(real);
            if (entry.LinkTarget is not null)
            {
                try
                {
                    FileSystemInfo? target = entry.ResolveLinkTarget(returnFinalTarget: true);
                    if (target is not null)
                    {
                        real = RealPath(target.FullName);
                    }
                }
                catch (IOException problem)
                {
                    throw new NotebookFormatException($"{path} is a link that leads nowhere, and a lesson is a file; put the file itself there.", problem);
                }
            }
        }

        return real;
    }

    private static string? Text(JsonNode? node) => node is JsonValue value && value.TryGetValue(out string? text) ? text : null;

    private static int? Whole(JsonNode? node) => node is JsonValue value && value.TryGetValue(out int whole) ? whole : null;
}
