namespace SunLessons.App.Tests.Support;

/// <summary>Finds the checkout that these tests were built from.</summary>
internal static class RepositoryFiles
{
    public static string Root { get; } = FindRoot();

    public static string Path(params string[] parts) => System.IO.Path.Combine([Root, .. parts]);

    private static string FindRoot()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(System.IO.Path.Combine(folder.FullName, "SunLessons.sln")))
        {
            folder = folder.Parent;
        }

        return folder?.FullName ?? throw new InvalidOperationException("SunLessons.sln was not found above the tests' own folder.");
    }
}
