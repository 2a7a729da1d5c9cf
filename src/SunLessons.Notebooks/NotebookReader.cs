using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;

namespace SunLessons.Notebooks;

/// <summary>
/// Reads notebook JSON and says in one sentence why a text is no notebook. Notebooks of format 4 before 4.5 have no cell
/// ids: they get ids from their position ("cell-3"), the same ones at every reading, and become 4.5.
/// </summary>
internal static partial class NotebookReader
{
    private const string WhatToDo = "open a file that ends in .ipynb and was saved by a notebook program";

    [GeneratedRegex("^[a-zA-Z0-9_-]{1,64}$")]
    private static partial Regex IdPattern();

    public static bool IsCellId(string id) => IdPattern().IsMatch(id);

    public static JsonObject Read(ReadOnlySpan<byte> utf8, string name)
    {
        if (utf8.StartsWith(Encoding.UTF8.Preamble))
        {
            utf8 = utf8[Encoding.UTF8.Preamble.Length..];
        }

        if (utf8.IsEmpty)
        {
            throw new NotebookFormatException($"{name} is empty, but a notebook is JSON with a list of cells; {WhatToDo}.");
        }

        JsonNode? root;
        try
        {
            var reader = new Utf8JsonReader(utf8, new JsonReaderOptions { MaxDepth = 200 });
            using JsonDocument document = JsonDocument.ParseValue(ref reader);
            if (reader.Read())
            {
                throw new NotebookFormatException($"{name} goes on after the end of its JSON, but a notebook is one JSON object; {WhatToDo}.");
            }

            root = Build(document.RootElement);
        }
        catch (Exception problem) when (problem is JsonException or InvalidOperationException)
        {
            string where = problem is JsonException { LineNumber: long line } ? $" (line {line + 1})" : "";
            throw new NotebookFormatException($"{name} is not JSON{where}, but a notebook is a JSON object with a list of cells; {WhatToDo}.", problem);
        }

        if (root is not JsonObject notebook)
        {
            throw new NotebookFormatException($"{name} is JSON but not an object, and a notebook is an object with a list of cells; {WhatToDo}.");
        }

        Check(notebook, name);
        GiveIds(notebook);
        return notebook;
    }

    /// <summary>
    /// Copies the document into nodes at once. Parsing into lazy nodes would let a doubled field name, or a string that
    /// is no text, fail much later and far from the file's name. Numbers keep their digits: the element's own text is kept.
    /// </summary>
    private static JsonNode? Build(JsonElement element)
    {
        switch (element.ValueKind)
        {
            case JsonValueKind.Object:
                var fields = new JsonObject();
                foreach (JsonProperty field in element.EnumerateObject())
                {
                    if (!fields.TryAdd(field.Name, Build(field.Value)))
                    {
                        throw new JsonException("doubled field");
                    }
                }

                return fields;
            case JsonValueKind.Array:
                var items = new JsonArray();
                foreach (JsonElement item in element.EnumerateArray())
                {
                    items.Add(Build(item));
                }

                return items;
            case JsonValueKind.String:
                return JsonValue.Create(element.GetString());
            case JsonValueKind.Null:
                return null;
            default:
                return JsonValue.Create(element.Clone());
        }
    }

    private static void Check(JsonObject notebook, string name)
    {
        if (Whole(notebook["nbformat"]) is not int major)
        {
            throw new NotebookFormatException($"{name} is JSON without the number \"nbformat\" that every notebook has; {WhatToDo}.");
        }

        if (major != 4 || Whole(notebook["nbformat_minor"]) is not int minor || minor < 0)
        {
            throw new NotebookFormatException($"{name} is a notebook of format {major}, and format 4 is read here; save it again as format 4 with the program that made it.");
        }

        if (notebook["metadata"] is not JsonObject)
        {
            throw new NotebookFormatException($"{name} has no object \"metadata\", and every notebook of format 4 has one; {WhatToDo}.");
        }

        if (notebook["cells"] is not JsonArray cells)
        {
            throw new NotebookFormatException($"{name} has no list \"cells\", and every notebook of format 4 has one; {WhatToDo}.");
        }

        for (int i = 0; i < cells.Count; i++)
        {
            if (CellProblem(cells[i]) is string problem)
            {
                throw new NotebookFormatException($"Cell {i + 1} of {name} {problem}; {WhatToDo}.");
            }
        }
    }

    private static string? CellProblem(JsonNode? node)
    {
        if (node is not JsonObject cell)
        {
            return "is not an object";
        }

        if (cell["cell_type"] is not JsonValue type || !type.TryGetValue(out string? typeName) || typeName is not ("code" or "markdown" or "raw"))
        {
            return "has a \"cell_type\" other than code, markdown or raw";
        }

        if (!MultilineText.IsOne(cell["source"]))
        {
            return "has no text in \"source\" (a string or a list of strings)";
        }

        if (cell["metadata"] is not JsonObject)
        {
            return "has no object \"metadata\"";
        }

        if (typeName == "code" && (cell["outputs"] is not JsonArray outputs || outputs.Any(output => output is not JsonObject)))
        {
            return "is code without a list of \"outputs\"";
        }

        return null;
    }

    private static void GiveIds(JsonObject notebook)
    {
        JsonArray cells = notebook["cells"]!.AsArray();
        var taken = new HashSet<string>(StringComparer.Ordinal);
        var without = new List<int>();
        for (int i = 0; i < cells.Count; i++)
        {
            string? id = cells[i]!["id"] is JsonValue value && value.TryGetValue(out string? text) ? text : null;
            if (id is null || !IsCellId(id) || !taken.Add(id))
            {
                without.Add(i);
            }
        }

        foreach (int i in without)
        {
            string id = $"cell-{i + 1}";
            for (int n = 2; !taken.Add(id); n++)
            {
                id = $"cell-{i + 1}-{n}";
            }

            cells[i]!["id"] = id;
        }

        if (Whole(notebook["nbformat_minor"]) < 5)
        {
            notebook["nbformat_minor"] = 5;
        }
    }

    private static int? Whole(JsonNode? node) => node is JsonValue value && value.TryGetValue(out int whole) ? whole : null;
}
