using SunLessons.Notebooks;

namespace SunLessons.Publishing.Pages;

/// <summary>A page of the program's own that is made as lessons are: of cells, so that it computes in every browser with the same library.</summary>
internal static class ProgramLesson
{
    /// <summary>A notebook of such cells.</summary>
    /// <param name="cells">Name, kind and source of each, in order.</param>
    public static Notebook Of(params (string Id, CellType Type, string Source)[] cells)
    {
        var notebook = Notebook.Empty();
        for (var i = 0; i < cells.Length; i++)
        {
            notebook = notebook.WithInsertedCell(i, cells[i].Type, cells[i].Id, cells[i].Source);
        }

        return notebook;
    }

    /// <summary>A text as a C# literal.</summary>
    public static string Literal(string text) => "\"" + text.Replace("\\", "\\\\", StringComparison.Ordinal).Replace("\"", "\\\"", StringComparison.Ordinal) + "\"";
}
