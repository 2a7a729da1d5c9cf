using System.CommandLine;
using SunLessons.Notebooks;
using SunLessons.Notebooks.Authoring;

namespace SunLessons.App.Verbs;

/// <summary>sunlessons new-lesson: a lesson to begin with, which runs as it is.</summary>
public static class NewLessonVerb
{
    /// <summary>Makes the verb.</summary>
    public static Command Create()
    {
        var folder = new Argument<string>("FOLDER") { Description = "The new lesson's own folder, such as my-lessons/09-a-blunt-shadow; nothing that is there is written over." };
        var verb = new Command("new-lesson", "Write a lesson to begin with: it runs as it is, and its cells say what to change.") { folder };
        verb.SetAction(parsed => Run(parsed.GetValue(folder)!));
        return verb;
    }

    private static int Run(string folder)
    {
        string file;
        try
        {
            file = NewLesson.Write(folder);
        }
        catch (NotebookFormatException problem)
        {
            throw new BadInputException(problem.Message);
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            throw new BadInputException($"The lesson could not be written ({problem.Message.TrimEnd('.')}); check the path {Path.GetFullPath(folder)}.");
        }

        var own = Path.GetDirectoryName(file)!;
        Console.WriteLine($"A lesson to begin with is in {file}.");
        Console.WriteLine($"Open it: sunlessons --lessons \"{Path.GetDirectoryName(own)}\"");
        Console.WriteLine($"Check it: sunlessons check-lessons \"{own}\"");
        return 0;
    }
}
