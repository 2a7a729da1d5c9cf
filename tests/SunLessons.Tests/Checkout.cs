namespace SunLessons.Tests;

/// <summary>Files of the checkout (or of a copy of its parts) that these tests were built in: above the folder of the test program.</summary>
internal static class Checkout
{
    public static string Path(params string[] parts)
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            var path = System.IO.Path.Combine([folder.FullName, .. parts]);
            if (System.IO.Path.Exists(path))
            {
                return path;
            }
        }

        throw new FileNotFoundException($"No folder above the test program holds {string.Join('/', parts)}.");
    }

    /// <summary>A file of tests/SunLessons.Tests/authorities.</summary>
    public static string Authority(params string[] parts) => Path(["tests", "SunLessons.Tests", "authorities", .. parts]);
}
