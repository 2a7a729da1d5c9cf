using System.CommandLine;
using SunLessons.Notebooks;
using SunLessons.Publishing;
using SunLessons.Words;

namespace SunLessons.App.Verbs;

/// <summary>sunlessons publish: lessons, or one dial, as pages that need no server, no kernel and no installation.</summary>
public sealed class PublishVerb
{
    private readonly Argument<string[]> _folders = new("FOLDERS") { Description = "LESSONS OUT: a folder with one folder a lesson, and the folder that the pages go to. Only OUT: the lessons of this program, or with --dial one dial.", Arity = new ArgumentArity(1, 2) };
    private readonly Option<bool> _single = new("--single-file") { Description = "One file a lesson that holds everything, some 11 MB each." };
    private readonly Option<bool> _oneDial = new("--dial") { Description = "One page for one dial instead, for a phone beside it: the dial and its place are given as for the verb clock." };
    private readonly Option<string?> _language = new("--language") { Description = $"With --dial: the language of the page by its two letters, one of {string.Join(", ", WordTable.Languages)}; English by default." };
    private readonly PlaceOptions _place = new();
    private readonly DialOptions _dial = new();

    private PublishVerb()
    {
    }

    /// <summary>Makes the verb.</summary>
    public static Command Create()
    {
        var verb = new PublishVerb();
        var command = new Command("publish", "Write lessons as pages for any web host or a memory stick: they compute in the browser, with no server.") { verb._folders, verb._single, verb._oneDial, verb._language };
        verb._place.AddTo(command);
        verb._dial.AddTo(command);
        command.SetAction((parsed, _) => verb.RunAsync(parsed));
        return command;
    }

    private async Task<int> RunAsync(ParseResult parsed)
    {
        var folders = parsed.GetValue(_folders)!;
        var oneDial = parsed.GetValue(_oneDial);
        if (oneDial && folders.Length != 1)
        {
            throw new BadInputException($"--dial takes one folder, the one that the page goes to, and {folders.Length} came; write sunlessons publish --dial OUT with the options of the dial.");
        }

        var language = parsed.GetValue(_language);
        if (language is not null && (!oneDial || !WordTable.Languages.Contains(language)))
        {
            throw new BadInputException(oneDial
                ? $"There are no words in the language \"{language}\"; write one of {string.Join(", ", WordTable.Languages)}."
                : "--language goes with --dial: lessons are published in every language that they are written in. Leave it out.");
        }

        var single = parsed.GetValue(_single);
        var target = Path.GetFullPath(folders[^1]);
        var publisher = new Publisher(AppContext.BaseDirectory, Console.Error.WriteLine);
        try
        {
            IReadOnlyList<string> files;
            if (oneDial)
            {
                var place = _place.Read(parsed);
                files = await publisher.PublishDialAsync(place, _dial.Read(parsed, place), target, single, language ?? WordTable.First);
            }
            else
            {
                files = await publisher.PublishAsync(folders.Length == 2 ? Lessons(folders[0]) : OwnLessons(folders[0]), target, single);
            }

            Console.WriteLine($"{files.Count} files are in {target}.");
            var first = oneDial ? "my-dial.html" : single ? files[0] : "index.html";
            Console.WriteLine($"Open {Path.Combine(target, first)} in a browser, or copy {(single ? "the file" : "the folder")} to a memory stick or a web host.");
            return 0;
        }
        catch (Exception problem) when (problem is PublishProblemException or NotebookFormatException or IOException or UnauthorizedAccessException)
        {
            throw new BadInputException(problem.Message);
        }
    }

    private static LessonShelf Lessons(string folder) => Directory.Exists(folder)
        ? new LessonShelf(folder)
        : throw new BadInputException($"There is no folder {Path.GetFullPath(folder)}; name a folder that holds one folder a lesson.");

    // Whoever named the lessons and forgot where the pages go would find the pages among the lessons.
    private static LessonShelf OwnLessons(string target) => Directory.Exists(target) && new LessonShelf(target).Lessons().Count > 0
        ? throw new BadInputException($"{Path.GetFullPath(target)} holds lessons, and pages need a folder of their own; write sunlessons publish {target} OUT.")
        : new LessonShelf(Path.Combine(AppContext.BaseDirectory, "lessons"));
}
