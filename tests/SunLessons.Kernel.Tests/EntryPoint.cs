using SunLessons.Jupyter.Client;

namespace SunLessons.Kernel.Tests;

/// <summary>
/// The tests' own program. With "kernel-host" as its first argument it is a kernel, so that tests can start a real process of the
/// code under test; with "parent-host" it starts such a kernel, prints its process number and waits to be killed.
/// </summary>
internal static class EntryPoint
{
    public static int Main(string[] args)
    {
        switch (args)
        {
            case ["kernel-host", var connectionFile]:
                return KernelProgram.RunAsync(connectionFile).GetAwaiter().GetResult();
            case ["parent-host"]:
                return ParentAsync().GetAwaiter().GetResult();
        }

        return args.Any(a => a is "--server" or "--internal-msbuild-node")
            ? Xunit.MicrosoftTestingPlatform.TestPlatformTestFramework.RunAsync(args, SelfRegisteredExtensions.AddSelfRegisteredExtensions).GetAwaiter().GetResult()
            : Xunit.Runner.InProc.SystemConsole.ConsoleRunner.Run(args).GetAwaiter().GetResult();
    }

    private static async Task<int> ParentAsync()
    {
        var kernel = await KernelProcess.StartAsync(Kernels.Command);
        Console.WriteLine(kernel.ProcessId);
        // A cell that never ends and cannot be asked to: the kernel must go all the same.
        _ = kernel.Client.ExecuteAsync("System.Threading.Thread.Sleep(System.Threading.Timeout.Infinite);");
        await Task.Delay(Timeout.Infinite);
        return 0;
    }
}
