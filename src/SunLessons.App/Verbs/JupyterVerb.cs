using System.CommandLine;
using SunLessons.App.Ahead;

namespace SunLessons.App.Verbs;

/// <summary><c>jupyter add|remove|status</c>: lets Jupyter find the kernel, forget it, or says how it stands.</summary>
public static class JupyterVerb
{
    /// <summary>Exit code of <c>jupyter status</c> when Jupyter cannot start the kernel.</summary>
    public const int NotUsable = 1;

    /// <summary>Makes the verb.</summary>
    public static Command Create()
    {
        var verb = new Command("jupyter", "Lets Jupyter start the kernel of SunLessons: add, remove, or show how it stands.");
        Add("add", "Adds the kernel to Jupyter, for you or below a prefix. Does no harm a second time.", AddAsync);
        Add("remove", "Removes the kernel from Jupyter. The program and the lessons stay.", (spec, _) => Task.FromResult(Remove(spec)));
        Add("status", "Says whether Jupyter can start the kernel, and which one. Exit code 0: it can; 1: it cannot.", (spec, _) => Task.FromResult(Status(spec)));
        return verb;

        void Add(string name, string description, Func<KernelSpec, CancellationToken, Task<int>> run)
        {
            var user = new Option<bool>("--user") { Description = "For you alone; this is the default." };
            var prefix = new Option<string?>("--prefix") { Description = "Below this folder, in share/jupyter; /usr/local serves all users of a machine.", HelpName = "folder" };
            var step = new Command(name, description);
            step.Options.Add(user);
            step.Options.Add(prefix);
            step.SetAction((parsed, cancellation) => run(Where(parsed.GetValue(user), parsed.GetValue(prefix)), cancellation));
            verb.Subcommands.Add(step);
        }
    }

    private static KernelSpec Where(bool user, string? prefix)
    {
        if (prefix is null)
        {
            return new KernelSpec(Path.GetFullPath(JupyterFolders.OfUser()));
        }

        if (user)
        {
            throw new BadInputException("Both --user and --prefix were given; write one of them.");
        }

        // A prefix that is not there is a slip of the hand more often than a wish.
        return Directory.Exists(prefix)
            ? new KernelSpec(JupyterFolders.Under(Path.GetFullPath(prefix)))
            : throw new BadInputException($"There is no folder {(prefix.Length == 0 ? "with an empty name" : prefix)}; give --prefix a folder that exists, or leave it out to add the kernel for you alone.");
    }

    private static async Task<int> AddAsync(KernelSpec spec, CancellationToken cancellation)
    {
        var ahead = AheadCopy.OfThisProgram();
        if (!ahead.IsReady)
        {
            await CompileAsync(ahead, cancellation);
        }

        var command = KernelLaunch.Command(ahead);
        Touch(spec, "written", () =>
        {
            spec.Write(command);
            if (ahead.IsReady)
            {
                ahead.KeepFor(spec.File);
            }
        });
        Console.WriteLine($"Added: {spec.File}");
        Console.WriteLine($"Jupyter shows the kernel as \"{KernelSpec.DisplayName}\"; its commands call it {KernelSpec.Name}.");
        return 0;
    }

    private static async Task CompileAsync(AheadCopy ahead, CancellationToken cancellation)
    {
        const string AsBuilt = "Jupyter will start the program as built: it does the same and takes longer to start.";
        if (Environment.GetEnvironmentVariable("SUNLESSONS_AHEAD") == "off")
        {
            Console.WriteLine($"SUNLESSONS_AHEAD is off, so nothing is compiled ahead. {AsBuilt}");
            return;
        }

        Console.WriteLine("Compiling the kernel ahead once, so that it starts faster: a minute or more. Ctrl+C stops it; what is finished is kept.");
        if (await ahead.MakeAsync(gently: false, cancellation))
        {
            Console.WriteLine("The kernel is compiled.");
        }
        else if (cancellation.IsCancellationRequested)
        {
            throw new BadInputException("Stopped before the kernel was added; write the same again to go on.");
        }
        else
        {
            Console.WriteLine($"The kernel was not compiled ahead: {ahead.Problem} {AsBuilt}");
        }
    }

    private static int Remove(KernelSpec spec)
    {
        var removed = false;
        Touch(spec, "removed", () => removed = spec.Remove());
        Console.WriteLine(removed ? $"Removed: {spec.File}" : $"There was nothing to remove: {spec.File} does not exist.");
        return 0;
    }

    private static int Status(KernelSpec spec)
    {
        if (!spec.IsThere)
        {
            Console.WriteLine($"Not added: {spec.File} does not exist. Write sunlessons jupyter add, with the same --prefix if you gave one.");
            return NotUsable;
        }

        if (spec.Command() is not { } words)
        {
            Console.WriteLine($"Broken: {spec.File} holds no command. Write sunlessons jupyter add again.");
            return NotUsable;
        }

        var assembly = words.FirstOrDefault(word => word.EndsWith(".dll", StringComparison.OrdinalIgnoreCase));
        if (assembly is null || !File.Exists(assembly) || (Path.IsPathRooted(words[0]) && !File.Exists(words[0])))
        {
            Console.WriteLine($"Broken: {spec.File} starts a program that is no longer there ({assembly ?? words[0]}). Write sunlessons jupyter add again.");
            return NotUsable;
        }

        Console.WriteLine($"Added: {spec.File}");
        Console.WriteLine($"It starts {assembly}");
        var ahead = AheadCopy.OfThisProgram();
        var folder = Path.GetFullPath(Path.GetDirectoryName(assembly)!);
        Console.WriteLine(
            Same(folder, ahead.Folder) ? "That is this program, compiled ahead."
            : Same(folder, AppContext.BaseDirectory) ? "That is this program as built. Write sunlessons jupyter add again for a kernel that starts faster."
            : "That is another build than this program. Write sunlessons jupyter add again to start this one.");
        return 0;
    }

    private static bool Same(string one, string other) => string.Equals(
        Path.TrimEndingDirectorySeparator(one),
        Path.TrimEndingDirectorySeparator(other),
        OperatingSystem.IsLinux() ? StringComparison.Ordinal : StringComparison.OrdinalIgnoreCase);

    private static void Touch(KernelSpec spec, string what, Action action)
    {
        try
        {
            action();
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            throw new BadInputException($"{spec.File} could not be {what} ({exception.Message.TrimEnd('.')}); choose a folder that you may write with --prefix, or ask who looks after this one.");
        }
    }
}
