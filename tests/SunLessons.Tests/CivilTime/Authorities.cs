namespace SunLessons.Tests.CivilTime;

/// <summary>Reads the reference numbers that lie beside the tests.</summary>
internal static class Authorities
{
    /// <summary>All lines of a file under authorities/source.</summary>
    public static string[] Lines(string source, string file) => File.ReadAllLines(Checkout.Authority(source, file));

    /// <summary>The whole text of a file under authorities/source.</summary>
    public static string Text(string source, string file) => File.ReadAllText(Checkout.Authority(source, file));
}
