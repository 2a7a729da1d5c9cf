using SunLessons.Cells.Running;
using SunLessons.Notebooks;
using SunLessons.Scripts;

namespace SunLessons.Publishing.Lessons;

/// <summary>Compiles all code cells of a lesson.</summary>
internal static class LessonBuild
{
    /// <summary>The cells in their order.</summary>
    /// <param name="name">How problems call the lesson.</param>
    /// <param name="notebook">The lesson.</param>
    /// <param name="references">What cells may name; in a page, that is what trimming left.</param>
    /// <exception cref="PublishProblemException">A cell does not compile: cell, line and the compiler's sentence.</exception>
    public static IReadOnlyList<BuiltCell> Of(string name, Notebook notebook, CellReferences references)
    {
        var chain = new CellChain(references);
        var built = new List<BuiltCell>();
        var problems = new List<string>();
        foreach (var cell in notebook.Cells.Where(cell => cell.Type == CellType.Code && cell.Source.Trim().Length > 0))
        {
            var markup = MarkupCell.Read(cell.Source, cell.Language);
            var script = markup?.Script() ?? cell.Source;
            var build = chain.Build(script, cell.Id);
            problems.AddRange(build.Problems.Select(p => $"{name}, cell \"{cell.Id}\", line {p.Line}: {p.Sentence}"));
            if (build.Problems.Count == 0)
            {
                built.Add(new BuiltCell(cell, build.Number, script, markup, build.Assembly));
            }
        }

        return problems.Count == 0 ? built : throw new PublishProblemException(string.Join('\n', problems));
    }
}
