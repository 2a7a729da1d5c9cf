using System.Text.Json.Nodes;
using System.Text.RegularExpressions;

namespace SunLessons.Notebooks;

/// <summary>
/// The lessons under one folder: each is a folder with a file "lesson.ipynb" whose metadata ("sunlessons") says id,
/// title, number and minutes; beside it may lie translations, "lesson.es.ipynb". Nothing outside the folder is ever read: names with "..", separators or other paths are
/// refused, and so are links that lead out of it.
/// </summary>
public sealed partial class LessonShelf
{
    /// <summary>The name of the notebook file in each lesson's folder.</summary>
    public const string FileName = "lesson.ipynb";

    /// <summary>The language of <see cref="FileName"/>, in which every lesson exists.</summary>
    public const string FirstLanguage = "en";

    private readonly string _root;

    /// <summary>Makes a shelf over a folder; the folder need not exist yet.</summary>
    /// <param name="folder">The folder that holds one folder a lesson.</param>
    public LessonShelf(string folder) => _root = Path.TrimEndingDirectorySeparator(Path.GetFullPath(folder));

    /// <summary>The full path of the shelf's folder.</summary>
    public string Root => _root;

    [GeneratedRegex("^[a-z0-9]+(-[a-z0-9]+)*$")]
    private static partial Regex NamePattern();

    [GeneratedRegex("^lesson\\.(?<language>[a-z]{2})\\.ipynb$")]
    private static partial Regex TranslationName();

    /// <summary>The lessons in their order in the course. Folders whose notebook cannot be used are left out; see <see cref="Problems"/>.</summary>
    public IReadOnlyList<Lesson> Lessons() => [.. Look().OfType<Lesson>().OrderBy(lesson => lesson.Number).ThenBy(lesson => lesson.Folder, StringComparer.Ordinal)];

    /// <summary>The lessons in one language; a lesson that is not translated comes in English.</summary>
    public IReadOnlyList<Lesson> Lessons(string language) => [.. Lessons().Select(lesson => Translations(lesson).FirstOrDefault(translation => translation.Language == language) ?? lesson)];

    /// <summary>The languages in which there is any lesson, English first.</summary>
    public IReadOnlyList<string> Languages() => [.. Lessons().SelectMany(Translations).Select(lesson => lesson.Language).Distinct().Order(StringComparer.Ordinal).Prepend(FirstLanguage)];

    /// <summary>The translations of a lesson, in the order of their languages. Files that cannot be used are left out; see <see cref="Problems"/>.</summary>
    public IReadOnlyList<Lesson> Translations(Lesson lesson)
    {
        ArgumentNullException.ThrowIfNull(lesson);
        return [.. LookBeside(Path.GetFileName(Path.GetDirectoryName(lesson.FilePath)!)).OfType<Lesson>()];
    }

    /// <summary>One sentence for each folder whose notebook cannot be used as a lesson.</summary>
    public IReadOnlyList<string> Problems() => [.. Look().OfType<string>(), .. Lessons().SelectMany(lesson => LookBeside(lesson.Folder)).OfType<string>()];

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

            if (Lessons().SelectMany(lesson => Translations(lesson).Prepend(lesson)).FirstOrDefault(lesson => lesson.Id == idOrFolder) is Lesson byId)
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

    private IEnumerable<object> LookBeside(string folder)
    {
        foreach (string path in Directory.EnumerateFiles(Path.Combine(_root, folder), "lesson.*.ipynb").Order(StringComparer.Ordinal))
        {
            if (!TranslationName().IsMatch(Path.GetFileName(path)))
            {
                continue;
            }

            object found;
            try
            {
                found = Open(folder, Path.GetFileName(path));
            }
            catch (NotebookFormatException problem)
            {
                found = problem.Message;
            }

            yield return found;
        }
    }

    private Lesson Open(string folder, string fileName = FileName)
    {
        string file = Path.Combine(_root, folder, fileName);
        string real = RealPath(file);
        string realRoot = RealPath(_root);
        if (!real.StartsWith(realRoot + Path.DirectorySeparatorChar, StringComparison.Ordinal))
        {
            throw new NotebookFormatException($"{folder}/{fileName} is a link that leads out of {_root}, and only files inside it are read; put the file itself there.");
        }

        JsonObject ours = Notebook.Read(file).SunLessons;
        string? id = Text(ours["id"]);
        string? title = Text(ours["title"]);
        int? number = Whole(ours["number"]);
        int? minutes = Whole(ours["minutes"]);
        if (id is null || !NamePattern().IsMatch(id) || string.IsNullOrWhiteSpace(title) || number is null or < 1 || minutes is null or < 1)
        {
            throw new NotebookFormatException($"{folder}/{fileName} does not say which lesson it is: its metadata \"sunlessons\" needs \"id\" (lower-case letters, digits, hyphens), \"title\", \"number\" and \"minutes\" (whole, from 1); add them.");
        }

        Lesson lesson = new(id, title, number.Value, minutes.Value, Text(ours["summary"]) ?? "", folder, file);
        if (fileName == FileName)
        {
            return lesson;
        }

        string language = TranslationName().Match(fileName).Groups["language"].Value;
        return Text(ours["language"]) == language
            ? lesson with { Id = $"{id}-{language}", Folder = $"{folder}.{language}", Language = language }
            : throw new NotebookFormatException($"{folder}/{fileName} does not say that it is written in \"{language}\": add \"language\": \"{language}\" to its metadata \"sunlessons\", or rename it.");
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
