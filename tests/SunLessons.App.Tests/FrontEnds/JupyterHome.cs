namespace SunLessons.App.Tests.FrontEnds;

/// <summary>
/// A folder in which Jupyter keeps everything of its own, with our kernel added below a prefix in it: nothing of the machine's own
/// Jupyter is seen or changed.
/// </summary>
public sealed class JupyterHome : IAsyncLifetime
{
    public string Folder { get; } = Directory.CreateTempSubdirectory("sunlessons-jupyter-").FullName;

    public string Prefix => Path.Combine(Folder, "prefix");

    /// <summary>For every process of Jupyter that this home serves.</summary>
    public IReadOnlyDictionary<string, string> Environment => new Dictionary<string, string>
    {
        ["JUPYTER_PATH"] = Path.Combine(Prefix, "share", "jupyter"),
        ["JUPYTER_DATA_DIR"] = Path.Combine(Folder, "data"),
        ["JUPYTER_CONFIG_DIR"] = Path.Combine(Folder, "config"),
        ["JUPYTER_RUNTIME_DIR"] = Path.Combine(Folder, "runtime"),
        ["IPYTHONDIR"] = Path.Combine(Folder, "ipython"),
    };

    public async ValueTask InitializeAsync()
    {
        Directory.CreateDirectory(Prefix);
        var added = await Tool.SunLessonsAsync(null, "jupyter", "add", "--prefix", Prefix);
        Assert.True(added.ExitCode == 0, added.Errors + added.Output);
    }

    public ValueTask DisposeAsync()
    {
        try
        {
            Directory.Delete(Folder, recursive: true);
        }
        catch (IOException)
        {
            // A process that is just ending still writes there; the folder is temporary all the same.
        }

        return ValueTask.CompletedTask;
    }
}
