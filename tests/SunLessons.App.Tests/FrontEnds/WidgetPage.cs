using SunLessons.App.Tests.Support;

namespace SunLessons.App.Tests.FrontEnds;

/// <summary>
/// The page of tests/frontends with Jupyter's own widget manager, bundled from npm packages at the versions of its lock file.
/// </summary>
internal static class WidgetPage
{
    private static readonly SemaphoreSlim OneAtATime = new(1, 1);

    private static string Project => RepositoryFiles.Path("tests", "frontends");

    /// <summary>The published specification of the models (npm package @jupyter-widgets/schema, Jupyter Development Team), version by the lock file.</summary>
    public static string Specification => Path.Combine(Project, "node_modules", "@jupyter-widgets", "schema", "jupyterwidgetmodels.latest.json");

    /// <summary>Bundles the page into a folder.</summary>
    public static async Task BuildAsync(string folder)
    {
        await InstallAsync();
        await RunAsync("node", "build.mjs", folder);
    }

    /// <summary>Fetches the packages if they are not there, or not those of the lock file.</summary>
    public static async Task InstallAsync()
    {
        await OneAtATime.WaitAsync();
        try
        {
            // npm writes this file last; one that is older than the lock file belongs to other versions.
            var installed = new FileInfo(Path.Combine(Project, "node_modules", ".package-lock.json"));
            if (!installed.Exists || installed.LastWriteTimeUtc < File.GetLastWriteTimeUtc(Path.Combine(Project, "package-lock.json")))
            {
                await RunAsync(Npm, "ci", "--ignore-scripts", "--no-audit", "--no-fund");
            }
        }
        finally
        {
            OneAtATime.Release();
        }
    }

    private static string Npm => OperatingSystem.IsWindows() ? "npm.cmd" : "npm";

    private static async Task RunAsync(string program, params string[] arguments)
    {
        var ran = await Tool.RunAsync(program, arguments, folder: Project);
        Assert.True(ran.ExitCode == 0, $"{program} {string.Join(' ', arguments)}: {ran.Errors}{ran.Output}");
    }
}
