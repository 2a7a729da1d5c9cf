using SunLessons.App.Tests.Support;
using SunLessons.Notebooks;
using SunLessons.Publishing.Tests.Support;

[assembly: AssemblyFixture(typeof(PublishedLessons))]

namespace SunLessons.Publishing.Tests.Support;

/// <summary>The four lessons, published once for all tests: as a folder and as single files. The player is built if it is not there yet.</summary>
public sealed class PublishedLessons : IAsyncLifetime
{
    private readonly string _root = Directory.CreateTempSubdirectory("sunlessons-published-").FullName;

    public static LessonShelf Shelf { get; } = new(RepositoryFiles.Path("lessons"));

    public static TheoryData<string> Folders => [.. Shelf.Lessons().Select(lesson => lesson.Folder)];

    /// <summary>Every lesson in every language that it stands in.</summary>
    public static IReadOnlyList<Lesson> Editions { get; } = [.. Shelf.Lessons().SelectMany(lesson => Shelf.Translations(lesson).Prepend(lesson))];

    public string Folder => Path.Combine(_root, "folder");

    public string Single => Path.Combine(_root, "single");

    public IReadOnlyList<string> Files { get; private set; } = [];

    public static Publisher NewPublisher() => new(AppContext.BaseDirectory, _ => { });

    public async ValueTask InitializeAsync()
    {
        Files = await NewPublisher().PublishAsync(Shelf, Folder, singleFile: false);
        await NewPublisher().PublishAsync(Shelf, Single, singleFile: true);
    }

    public ValueTask DisposeAsync()
    {
        Directory.Delete(_root, recursive: true);
        return ValueTask.CompletedTask;
    }

    /// <summary>The address of a published file, as a double click opens it.</summary>
    public Uri Address(string lesson) => new(Path.Combine(Folder, lesson + ".html"));
}
