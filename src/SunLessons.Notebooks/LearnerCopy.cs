using System.Security.Cryptography;
using System.Text;
using System.Text.Json.Nodes;

namespace SunLessons.Notebooks;

/// <summary>
/// The learner's copy of one lesson: edited cells, outputs and the record of predictions, answers and control positions.
/// The lesson file itself is never changed. The copy is a valid notebook of its own, saved by atomic replace: after a
/// kill at any moment the file is the last completed save or a newer one, never a half. When the lesson has changed since
/// the copy was made, cells that the learner did not edit take the new text; edits, added cells and the record survive.
/// Safe between threads.
/// </summary>
public sealed class LearnerCopy
{
    private const string BaseField = "base";
    private const string LessonField = "made_from";

    private readonly Lock _lock = new();
    private readonly Lock _saving = new();
    private readonly Notebook _lesson;
    private Notebook _notebook;
    private long _changes;
    private long _saved;

    private LearnerCopy(Lesson lesson, string filePath, Notebook lessonNotebook, Notebook notebook, string? notice, bool changed)
    {
        Lesson = lesson;
        FilePath = filePath;
        _lesson = lessonNotebook;
        _notebook = notebook;
        Notice = notice;
        _changes = changed ? 1 : 0;
    }

    /// <summary>Raised after every change, on the thread that made it; a saver listens here.</summary>
    public event Action? Changed;

    /// <summary>The lesson that this is a copy of.</summary>
    public Lesson Lesson { get; }

    /// <summary>The full path of the copy.</summary>
    public string FilePath { get; }

    /// <summary>One sentence for the learner about what happened at opening (a damaged copy set aside, new text in the lesson); null when there is nothing to say.</summary>
    public string? Notice { get; }

    /// <summary>The notebook as it is now, with the learner's edits, outputs and record.</summary>
    public Notebook Notebook
    {
        get
        {
            lock (_lock)
            {
                return _notebook;
            }
        }
    }

    /// <summary>Whether something has changed since the last completed save.</summary>
    public bool HasUnsavedChanges
    {
        get
        {
            lock (_lock)
            {
                return _changes != _saved;
            }
        }
    }

    /// <summary>A copy of the record: key to value, such as predictions, answers and control positions.</summary>
    public JsonObject Record => Notebook.SunLessons["record"] is JsonObject record ? (JsonObject)record.DeepClone() : [];

    /// <summary>
    /// Opens the learner's copy of a lesson, or makes it in memory when there is none (the first save writes it).
    /// A copy that cannot be read is renamed (".damaged-1", ".damaged-2", ...), never deleted, and <see cref="Notice"/> says so.
    /// </summary>
    /// <param name="lesson">The lesson.</param>
    /// <param name="folder">The folder of the learner's copies; null means <see cref="LearnerFolder.ForThisUser"/>. It is made if it is not there.</param>
    /// <param name="clock">Decides which unfinished files are old enough to be cleared away; null means the system's clock.</param>
    /// <exception cref="NotebookFormatException">The lesson's own file is no notebook, or the folder cannot be used; one sentence.</exception>
    public static LearnerCopy Open(Lesson lesson, string? folder = null, TimeProvider? clock = null)
    {
        folder = Path.GetFullPath(folder ?? LearnerFolder.ForThisUser());
        Notebook fresh = WithBases(lesson.ReadNotebook().WithoutOutputs());
        string path = Path.Combine(folder, lesson.Id + ".ipynb");
        try
        {
            Directory.CreateDirectory(folder);
            SafeFile.RemoveAbandoned(path, clock ?? TimeProvider.System);
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            throw new NotebookFormatException($"The folder {folder} for your copies cannot be used ({problem.Message.TrimEnd('.')}); set {LearnerFolder.Variable} to a folder that you may write to.", problem);
        }

        if (!File.Exists(path))
        {
            return new(lesson, path, fresh, fresh, notice: null, changed: true);
        }

        Notebook old;
        try
        {
            old = Notebook.Read(path);
        }
        catch (NotebookFormatException damage)
        {
            return new(lesson, path, fresh, fresh, SetAside(path, damage), changed: true);
        }

        (Notebook merged, string? notice) = Merge(fresh, old);
        return new(lesson, path, fresh, merged, notice, changed: !ReferenceEquals(merged, old));
    }

