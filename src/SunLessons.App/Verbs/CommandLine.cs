using System.CommandLine;
using System.CommandLine.Help;

namespace SunLessons.App.Verbs;

/// <summary>The verbs of the program. Without one it opens the pages.</summary>
public static class CommandLine
{
    /// <summary>Exit code of a call that could not be answered: one sentence on standard error says why.</summary>
    public const int CouldNotAnswer = 2;

    /// <summary>Runs the program with its arguments; returns its exit code.</summary>
    public static async Task<int> RunAsync(string[] arguments)
    {
        // A plain command with the program's own name: the one that the file happens to have would stand in the help.
        var root = new Command("sunlessons", "SunLessons: what a sundial shows, what the clock shows, and every minute between them.");
        root.Options.Add(new HelpOption { Recursive = true });
        root.Options.Add(new VersionOption());
        PagesVerb.AddTo(root);
        root.Subcommands.Add(ClockVerb.Create());
        root.Subcommands.Add(SunVerb.Create());
        root.Subcommands.Add(NorthVerb.Create());
        root.Subcommands.Add(JupyterVerb.Create());
        root.Subcommands.Add(AheadVerb.Create());
        root.Subcommands.Add(PlayerVerb.Create());
        root.Subcommands.Add(DataVerb.Create());
        root.Subcommands.Add(PublishVerb.Create());
        root.Subcommands.Add(CheckLessonsVerb.Create());
        root.Subcommands.Add(NewLessonVerb.Create());

        var parsed = root.Parse(arguments);
        if (parsed.Errors.Count > 0)
        {
            await Console.Error.WriteLineAsync(parsed.Errors[0].Message);
            await Console.Error.WriteLineAsync("Write sunlessons --help to see what is allowed.");
            return CouldNotAnswer;
        }

        try
        {
            return await parsed.InvokeAsync(new InvocationConfiguration { EnableDefaultExceptionHandler = false });
        }
        catch (BadInputException problem)
        {
            await Console.Error.WriteLineAsync(problem.Message);
            return CouldNotAnswer;
        }
    }
}
