using System.Text.Json.Nodes;
using SunLessons.Notebooks;

namespace SunLessons.Publishing.Tests.Support;

/// <summary>A lesson of one cell, on a shelf of its own, to be thrown away.</summary>
internal sealed class OwnLesson : IDisposable
{
    private readonly string _root = Directory.CreateTempSubdirectory("sunlessons-own-").FullName;

    public OwnLesson(string cSharp)
    {
        var notebook = new JsonObject
        {
            ["nbformat"] = 4,
            ["nbformat_minor"] = 5,
            ["metadata"] = new JsonObject { ["sunlessons"] = new JsonObject { ["id"] = "own", ["title"] = "Own", ["number"] = 1, ["minutes"] = 5 } },
            ["cells"] = new JsonArray(new JsonObject
            {
                ["cell_type"] = "code",
                ["id"] = "only",
                ["metadata"] = new JsonObject(),
                ["execution_count"] = null,
                ["outputs"] = new JsonArray(),
                ["source"] = cSharp,
            }),
        };
        Directory.CreateDirectory(Path.Combine(_root, "lessons", "own"));
        File.WriteAllText(Path.Combine(_root, "lessons", "own", "lesson.ipynb"), notebook.ToJsonString());
    }

    public LessonShelf Shelf => new(Path.Combine(_root, "lessons"));

    public string Out => Path.Combine(_root, "out");

    public void Dispose() => Directory.Delete(_root, recursive: true);
}