    /// <summary>Whether the learner has changed the text of this cell (or has added it).</summary>
    public bool IsEdited(string cellId) => Notebook.Find(cellId) is NotebookCell cell && Edited(cell);

    /// <summary>Takes over the learner's text of a cell.</summary>
    /// <exception cref="NotebookFormatException">There is no such cell.</exception>
    public void SetSource(string cellId, string source) => Change(notebook => notebook.WithSource(cellId, source));

    /// <summary>Gives a cell the lesson's own text back; a cell that the learner added is left as it is.</summary>
    public void RestoreSource(string cellId)
    {
        if (_lesson.Find(cellId) is NotebookCell original)
        {
            SetSource(cellId, original.Source);
        }
    }

    /// <summary>Stores what a code cell gave when it ran.</summary>
    /// <exception cref="NotebookFormatException">There is no such cell, or it is not code.</exception>
    public void SetOutputs(string cellId, IEnumerable<NotebookOutput> outputs, int? executionCount)
    {
        NotebookOutput[] list = [.. outputs];
        Change(notebook => notebook.WithOutputs(cellId, list, executionCount));
    }

    /// <summary>Adds a code cell of the learner's own after another one.</summary>
    /// <returns>The new cell's id.</returns>
    /// <exception cref="NotebookFormatException">There is no cell to put it after.</exception>
    public string AddCodeCell(string afterCellId, string source)
    {
        string id = "own-" + Guid.NewGuid().ToString("N")[..12];
        Change(notebook =>
        {
            int index = IndexOf(notebook, afterCellId);
            return index < 0
                ? throw new NotebookFormatException($"There is no cell \"{afterCellId}\" in this notebook; name one of its cells.")
                : notebook.WithInsertedCell(index + 1, CellType.Code, id, source);
        });
        return id;
    }

    /// <summary>Stores a prediction, an answer or a control's position; null forgets it.</summary>
    public void SetRecord(string key, JsonNode? value)
    {
        JsonNode? copy = value?.DeepClone();
        Change(notebook =>
        {
            JsonObject record = notebook.SunLessons["record"] is JsonObject known ? (JsonObject)known.DeepClone() : [];
            if (copy is null)
            {
                record.Remove(key);
            }
            else
            {
                record[key] = copy.DeepClone();
            }

            return notebook.WithSunLessons("record", record);
        });
    }

    /// <summary>
    /// Writes the copy if something changed since the last completed save: to a new file in the same folder, flushed to
    /// the disk, then put in the old file's place by one rename. On failure the previous file stays.
    /// </summary>
    /// <exception cref="NotebookFormatException">It could not be written; one sentence. Nothing is lost in memory and the next save tries again.</exception>
    public void Save()
    {
        // One writer at a time, so that an older state can never land on a newer one.
        lock (_saving)
        {
            Notebook notebook;
            long number;
            lock (_lock)
            {
                if (_changes == _saved)
                {
                    return;
                }

                notebook = _notebook;
                number = _changes;
            }

            try
            {
                Directory.CreateDirectory(Path.GetDirectoryName(FilePath)!);
                SafeFile.Replace(FilePath, notebook.ToUtf8());
            }
            catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
            {
                throw new NotebookFormatException($"Your copy {FilePath} could not be saved ({problem.Message.TrimEnd('.')}); the last saved one is still there: free some space or allow writing, and it will be tried again.", problem);
            }

            lock (_lock)
            {
                _saved = number;
            }
        }
    }

