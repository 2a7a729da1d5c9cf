namespace SunLessons.App.Ahead;

/// <summary>The systems that Jupyter tells apart when it looks for its data.</summary>
public enum JupyterSystem
{
    /// <summary>Linux and other Unix systems.</summary>
    Unix,

    /// <summary>macOS.</summary>
    MacOS,

    /// <summary>Windows.</summary>
    Windows,
}

/// <summary>
/// Where Jupyter looks for kernelspecs. The rules are those of Jupyter's own package jupyter_core ("Common Directories and File
/// Locations" in its documentation); a test compares with that package.
/// </summary>
public static class JupyterFolders
{
    /// <summary>The system that this program runs on.</summary>
    public static JupyterSystem ThisSystem =>
        OperatingSystem.IsWindows() ? JupyterSystem.Windows : OperatingSystem.IsMacOS() ? JupyterSystem.MacOS : JupyterSystem.Unix;

    /// <summary>Jupyter's data folder of the user who runs this program.</summary>
    public static string OfUser() =>
        OfUser(ThisSystem, Environment.GetFolderPath(Environment.SpecialFolder.UserProfile), Environment.GetEnvironmentVariable);

    /// <summary>Jupyter's data folder of a user.</summary>
    /// <param name="system">Whose rules apply.</param>
    /// <param name="home">The user's home folder.</param>
    /// <param name="variable">Gives an environment variable's value, or null; an empty one counts as not set.</param>
    public static string OfUser(JupyterSystem system, string home, Func<string, string?> variable)
    {
        string? Set(string name) => variable(name) is { Length: > 0 } value ? value : null;
        if (Set("JUPYTER_DATA_DIR") is { } chosen)
        {
            return chosen;
        }

        return system switch
        {
            JupyterSystem.MacOS => Path.Combine(home, "Library", "Jupyter"),
            JupyterSystem.Windows when Set("APPDATA") is { } roaming => Path.Combine(roaming, "jupyter"),
            JupyterSystem.Windows => Path.Combine(Set("JUPYTER_CONFIG_DIR") ?? Path.Combine(home, ".jupyter"), "data"),
            _ => Path.Combine(Set("XDG_DATA_HOME") ?? Path.Combine(home, ".local", "share"), "jupyter"),
        };
    }

    /// <summary>Jupyter's data folder below the prefix of an installation, such as /usr/local or a virtual environment.</summary>
    /// <param name="prefix">The prefix.</param>
    public static string Under(string prefix) => Path.Combine(prefix, "share", "jupyter");
}
