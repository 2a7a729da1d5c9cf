using SunLessons.Kernel;

namespace SunLessons.Notebooks.Tests;

/// <summary>
/// The tests' own program. With "kernel-host" as its first argument it is a kernel, so that lessons run in a real process
/// over the real protocol; with "writer-host" it saves a learner's copy for ever, to be killed.
/// </summary>
internal static class EntryPoint
{
    public static int Main(string[] args)
    {
        switch (args)
        {
            case ["kernel-host", var connectionFile]:
                return KernelProgram.RunAsync(connectionFile).GetAwaiter().GetResult();
            case ["writer-host", var folder]:
                KilledWriter.Run(folder);
                return 0;
        }

        return args.Any(a => a is "--server" or "--internal-msbuild-node")
            ? Xunit.MicrosoftTestingPlatform.TestPlatformTestFramework.RunAsync(args, SelfRegisteredExtensions.AddSelfRegisteredExtensions).GetAwaiter().GetResult()
            : Xunit.Runner.InProc.SystemConsole.ConsoleRunner.Run(args).GetAwaiter().GetResult();
    }
}
