using System.Globalization;

namespace SunLessons.Kernel.Engine;

/// <summary>The names that submissions carry in stack traces.</summary>
internal static class CellNames
{
    private const string Prefix = "cell ";

    public static string For(int number) => Prefix + number.ToString(CultureInfo.InvariantCulture);

    public static bool TryRead(string? fileName, out int number)
    {
        number = 0;
        // The compiler puts the working folder before the name.
        fileName = fileName?[(fileName.LastIndexOfAny(['/', '\\']) + 1)..];
        return fileName is not null
            && fileName.StartsWith(Prefix, StringComparison.Ordinal)
            && int.TryParse(fileName.AsSpan(Prefix.Length), NumberStyles.None, CultureInfo.InvariantCulture, out number);
    }
}
