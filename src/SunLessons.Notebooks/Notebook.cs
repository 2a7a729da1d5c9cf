using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace SunLessons.Notebooks;

/// <summary>
/// A notebook file in memory (nbformat 4.5, the open format of the Jupyter project, schema "nbformat.v4.5.schema.json").
/// Immutable and safe between threads: every "With" makes a new notebook. Reading and writing loses nothing: fields that
/// we do not know, the order of fields and the digits of numbers survive.
/// </summary>
public sealed class Notebook
{
    // Text stays readable in the file: the notebook is never pasted into a page as a script, so nothing but the JSON
    // rules need escaping.
    private static readonly JsonWriterOptions WriterOptions = new()
    {
        Indented = true,
        IndentSize = 1,
        NewLine = "\n",
        MaxDepth = 250,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    private readonly JsonObject _json;
    private readonly IReadOnlyList<NotebookCell> _cells;

    private Notebook(JsonObject json)
    {
        _json = json;
        _cells = [.. json["cells"]!.AsArray().Select(node => new NotebookCell((JsonObject)node!, TypeOf((JsonObject)node!)))];
    }

    /// <summary>The cells from top to bottom.</summary>
    public IReadOnlyList<NotebookCell> Cells => _cells;

    /// <summary>A copy of the notebook's metadata.</summary>
    public JsonObject Metadata => (JsonObject)_json["metadata"]!.DeepClone();

    /// <summary>A copy of the part of the notebook's metadata that is ours ("sunlessons"); an empty object when there is none.</summary>
    public JsonObject SunLessons => _json["metadata"]!["sunlessons"] is JsonObject ours ? (JsonObject)ours.DeepClone() : [];

    /// <summary>The cell of that id, or null.</summary>
    public NotebookCell? Find(string cellId) => _cells.FirstOrDefault(cell => cell.Id == cellId);

    /// <summary>Reads a notebook from its JSON text.</summary>
    /// <param name="json">The text.</param>
    /// <param name="name">How to call the text in the sentence that says why it is no notebook.</param>
    /// <exception cref="NotebookFormatException">The text is no notebook of format 4; the message is one sentence.</exception>
    public static Notebook Parse(string json, string name = "This text") => Parse(Encoding.UTF8.GetBytes(json), name);

    /// <summary>Reads a notebook from its JSON text in UTF-8, with or without a byte order mark.</summary>
    /// <exception cref="NotebookFormatException">The text is no notebook of format 4; the message is one sentence.</exception>
    public static Notebook Parse(ReadOnlySpan<byte> utf8, string name = "This text") => new(NotebookReader.Read(utf8, name));

    /// <summary>Reads a notebook file.</summary>
    /// <exception cref="NotebookFormatException">There is no such file, it cannot be read, or it is no notebook of format 4; the message is one sentence.</exception>
    public static Notebook Read(string path)
    {
        string name = Path.GetFileName(path);
        byte[] bytes;
        try
        {
            bytes = SafeFile.ReadAllBytes(path);
        }
        catch (Exception problem) when (problem is FileNotFoundException or DirectoryNotFoundException)
        {
            throw new NotebookFormatException($"There is no file {name} in {Path.GetDirectoryName(Path.GetFullPath(path))}; check the name, which ends in .ipynb.", problem);
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            throw new NotebookFormatException($"{name} cannot be read ({problem.Message.TrimEnd('.')}); check that it is a file and that you may read it.", problem);
        }

        return Parse(bytes, name);
    }

    /// <summary>An empty notebook for lessons: no cells, format 4.5, our kernel and C# as its language.</summary>
    public static Notebook Empty() => Parse("""
        {"cells":[],"metadata":{"kernelspec":{"display_name":"SunLessons (C#)","language":"csharp","name":"sunlessons"},"language_info":{"name":"csharp"}},"nbformat":4,"nbformat_minor":5}
        """);

    /// <summary>The notebook as JSON text, indented by one space a level, ending with a line end.</summary>
    public string ToJson() => Encoding.UTF8.GetString(ToUtf8());

    /// <summary>The notebook as JSON in UTF-8 without a byte order mark, indented by one space a level, ending with a line end.</summary>
    public byte[] ToUtf8()
    {
        using var stream = new MemoryStream();
        using (var writer = new Utf8JsonWriter(stream, WriterOptions))
        {
            _json.WriteTo(writer);
        }

        stream.WriteByte((byte)'\n');
        return stream.ToArray();
    }

    /// <summary>A notebook in which one cell has another text. Its outputs stay: whether they are stale is the page's to say.</summary>
    /// <exception cref="NotebookFormatException">There is no cell of that id.</exception>
    public Notebook WithSource(string cellId, string source) =>
        Changed(cellId, cell => cell["source"] = MultilineText.Write(source));

    /// <summary>A notebook in which one code cell has other outputs and another run counter (null: not run).</summary>
    /// <exception cref="NotebookFormatException">There is no cell of that id, or it is not a code cell.</exception>
    public Notebook WithOutputs(string cellId, IEnumerable<NotebookOutput> outputs, int? executionCount) => Changed(cellId, cell =>
    {
        if (TypeOf(cell) != CellType.Code)
        {
            throw new NotebookFormatException($"Cell {cellId} is not code, and only code cells have outputs; name a code cell.");
        }

        var list = new JsonArray();
        foreach (NotebookOutput output in outputs)
        {
            list.Add(output.ToJson());
        }

        cell["outputs"] = list;
        cell["execution_count"] = executionCount;
    });

    /// <summary>A notebook in which a field under "sunlessons" in a cell's metadata has another value; null takes the field away.</summary>
    /// <exception cref="NotebookFormatException">There is no cell of that id.</exception>
    public Notebook WithCellSunLessons(string cellId, string field, JsonNode? value) => Changed(cellId, cell => SetOurs(cell, field, value));

    /// <summary>A notebook in which a field under "sunlessons" in the notebook's metadata has another value; null takes the field away.</summary>
    public Notebook WithSunLessons(string field, JsonNode? value)
    {
        JsonObject copy = Copy();
        SetOurs(copy, field, value);
        return new(copy);
    }

    /// <summary>A notebook with one more cell at the given position (0 is the top, <see cref="Cells"/>' count the end).</summary>
    /// <exception cref="NotebookFormatException">The id is taken or is not 1 to 64 letters, digits, hyphens and underscores.</exception>
    public Notebook WithInsertedCell(int index, CellType type, string cellId, string source)
    {
        var cell = new JsonObject
        {
            ["cell_type"] = type switch { CellType.Code => "code", CellType.Markdown => "markdown", _ => "raw" },
            ["id"] = cellId,
            ["metadata"] = new JsonObject(),
            ["source"] = MultilineText.Write(source),
        };
        if (type == CellType.Code)
        {
            cell["execution_count"] = null;
            cell["outputs"] = new JsonArray();
        }

        return WithInserted(index, cell);
    }

    /// <summary>A notebook without the cell of that id; the same notebook when there is none.</summary>
    public Notebook WithoutCell(string cellId)
    {
        JsonObject copy = Copy();
        JsonArray cells = copy["cells"]!.AsArray();
        JsonNode? found = cells.FirstOrDefault(cell => cell!["id"]!.GetValue<string>() == cellId);
        return found is not null && cells.Remove(found) ? new(copy) : this;
    }

    /// <summary>A notebook whose code cells have no outputs and no run counters, as lesson files are kept.</summary>
    public Notebook WithoutOutputs()
    {
        JsonObject copy = Copy();
        foreach (JsonNode? node in copy["cells"]!.AsArray())
        {
            if (node is JsonObject cell && TypeOf(cell) == CellType.Code)
            {
                cell["outputs"] = new JsonArray();
                cell["execution_count"] = null;
            }
        }

        return new(copy);
    }

    internal Notebook WithInserted(int index, JsonObject cell)
    {
        string id = cell["id"]!.GetValue<string>();
        if (!NotebookReader.IsCellId(id) || Find(id) is not null)
        {
            throw new NotebookFormatException($"The cell id \"{id}\" is taken or not allowed, and an id is 1 to 64 letters, digits, hyphens and underscores; choose another.");
        }

        JsonObject copy = Copy();
        copy["cells"]!.AsArray().Insert(index, cell.DeepClone());
        return new(copy);
    }

    private Notebook Changed(string cellId, Action<JsonObject> change)
    {
        JsonObject copy = Copy();
        JsonObject cell = copy["cells"]!.AsArray().Cast<JsonObject>().FirstOrDefault(cell => cell["id"]!.GetValue<string>() == cellId)
            ?? throw new NotebookFormatException($"There is no cell \"{cellId}\" in this notebook; its cells are {string.Join(", ", _cells.Select(known => known.Id))}.");
        change(cell);
        return new(copy);
    }

    private static void SetOurs(JsonObject holder, string field, JsonNode? value)
    {
        JsonObject metadata = holder["metadata"]!.AsObject();
        if (metadata["sunlessons"] is not JsonObject ours)
        {
            metadata["sunlessons"] = ours = [];
        }

        if (value is null)
        {
            ours.Remove(field);
        }
        else
        {
            ours[field] = value.DeepClone();
        }
    }

    private JsonObject Copy() => (JsonObject)_json.DeepClone();

    private static CellType TypeOf(JsonObject cell) => cell["cell_type"]!.GetValue<string>() switch
    {
        "code" => CellType.Code,
        "markdown" => CellType.Markdown,
        _ => CellType.Raw,
    };
}
