using System.ComponentModel;
using System.Diagnostics;

namespace SunLessons.App.Desktop;

/// <summary>Opens an address in the user's browser where there is a desktop.</summary>
public static class Browser
{
    /// <summary>Whether a desktop is there to open a browser on.</summary>
    public static bool DesktopIsThere =>
        OperatingSystem.IsWindows() ? Environment.UserInteractive
        : OperatingSystem.IsMacOS() || HasValue("DISPLAY") || HasValue("WAYLAND_DISPLAY");

    /// <summary>Tries to open an address; returns whether an opener was started.</summary>
    public static bool TryOpen(string address)
    {
        if (!DesktopIsThere)
        {
            return false;
        }

        try
        {
            var start = OperatingSystem.IsWindows()
                ? new ProcessStartInfo(address) { UseShellExecute = true }
                : new ProcessStartInfo(OperatingSystem.IsMacOS() ? "open" : "xdg-open", [address]) { RedirectStandardError = true, RedirectStandardOutput = true };
            using var process = Process.Start(start);
            return true;
        }
        catch (Exception exception) when (exception is Win32Exception or FileNotFoundException)
        {
            // No opener is installed: the printed address is enough.
            return false;
        }
    }

    private static bool HasValue(string variable) => !string.IsNullOrEmpty(Environment.GetEnvironmentVariable(variable));
}
