using System.Text.RegularExpressions;

namespace SunLessons.Notebooks.Authoring;

/// <summary>Writes the notebook with which an author begins: it runs as it is and says in its own cells what to change.</summary>
public static partial class NewLesson
{
    [GeneratedRegex("^(?:([0-9]{1,3})-)?([a-z0-9]+(?:-[a-z0-9]+)*)$")]
    private static partial Regex FolderName();

    /// <summary>Writes lesson.ipynb into a folder, which is made when it is not there; nothing that is there is touched.</summary>
    /// <param name="folder">The lesson's own folder, such as "lessons/09-a-blunt-shadow"; the number before the first hyphen becomes the lesson's.</param>
    /// <returns>The full path of the notebook.</returns>
    /// <exception cref="NotebookFormatException">The name cannot be a lesson's, or the folder holds a lesson already; one sentence.</exception>
    /// <exception cref="IOException">It could not be written; no half of it is left.</exception>
    public static string Write(string folder)
    {
        string full = Path.TrimEndingDirectorySeparator(Path.GetFullPath(folder));
        string name = Path.GetFileName(full);
        if (FolderName().Match(name) is not { Success: true } parts)
        {
            throw new NotebookFormatException($"The folder is called \"{name}\", and a lesson's folder has lower-case letters, digits and hyphens; write such as 09-a-blunt-shadow.");
        }

        string file = Path.Combine(full, LessonShelf.FileName);
        if (Path.Exists(file))
        {
            throw new NotebookFormatException($"{full} holds a lesson already, and nothing is written over one; name another folder.");
        }

        string id = parts.Groups[2].Value;
        string title = char.ToUpperInvariant(id[0]) + id[1..].Replace('-', ' ');
        Notebook lesson = Template()
            .WithSunLessons("id", id)
            .WithSunLessons("title", title)
            .WithSunLessons("number", parts.Groups[1].Success ? Math.Max(1, int.Parse(parts.Groups[1].Value, null)) : 1);
        lesson = lesson.WithSource("title", lesson.Find("title")!.Source.Replace("# A lesson to be written", "# " + title, StringComparison.Ordinal));
        Directory.CreateDirectory(full);

        // Another program may write the file at this very moment: the move then fails and its file stays.
        string unfinished = Path.Combine(full, $".{LessonShelf.FileName}.{Guid.NewGuid():N}{SafeFile.UnfinishedEnding}");
        try
        {
            File.WriteAllBytes(unfinished, lesson.ToUtf8());
            File.Move(unfinished, file, overwrite: false);
        }
        finally
        {
            File.Delete(unfinished);
        }

        return file;
    }

    private static Notebook Template()
    {
        using Stream stream = typeof(NewLesson).Assembly.GetManifestResourceStream("SunLessons.Notebooks.Authoring.template.ipynb")!;
        using var memory = new MemoryStream();
        stream.CopyTo(memory);
        return Notebook.Parse(memory.ToArray(), "The template");
    }
}
