using System.Runtime.InteropServices.JavaScript;
using System.Text.Json.Nodes;
using SunLessons.Scripts;

namespace SunLessons.Player;

/// <summary>Compiles cells in the page. Nothing else names the compiler, so it is loaded only when a learner changes a cell.</summary>
public static partial class LessonCompiler
{
    private static readonly List<byte[]> Images = [];
    private static CellChain? _chain;

    /// <summary>Takes one assembly that cells may name; called for each before anything is compiled.</summary>
    [JSExport]
    public static void Refer(byte[] assembly) => Images.Add(assembly);

    /// <summary>Takes a cell that ran already.</summary>
    [JSExport]
    public static void Adopt(string source, string name) => (_chain ??= Begin()).Adopt(source, name);

    /// <summary>Compiles a cell: <c>{"number":7,"assembly":"base64","problems":[{"line":1,"column":2,"sentence":"..."}]}</c>.</summary>
    [JSExport]
    public static string Build(string source, string name)
    {
        var build = (_chain ??= Begin()).Build(source, name);
        return new JsonObject
        {
            ["number"] = build.Number,
            ["assembly"] = Convert.ToBase64String(build.Assembly),
            ["problems"] = new JsonArray([.. build.Problems.Select(p => (JsonNode)new JsonObject { ["line"] = p.Line, ["column"] = p.Column, ["sentence"] = p.Sentence })]),
        }.ToJsonString();
    }

    private static CellChain Begin()
    {
        var chain = new CellChain(CellReferences.FromImages(Images));
        Images.Clear();
        return chain;
    }
}
