using System.Diagnostics;
using System.Globalization;

namespace SunLessons.App.Tests.Support;

/// <summary>The processes that a process has started and that still run.</summary>
internal static class ChildProcesses
{
    public static IReadOnlyList<Process> Of(int parent) => [.. Process.GetProcesses().Where(process => ParentOf(process.Id) == parent)];

    private static int? ParentOf(int id)
    {
        if (!OperatingSystem.IsLinux())
        {
            throw new PlatformNotSupportedException("Children are found through /proc; these tests run on Linux.");
        }

        try
        {
            // The name stands in parentheses and may hold spaces; the parent is the second field behind it.
            var stat = File.ReadAllText($"/proc/{id}/stat");
            return int.Parse(stat[(stat.LastIndexOf(')') + 2)..].Split(' ')[1], CultureInfo.InvariantCulture);
        }
        catch (IOException)
        {
            return null;
        }
    }
}
