using System.Runtime.Versioning;
using System.Text;

namespace SunLessons.Jupyter;

/// <summary>
/// Files that only the person who runs the program may read: a connection file holds the key with which anybody could run code.
/// On Unix the folder has mode 0700 and a file 0600 from the moment it exists. On Windows the folder lies in the user's own
/// local application data, whose access list already keeps other users out.
/// </summary>
public static class PrivateFiles
{
    private const UnixFileMode OwnerFolder = UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute;
    private const UnixFileMode OwnerFile = UnixFileMode.UserRead | UnixFileMode.UserWrite;

    /// <summary>
    /// The folder for connection files: XDG_RUNTIME_DIR/sunlessons where the system has one (XDG Base Directory Specification 0.8,
    /// a folder with mode 0700 that the system clears at log-out), else the user's local application data. Made when missing.
    /// </summary>
    public static string RuntimeFolder()
    {
        var runtime = OperatingSystem.IsWindows() ? null : Environment.GetEnvironmentVariable("XDG_RUNTIME_DIR");
        if (string.IsNullOrEmpty(runtime) || !Directory.Exists(runtime))
        {
            runtime = Environment.GetFolderPath(Environment.SpecialFolder.LocalApplicationData, Environment.SpecialFolderOption.DoNotVerify);
        }

        if (string.IsNullOrEmpty(runtime))
        {
            // A user without a home: the temporary folder, in a folder of that user's own name, which the mode below closes to others.
            runtime = Path.Combine(Path.GetTempPath(), "sunlessons-" + Environment.UserName);
        }

        return CreateFolder(Path.Combine(runtime, "sunlessons", "kernels"));
    }

    /// <summary>Makes a folder (and those above it) that only its owner can enter, and returns its path; an existing folder is closed to others.</summary>
    /// <param name="path">The folder's path.</param>
    public static string CreateFolder(string path)
    {
        if (OperatingSystem.IsWindows())
        {
            Directory.CreateDirectory(path);
        }
        else
        {
            Directory.CreateDirectory(path, OwnerFolder);
            Close(path);
        }

        return path;
    }

    /// <summary>Writes a text file that only its owner can read, in UTF-8. The file must not exist: so nobody else can have prepared it.</summary>
    /// <param name="path">The file's path.</param>
    /// <param name="text">What it is to hold.</param>
    /// <exception cref="IOException">The file exists already, or cannot be written.</exception>
    public static void WriteNew(string path, string text)
    {
        var options = new FileStreamOptions { Mode = FileMode.CreateNew, Access = FileAccess.Write, Share = FileShare.None };
        if (!OperatingSystem.IsWindows())
        {
            options.UnixCreateMode = OwnerFile;
        }

        using var stream = new FileStream(path, options);
        stream.Write(Encoding.UTF8.GetBytes(text));
    }

    [UnsupportedOSPlatform("windows")]
    private static void Close(string folder)
    {
        if (File.GetUnixFileMode(folder) != OwnerFolder)
        {
            File.SetUnixFileMode(folder, OwnerFolder);
        }
    }
}
