using System.Reflection;

namespace SunLessons.Publishing;

/// <summary>Files of this project that go into published pages.</summary>
internal static class Asset
{
    public static string Text(string name)
    {
        using var reader = new StreamReader(Open(name));
        return reader.ReadToEnd();
    }

    public static byte[] Bytes(string name)
    {
        using var stream = Open(name);
        using var all = new MemoryStream();
        stream.CopyTo(all);
        return all.ToArray();
    }

    private static Stream Open(string name) =>
        Assembly.GetExecutingAssembly().GetManifestResourceStream(name) ?? throw new InvalidOperationException($"This build carries no file '{name}'.");
}
