namespace SunLessons.Notebooks;

/// <summary>Where a learner's own files lie: one folder a user, in the place that each system keeps for programs' data.</summary>
public static class LearnerFolder
{
    /// <summary>The environment variable that names another folder.</summary>
    public const string Variable = "SUNLESSONS_LEARNER_FOLDER";

    /// <summary>
    /// The folder for learners' copies. The variable <see cref="Variable"/> overrides it. Windows:
    /// %LOCALAPPDATA%\SunLessons; macOS: ~/Library/Application Support/SunLessons; elsewhere: $XDG_DATA_HOME/sunlessons
    /// when that is an absolute path, otherwise ~/.local/share/sunlessons (XDG Base Directory Specification 0.8).
    /// The folder is not made here.
    /// </summary>
    public static string ForThisUser() => For(Environment.GetEnvironmentVariable);

    /// <summary>The same rule with the environment given, so that it can be tested.</summary>
    internal static string For(Func<string, string?> variable)
    {
        if (variable(Variable) is { Length: > 0 } named)
        {
            return Path.GetFullPath(named);
        }

        string home = Environment.GetFolderPath(Environment.SpecialFolder.UserProfile);
        if (OperatingSystem.IsWindows())
        {
            return Path.Combine(Environment.GetFolderPath(Environment.SpecialFolder.LocalApplicationData), "SunLessons");
        }

        if (OperatingSystem.IsMacOS())
        {
            return Path.Combine(home, "Library", "Application Support", "SunLessons");
        }

        // The specification says that a relative path in the variable is to be ignored.
        return variable("XDG_DATA_HOME") is { Length: > 0 } data && Path.IsPathFullyQualified(data)
            ? Path.Combine(data, "sunlessons")
            : Path.Combine(home, ".local", "share", "sunlessons");
    }
}