    private void Change(Func<Notebook, Notebook> change)
    {
        lock (_lock)
        {
            _notebook = change(_notebook);
            _changes++;
        }

        Changed?.Invoke();
    }

    private static string SetAside(string path, NotebookFormatException damage)
    {
        for (int n = 1; ; n++)
        {
            string aside = Path.ChangeExtension(path, $".damaged-{n}.ipynb");
            if (File.Exists(aside))
            {
                continue;
            }

            try
            {
                File.Move(path, aside, overwrite: false);
            }
            catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
            {
                throw new NotebookFormatException($"Your copy {path} cannot be read and cannot be renamed ({problem.Message.TrimEnd('.')}); move it away by hand and open the lesson again.", problem);
            }

            string why = damage.Message.Split([",", ";"], StringSplitOptions.None)[0];
            return $"Your saved copy could not be read ({why}), so it was kept as {Path.GetFileName(aside)} and the lesson starts afresh.";
        }
    }

    /// <summary>Every cell remembers a short hash of the lesson's text, which tells an edited cell from an untouched one, whoever edited it.</summary>
    private static Notebook WithBases(Notebook lesson)
    {
        lesson = lesson.WithSunLessons(LessonField, Hash(lesson.ToJson()));
        foreach (NotebookCell cell in lesson.Cells)
        {
            lesson = lesson.WithCellSunLessons(cell.Id, BaseField, Hash(cell.Source));
        }

        return lesson;
    }

    private static (Notebook Merged, string? Notice) Merge(Notebook lesson, Notebook old)
    {
        if (SameLesson(lesson, old))
        {
            return (old, null);
        }

        Notebook merged = lesson;
        if (old.SunLessons["record"] is JsonNode record)
        {
            merged = merged.WithSunLessons("record", record);
        }

        int renewed = 0;
        string? previous = null;
        foreach (NotebookCell cell in old.Cells)
        {
            NotebookCell? now = lesson.Find(cell.Id);
            if (now is null)
            {
                if (Edited(cell))
                {
                    // The lesson no longer has it, or never had: the learner's work stays, after the cell it followed.
                    int index = previous is null ? -1 : IndexOf(merged, previous);
                    merged = merged.WithInserted(index + 1, cell.Json);
                    previous = cell.Id;
                }

                continue;
            }

            bool edited = Edited(cell);
            if (edited && now.Type == cell.Type)
            {
                merged = merged.WithSource(cell.Id, cell.Source);
            }
            else if (now.Source != cell.Source)
            {
                renewed++;
            }

            // Outputs stay only where the text that made them stays.
            if (now.Type == CellType.Code && cell.Type == CellType.Code && (edited || now.Source == cell.Source))
            {
                merged = merged.WithOutputs(cell.Id, cell.Outputs, cell.ExecutionCount);
            }

            previous = cell.Id;
        }

        return (merged, "The lesson has new text since you last opened it; your own changes and answers are kept"
            + (renewed > 0 ? $", and cells that you had not changed ({renewed}) were renewed." : "."));
    }

    /// <summary>Whether the copy was made from this very lesson: it remembers a hash of the lesson's text and metadata.</summary>
    private static bool SameLesson(Notebook lesson, Notebook copy) =>
        copy.SunLessons[LessonField] is JsonValue value && value.TryGetValue(out string? hash) && hash == lesson.SunLessons[LessonField]!.GetValue<string>();

    private static bool Edited(NotebookCell cell) => cell.SunLessonsText(BaseField) != Hash(cell.Source);

    private static int IndexOf(Notebook notebook, string cellId)
    {
        for (int i = 0; i < notebook.Cells.Count; i++)
        {
            if (notebook.Cells[i].Id == cellId)
            {
                return i;
            }
        }

        return -1;
    }

    private static string Hash(string source) =>
        Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(source.ReplaceLineEndings("\n"))))[..16];
}
