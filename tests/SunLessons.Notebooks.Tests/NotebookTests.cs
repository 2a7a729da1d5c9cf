using System.Diagnostics;
using System.Text.Json.Nodes;

namespace SunLessons.Notebooks.Tests;

public class NotebookTests
{
    [Fact]
    public void Reading_and_writing_keeps_unknown_fields_their_order_and_the_digits_of_numbers()
    {
        const string text = """
            {
             "zebra": {"b": 1, "a": [null, true, 1.50, 1e3, 12345678901234567890.25]},
             "nbformat_minor": 5,
             "cells": [
              {"source": "x < 1 && \"é ☀ \u2028\"", "metadata": {"mine": 0.10}, "id": "a1", "cell_type": "raw", "attachments": {}}
             ],
             "nbformat": 4,
             "metadata": {"language_info": {"name": "csharp", "later": {"x": 1}}}
            }
            """;
        string written = Notebook.Parse(text).ToJson();

        Assert.True(JsonNode.DeepEquals(JsonNode.Parse(text), JsonNode.Parse(written)));
        Assert.Equal(["zebra", "nbformat_minor", "cells", "nbformat", "metadata"], JsonNode.Parse(written)!.AsObject().Select(field => field.Key));
        Assert.Contains("1.50,", written);
        Assert.Contains("12345678901234567890.25", written);
        Assert.Contains("\"mine\": 0.10", written);
        Assert.Equal(written, Notebook.Parse(written).ToJson());
    }

    [Fact]
    public void A_source_may_be_one_string_or_a_list_and_is_written_line_by_line_once_changed()
    {
        Notebook notebook = Notebook.Parse(Samples.Lesson);
        Assert.Equal("# Noon\nRead shadows.", notebook.Find("title")!.Source);
        Assert.Equal("1 + 1", notebook.Find("sum")!.Source);

        JsonNode changed = JsonNode.Parse(notebook.WithSource("sum", "int a = 1;\n\na + 1\n").ToJson())!;
        Assert.Equal(["int a = 1;\n", "\n", "a + 1\n"], changed["cells"]![1]!["source"]!.AsArray().Select(line => line!.GetValue<string>()));
        Assert.Equal("1 + 1", notebook.Find("sum")!.Source);
    }

    [Theory]
    [InlineData("", "Eight is empty, but a notebook is JSON with a list of cells; open a file that ends in .ipynb and was saved by a notebook program.")]
    [InlineData("%PDF-1.4", "Eight is not JSON (line 1), but a notebook is a JSON object with a list of cells; open a file that ends in .ipynb and was saved by a notebook program.")]
    [InlineData("{\n\"a\": 1,\n\"a\": 2}", "Eight is not JSON, but a notebook is a JSON object with a list of cells; open a file that ends in .ipynb and was saved by a notebook program.")]
    [InlineData("[1, 2]", "Eight is JSON but not an object, and a notebook is an object with a list of cells; open a file that ends in .ipynb and was saved by a notebook program.")]
    [InlineData("{\"name\": \"x\"}", "Eight is JSON without the number \"nbformat\" that every notebook has; open a file that ends in .ipynb and was saved by a notebook program.")]
    [InlineData("{\"nbformat\": 3, \"nbformat_minor\": 0, \"metadata\": {}, \"worksheets\": []}", "Eight is a notebook of format 3, and format 4 is read here; save it again as format 4 with the program that made it.")]
    [InlineData("{\"nbformat\": 4, \"nbformat_minor\": 5, \"metadata\": {}}", "Eight has no list \"cells\", and every notebook of format 4 has one; open a file that ends in .ipynb and was saved by a notebook program.")]
    [InlineData("{\"nbformat\": 4, \"nbformat_minor\": 5, \"metadata\": {}, \"cells\": [{\"cell_type\": \"heading\"}]}", "Cell 1 of Eight has a \"cell_type\" other than code, markdown or raw; open a file that ends in .ipynb and was saved by a notebook program.")]
    [InlineData("{\"nbformat\": 4, \"nbformat_minor\": 5, \"metadata\": {}, \"cells\": [{\"cell_type\": \"raw\", \"source\": 7, \"metadata\": {}}]}", "Cell 1 of Eight has no text in \"source\" (a string or a list of strings); open a file that ends in .ipynb and was saved by a notebook program.")]
    [InlineData("{\"nbformat\": 4, \"nbformat_minor\": 5, \"metadata\": {}, \"cells\": [{\"cell_type\": \"code\", \"source\": \"\", \"metadata\": {}}]}", "Cell 1 of Eight is code without a list of \"outputs\"; open a file that ends in .ipynb and was saved by a notebook program.")]
    public void A_text_that_is_no_notebook_gets_one_sentence(string text, string sentence)
    {
        var problem = Assert.Throws<NotebookFormatException>(() => Notebook.Parse(text, "Eight"));
        Assert.Equal(sentence, problem.Message);
    }

