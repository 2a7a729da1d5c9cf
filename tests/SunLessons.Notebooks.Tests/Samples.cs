namespace SunLessons.Notebooks.Tests;

/// <summary>Small notebooks and folders for the tests.</summary>
internal static class Samples
{
    public const string Lesson = """
        {
         "cells": [
          {"cell_type": "markdown", "id": "title", "metadata": {"sunlessons": {"language": "markdown", "role": "safety"}}, "source": ["# Noon\n", "Read shadows."]},
          {"cell_type": "code", "execution_count": null, "id": "sum", "metadata": {"sunlessons": {"language": "csharp", "role": "experiment"}}, "outputs": [], "source": "1 + 1"},
          {"cell_type": "markdown", "id": "end", "metadata": {"sunlessons": {"language": "markdown", "role": "sources"}}, "source": "The end."}
         ],
         "metadata": {"kernelspec": {"display_name": "SunLessons (C#)", "language": "csharp", "name": "sunlessons"},
          "sunlessons": {"id": "your-own-noon", "title": "Your own noon", "number": 6, "minutes": 50}},
         "nbformat": 4, "nbformat_minor": 5
        }
        """;

    public static string NewFolder()
    {
        string folder = Path.Combine(Path.GetTempPath(), "sunlessons-notebooks-" + Guid.NewGuid().ToString("N"));
        Directory.CreateDirectory(folder);
        return folder;
    }

    /// <summary>A markdown cell with the id "notes".</summary>
    public static NotebookCell Cell(string role, string markdown) =>
        Notebook.Empty().WithInsertedCell(0, CellType.Markdown, "notes", markdown).WithCellSunLessons("notes", "role", role).Cells.Single(cell => cell.Id == "notes");

    public static Lesson Shelve(string shelf, string json = Lesson, string folder = "06-noon")
    {
        Directory.CreateDirectory(Path.Combine(shelf, folder));
        File.WriteAllText(Path.Combine(shelf, folder, LessonShelf.FileName), json);
        return new LessonShelf(shelf).Find(folder);
    }
}
