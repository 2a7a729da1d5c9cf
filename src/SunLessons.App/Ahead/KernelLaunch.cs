using System.Runtime.InteropServices;
using SunLessons.Jupyter.Client;

namespace SunLessons.App.Ahead;

/// <summary>How a kernel of this program is started: the one rule, for the pages and for a kernelspec alike.</summary>
public static class KernelLaunch
{
    /// <summary>The verb that runs a kernel; the connection file follows it.</summary>
    public const string Verb = "kernel";

    /// <summary>The command of the copy compiled ahead if it is whole, else of the program as built.</summary>
    public static KernelCommand Command(AheadCopy ahead)
    {
        var folder = ahead.IsReady ? ahead.Folder : AppContext.BaseDirectory;
        return new KernelCommand(DotNetHost(), ["exec", Path.Combine(folder, "SunLessons.App.dll"), Verb, KernelCommand.ConnectionFile]);
    }

    /// <summary>
    /// The dotnet host that runs this process. A program's own small executable looks for a framework in fixed places only;
    /// the host that was found once is certain.
    /// </summary>
    private static string DotNetHost()
    {
        var name = OperatingSystem.IsWindows() ? "dotnet.exe" : "dotnet";
        var beside = Path.GetFullPath(Path.Combine(RuntimeEnvironment.GetRuntimeDirectory(), "..", "..", "..", name));
        return File.Exists(beside) ? beside : name;
    }
}