    [Fact]
    public void A_file_that_is_not_there_gets_one_sentence()
    {
        string folder = Samples.NewFolder();
        var problem = Assert.Throws<NotebookFormatException>(() => Notebook.Read(Path.Combine(folder, "noon.ipynb")));
        Assert.Equal($"There is no file noon.ipynb in {folder}; check the name, which ends in .ipynb.", problem.Message);
    }

    [Fact]
    public void Half_a_character_in_a_string_is_refused_at_reading_and_not_later()
    {
        Assert.Throws<NotebookFormatException>(() => Notebook.Parse("{\"nbformat\": 4, \"nbformat_minor\": 5, \"metadata\": {\"x\": \"\\ud800\"}, \"cells\": []}"));
    }

    [Fact]
    public void An_older_notebook_gets_the_same_ids_at_every_reading()
    {
        const string old = """{"nbformat": 4, "nbformat_minor": 2, "metadata": {}, "cells": [{"cell_type": "raw", "source": "", "metadata": {}}, {"cell_type": "raw", "source": "", "metadata": {}}]}""";
        Notebook notebook = Notebook.Parse(old);
        Assert.Equal(["cell-1", "cell-2"], notebook.Cells.Select(cell => cell.Id));
        Assert.Contains("\"nbformat_minor\": 5", notebook.ToJson());
        Assert.Equal(notebook.ToJson(), Notebook.Parse(old).ToJson());
    }

    [Fact]
    public void Doubled_and_impossible_ids_are_replaced_and_good_ones_stay()
    {
        const string doubled = """{"nbformat": 4, "nbformat_minor": 5, "metadata": {}, "cells": [{"cell_type": "raw", "id": "a", "source": "", "metadata": {}}, {"cell_type": "raw", "id": "a", "source": "", "metadata": {}}, {"cell_type": "raw", "id": "no space", "source": "", "metadata": {}}, {"cell_type": "raw", "id": "cell-2", "source": "", "metadata": {}}]}""";
        Assert.Equal(["a", "cell-2-2", "cell-3", "cell-2"], Notebook.Parse(doubled).Cells.Select(cell => cell.Id));
    }

    [Fact]
    public void Language_comes_from_the_metadata_or_else_from_what_the_cell_is()
    {
        Notebook notebook = Notebook.Empty()
            .WithInsertedCell(0, CellType.Markdown, "a", "text")
            .WithInsertedCell(1, CellType.Code, "b", "1 + 1")
            .WithInsertedCell(2, CellType.Code, "c", "\n  <p>hello</p>")
            .WithInsertedCell(3, CellType.Code, "d", "<svg></svg>")
            .WithInsertedCell(4, CellType.Code, "e", "<svg></svg>")
            .WithCellSunLessons("e", "language", "html")
            .WithCellSunLessons("e", "role", "puzzle");
        Assert.Equal(["markdown", "csharp", "html", "svg", "html"], notebook.Cells.Select(cell => cell.Language));
        Assert.Equal("puzzle", notebook.Find("e")!.Role);
        Assert.Null(notebook.Find("a")!.Role);
    }

    [Fact]
    public void What_a_caller_gets_or_gives_cannot_change_the_notebook()
    {
        Notebook notebook = Notebook.Parse(Samples.Lesson);
        string before = notebook.ToJson();
        notebook.Metadata["x"] = 1;
        notebook.SunLessons["x"] = 1;
        notebook.Find("sum")!.Metadata["x"] = 1;
        var data = new JsonObject { ["k"] = 1 };
        Notebook with = notebook.WithOutputs("sum", [NotebookOutput.Display(new Dictionary<string, JsonNode> { ["application/json"] = data })], 1);
        data["k"] = 2;
        with.Find("sum")!.Outputs[0].ToJson()["data"] = null;
        Assert.Equal(before, notebook.ToJson());
        Assert.Equal(1, with.Find("sum")!.Outputs[0].MediaJson("application/json")!["k"]!.GetValue<int>());
    }

