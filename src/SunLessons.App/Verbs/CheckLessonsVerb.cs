using System.CommandLine;
using NodaTime;
using SunLessons.App.Checking;
using SunLessons.App.Printing;
using SunLessons.Notebooks;
using SunLessons.Notebooks.Review;

namespace SunLessons.App.Verbs;

/// <summary>sunlessons check-lessons: reads lessons, in every language that they are written in, against the rules of a lesson and runs them; what is to mend is told cell by cell.</summary>
public static class CheckLessonsVerb
{
    /// <summary>Exit code when something is to mend.</summary>
    public const int SomethingToMend = 1;

    /// <summary>Makes the verb.</summary>
    public static Command Create()
    {
        var folder = new Argument<string?>("FOLDER")
        {
            Description = "A folder with one folder a lesson, or one lesson's own folder; the lessons of this program by default.",
            Arity = ArgumentArity.ZeroOrOne,
        };
        var verb = new Command("check-lessons", "Check lessons for their authors: shape and wording are read, every cell is run, every check is answered. Exit code 0: nothing to mend; 1: something is; 2: no lesson there.") { folder };
        verb.SetAction((parsed, _) => RunAsync(parsed.GetValue(folder)));
        return verb;
    }

    private static async Task<int> RunAsync(string? folder)
    {
        var (lessons, problems) = Find(Path.GetFullPath(folder ?? Path.Combine(AppContext.BaseDirectory, "lessons")));
        foreach (var problem in problems)
        {
            Console.WriteLine(new Lines().Paragraph(problem).ToString().TrimEnd());
        }

        var toMend = problems.Count;
        foreach (var lesson in lessons)
        {
            toMend += await CheckAsync(lesson);
        }

        Console.WriteLine($"{lessons.Count} {(lessons.Count == 1 ? "lesson" : "lessons")} checked, {(toMend == 0 ? "nothing" : $"{toMend} {(toMend == 1 ? "thing" : "things")}")} to mend.");
        return toMend == 0 ? 0 : SomethingToMend;
    }

    private static (IReadOnlyList<Lesson> Lessons, IReadOnlyList<string> Problems) Find(string folder)
    {
        if (!Directory.Exists(folder))
        {
            throw new BadInputException($"There is no folder {folder}; name a folder that holds one folder a lesson, or a lesson's own.");
        }

        if (File.Exists(Path.Combine(folder, LessonShelf.FileName)) && Path.GetDirectoryName(Path.TrimEndingDirectorySeparator(folder)) is { } parent)
        {
            try
            {
                var own = new LessonShelf(parent);
                return (InAllLanguages(own, [own.Find(Path.GetFileName(Path.TrimEndingDirectorySeparator(folder)))]), []);
            }
            catch (NotebookFormatException problem)
            {
                throw new BadInputException(problem.Message);
            }
        }

        var shelf = new LessonShelf(folder);
        var (lessons, problems) = (InAllLanguages(shelf, shelf.Lessons()), shelf.Problems());
        return lessons.Count + problems.Count > 0
            ? (lessons, problems)
            : throw new BadInputException($"{folder} holds no lesson, and a lesson is a folder with a file {LessonShelf.FileName}; begin one with sunlessons new-lesson FOLDER.");
    }

    private static IReadOnlyList<Lesson> InAllLanguages(LessonShelf shelf, IEnumerable<Lesson> lessons) => [.. lessons.SelectMany(lesson => shelf.Translations(lesson).Prepend(lesson))];

    private static async Task<int> CheckAsync(Lesson lesson)
    {
        var notebook = lesson.ReadNotebook();
        var (ran, cells, checks) = await LessonRehearsal.RunAsync(notebook, SystemClock.Instance);
        ReviewRemark[] remarks = [.. LessonReview.Review(notebook).Concat(ran).OrderBy(remark => remark.CellNumber)];
        var missing = LessonReview.StillToWrite(notebook);
        var lines = new Lines();
        lines.Paragraph($"{lesson.Folder}: {lesson.Title}. {cells} cells run, {checks} checks answered.");
        foreach (var remark in remarks)
        {
            lines.Hanging("  ", remark.ToString());
        }

        if (missing.Count > 0)
        {
            lines.Paragraph($"Not finished: {missing.Count} parts are still to write. When none is left, write \"finished\": true into the metadata of the notebook.");
            foreach (var remark in missing)
            {
                lines.Hanging("  ", remark.ToString());
            }
        }
        else if (remarks.Length == 0)
        {
            lines.Paragraph(LessonReview.IsFinished(notebook) ? "Finished, and nothing to mend." : "Nothing is missing; write \"finished\": true into the metadata of the notebook.");
        }

        // Names are in no dictionary: what it does not know is told and not counted.
        if (await SpellingDictionary.OfAsync(lesson.Language) is { } dictionary
            && await dictionary.UnknownAsync(LessonReview.ProseOf(notebook).SelectMany(SpellingDictionary.WordsOf)) is { Count: > 0 } unknown)
        {
            lines.Paragraph($"Words that the dictionary {dictionary.Name} does not know, names or slips of the pen: {string.Join(", ", unknown)}.");
        }

        Console.Out.WriteLine(lines.ToString());
        return remarks.Length;
    }
}
