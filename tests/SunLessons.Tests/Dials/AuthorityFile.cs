using System.Globalization;

namespace SunLessons.Tests.Dials;

/// <summary>Reads a reference table of tests/SunLessons.Tests/authorities.</summary>
internal static class AuthorityFile
{
    /// <summary>Rows below the heading, comment lines left out.</summary>
    public static IEnumerable<string[]> Rows(params string[] parts) =>
        File.ReadLines(Checkout.Authority(parts)).Where(line => line.Length > 0 && line[0] != '#').Skip(1).Select(line => line.Split(','));

    public static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);
}