    [Fact]
    public void Outputs_survive_the_file_and_are_stripped_on_request()
    {
        Notebook notebook = Notebook.Parse(Samples.Lesson).WithOutputs("sum", AllKinds(), 3);
        Notebook again = Notebook.Parse(notebook.ToJson());
        IReadOnlyList<NotebookOutput> outputs = again.Find("sum")!.Outputs;
        Assert.Equal([OutputKind.Stream, OutputKind.Display, OutputKind.Result, OutputKind.Error], outputs.Select(output => output.Kind));
        Assert.Equal("a\nb", outputs[0].StreamText);
        Assert.Equal(["text/plain", "image/svg+xml"], outputs[1].MediaTypes);
        Assert.Equal("2", outputs[2].MediaText("text/plain"));
        Assert.Equal(("Trouble", "It broke."), (outputs[3].ErrorName, outputs[3].ErrorMessage));
        Assert.Equal(3, again.Find("sum")!.ExecutionCount);
        Assert.Empty(again.WithoutOutputs().Find("sum")!.Outputs);
        Assert.Null(again.WithoutOutputs().Find("sum")!.ExecutionCount);
    }

    // nbformat 5.5.0, Debian's python3-nbformat: the reference library of the notebook format.
    [Fact]
    public void Nbformats_own_validator_accepts_what_we_write()
    {
        string folder = Samples.NewFolder();
        Notebook filled = Notebook.Parse(Samples.Lesson).WithOutputs("sum", AllKinds(), 3)
            .WithInsertedCell(0, CellType.Code, "top", "a\nb")
            .WithSunLessons("record", new JsonObject { ["prediction"] = "13:18" });
        File.WriteAllBytes(Path.Combine(folder, "filled.ipynb"), filled.ToUtf8());
        File.WriteAllBytes(Path.Combine(folder, "empty.ipynb"), Notebook.Empty().ToUtf8());
        LearnerCopy copy = LearnerCopy.Open(Samples.Shelve(folder), folder);
        copy.SetSource("sum", "2 + 2");
        copy.AddCodeCell("sum", "3 + 3");
        copy.Save();
        string[] files = [Path.Combine(folder, "filled.ipynb"), Path.Combine(folder, "empty.ipynb"), copy.FilePath];

        Assert.All(files, file => Assert.Equal("valid", NbformatSays(file)));

        // The check itself can fail: a notebook without its metadata.
        string broken = Path.Combine(folder, "broken.ipynb");
        File.WriteAllText(broken, """{"cells": [], "nbformat": 4, "nbformat_minor": 5}""");
        Assert.NotEqual("valid", NbformatSays(broken));
    }

    [Fact]
    public void Nbformat_reads_back_the_same_cells_that_we_wrote()
    {
        string file = Path.Combine(Samples.NewFolder(), "cells.ipynb");
        Notebook notebook = Notebook.Parse(Samples.Lesson).WithSource("sum", "a\r\nb\n\nα☀");
        File.WriteAllBytes(file, notebook.ToUtf8());
        string said = Python("import json, nbformat, sys; print(json.dumps([c.source for c in nbformat.read(sys.argv[1], 4).cells]))", file);
        Assert.Equal(notebook.Cells.Select(cell => cell.Source), JsonNode.Parse(said)!.AsArray().Select(node => node!.GetValue<string>()));
    }

    internal static string NbformatSays(string file) => Python("""
        import nbformat, sys
        try:
            nbformat.validate(nbformat.read(sys.argv[1], nbformat.NO_CONVERT))
            print("valid")
        except Exception as problem:
            print("invalid:", str(problem)[:300])
        """, file);

    private static string Python(string program, string argument)
    {
        // Debian's own interpreter has Debian's nbformat; elsewhere the one on the path.
        string python = File.Exists("/usr/bin/python3") ? "/usr/bin/python3" : OperatingSystem.IsWindows() ? "python" : "python3";
        var start = new ProcessStartInfo(python) { RedirectStandardOutput = true, RedirectStandardError = true };
        start.ArgumentList.Add("-c");
        start.ArgumentList.Add(program);
        start.ArgumentList.Add(argument);
        start.Environment["PYTHONIOENCODING"] = "utf-8";
        using Process process = Process.Start(start)!;
        string said = process.StandardOutput.ReadToEnd();
        string trouble = process.StandardError.ReadToEnd();
        process.WaitForExit();
        Assert.True(process.ExitCode == 0, trouble);
        return said.Trim();
    }

    private static NotebookOutput[] AllKinds() =>
    [
        NotebookOutput.Stream("stdout", "a\nb"),
        NotebookOutput.Display(new Dictionary<string, JsonNode> { ["text/plain"] = "a drawing", ["image/svg+xml"] = "<svg></svg>" }),
        NotebookOutput.Result(new Dictionary<string, JsonNode> { ["text/plain"] = "2" }, 3),
        NotebookOutput.Error("Trouble", "It broke.", ["line 1"]),
    ];
}
