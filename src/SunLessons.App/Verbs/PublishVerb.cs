using System.CommandLine;
using SunLessons.Notebooks;
using SunLessons.Publishing;

namespace SunLessons.App.Verbs;

/// <summary>sunlessons publish: lessons as pages that need no server, no kernel and no installation.</summary>
public static class PublishVerb
{
    /// <summary>Makes the verb.</summary>
    public static Command Create()
    {
        var lessons = new Argument<string>("LESSONS") { Description = "Folder with one folder a lesson." };
        var target = new Argument<string>("OUT") { Description = "Folder that the pages go to; made when it is not there." };
        var single = new Option<bool>("--single-file") { Description = "One file a lesson that holds everything, some 12 MB each." };
        var verb = new Command("publish", "Write lessons as pages for any web host or a memory stick: they compute in the browser, with no server.") { lessons, target, single };
        verb.SetAction((parsed, _) => RunAsync(parsed.GetValue(lessons)!, parsed.GetValue(target)!, parsed.GetValue(single)));
        return verb;
    }

    private static async Task<int> RunAsync(string lessons, string target, bool singleFile)
    {
        if (!Directory.Exists(lessons))
        {
            throw new BadInputException($"There is no folder {Path.GetFullPath(lessons)}; name a folder that holds one folder a lesson.");
        }

        try
        {
            var folder = Path.GetFullPath(target);
            var files = await new Publisher(AppContext.BaseDirectory, Console.Error.WriteLine).PublishAsync(new LessonShelf(lessons), folder, singleFile);
            Console.WriteLine($"{files.Count} files are in {folder}.");
            Console.WriteLine(singleFile ? "Open any of them in a browser." : $"Open {Path.Combine(folder, "index.html")} in a browser, or copy the folder to a memory stick or a web host.");
            return 0;
        }
        catch (Exception problem) when (problem is PublishProblemException or NotebookFormatException or IOException or UnauthorizedAccessException)
        {
            throw new BadInputException(problem.Message);
        }
    }
}
