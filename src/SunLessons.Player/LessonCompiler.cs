using System.Runtime.InteropServices.JavaScript;
using System.Text.Json.Nodes;
using SunLessons.Scripts;

namespace SunLessons.Player;

/// <summary>
/// What the page's script calls to compile cells in the page. It holds nothing of the compiler itself: its assemblies come only when a learner changes a
/// cell, and a class that names them in a field could not even be loaded before.
/// </summary>
public static partial class LessonCompiler
{
    /// <summary>Takes one assembly that cells may name; called for each before anything is compiled.</summary>
    [JSExport]
    public static void Refer(byte[] assembly) => Compiling.Images.Add(assembly);

    /// <summary>Takes a cell that ran already.</summary>
    [JSExport]
    public static void Adopt(string source, string name) => Compiling.Chain.Adopt(source, name);

    /// <summary>Compiles a cell: <c>{"number":7,"assembly":"base64","problems":[{"line":1,"column":2,"sentence":"..."}]}</c>.</summary>
    [JSExport]
    public static string Build(string source, string name)
    {
        var build = Compiling.Chain.Build(source, name);
        return new JsonObject
        {
            ["number"] = build.Number,
            ["assembly"] = Convert.ToBase64String(build.Assembly),
            ["problems"] = new JsonArray([.. build.Problems.Select(p => (JsonNode)new JsonObject { ["line"] = p.Line, ["column"] = p.Column, ["sentence"] = p.Sentence })]),
        }.ToJsonString();
    }

    private static class Compiling
    {
        private static CellChain? _chain;

        public static List<byte[]> Images { get; } = [];

        public static CellChain Chain => _chain ??= new CellChain(CellReferences.FromImages(Images));
    }
}
