using SunLessons.Jupyter.Client;

namespace SunLessons.App.Ahead;

/// <summary>How a kernel of this program is started: the one rule, for the pages and for a kernelspec alike.</summary>
public static class KernelLaunch
{
    /// <summary>The verb that runs a kernel; the connection file follows it.</summary>
    public const string Verb = "kernel";

    /// <summary>The command of the copy compiled ahead if it is whole, else of the program as built.</summary>
    public static KernelCommand Command(AheadCopy ahead) => KernelCommand.DotNet(
        Path.Combine(ahead.IsReady ? ahead.Folder : AppContext.BaseDirectory, "SunLessons.App.dll"), Verb, KernelCommand.ConnectionFile);
}
