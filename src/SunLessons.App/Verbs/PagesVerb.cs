using System.CommandLine;
using NodaTime;
using SunLessons.App.Ahead;
using SunLessons.App.Desktop;
using SunLessons.Magnetism;
using SunLessons.Notebooks;
using SunLessons.Web.Hosting;

namespace SunLessons.App.Verbs;

/// <summary>The program without a verb: serves the pages on this machine and prints the address to open.</summary>
public static class PagesVerb
{
    /// <summary>Adds the options and the action to the root of the command line.</summary>
    public static void AddTo(Command root)
    {
        var port = new Option<int>("--port") { Description = "TCP port on 127.0.0.1; 0, the default, takes a free one." };
        var noOpen = new Option<bool>("--no-open") { Description = "Only print the address; open no browser." };
        var lessons = new Option<string?>("--lessons") { Description = "Folder with one folder a lesson; the lessons of this program by default." };
        var learner = new Option<string?>("--learner") { Description = "Folder for the learner's copies and settings; one of the user's own by default." };
        root.Options.Add(port);
        root.Options.Add(noOpen);
        root.Options.Add(lessons);
        root.Options.Add(learner);
        root.SetAction((parsed, cancellation) => RunAsync(
            parsed.GetValue(port), parsed.GetValue(noOpen), parsed.GetValue(lessons), parsed.GetValue(learner), cancellation));
    }

    private static async Task<int> RunAsync(int port, bool noOpen, string? lessonsFolder, string? learnerFolder, CancellationToken cancellation)
    {
        if (port is < 0 or > 65535)
        {
            throw new BadInputException($"Port {port} is outside 0 to 65535; write --port 0 for a free one.");
        }

        var lessons = Path.GetFullPath(lessonsFolder ?? Path.Combine(AppContext.BaseDirectory, "lessons"));
        if (!Directory.Exists(lessons))
        {
            throw new BadInputException($"There is no folder {lessons}; give a folder of lessons with --lessons, or leave the option out.");
        }

        var ahead = AheadCopy.OfThisProgram();
        PagesServer server;
        try
        {
            server = await PagesServer.StartAsync(
                new PagesOptions
                {
                    LessonsFolder = lessons,
                    LearnerFolder = Path.GetFullPath(learnerFolder ?? LearnerFolder.ForThisUser()),
                    Port = port,
                    KernelCommand = () => KernelLaunch.Command(ahead),
                },
                cancellation);
        }
        catch (IOException)
        {
            throw new BadInputException($"Port {port} on 127.0.0.1 is taken by another program; write --port 0 for a free one.");
        }

        await using (server)
        {
            Console.WriteLine($"SunLessons is open at {server.AddressWithToken}");
            Console.WriteLine("Open this address in a browser on this machine. Ctrl+C stops it; your answers are kept.");
            if (MagneticField.ExpiryNotice(SystemClock.Instance.GetCurrentInstant()) is { } notice)
            {
                Console.WriteLine(notice);
            }

            if (!noOpen)
            {
                Browser.TryOpen(server.AddressWithToken);
            }

            using var stop = CancellationTokenSource.CreateLinkedTokenSource(cancellation);
            var making = MakeAheadCopyAsync(ahead, stop.Token);
            await server.WaitForStopAsync(cancellation);
            await stop.CancelAsync();
            await making;
        }

        return 0;
    }

    private static async Task MakeAheadCopyAsync(AheadCopy ahead, CancellationToken cancellation)
    {
        if (ahead.IsReady || Environment.GetEnvironmentVariable("SUNLESSONS_AHEAD") == "off")
        {
            return;
        }

        try
        {
            // The first page and the first kernel have the machine to themselves.
            await Task.Delay(TimeSpan.FromSeconds(5), cancellation);
            if (await ahead.MakeAsync(gently: true, cancellation))
            {
                Console.WriteLine("Later lessons will start faster: the kernel has been compiled ahead.");
            }
        }
        catch (OperationCanceledException)
        {
            // The program is stopping; the next start goes on where this one was.
        }
    }
}
