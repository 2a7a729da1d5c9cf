using SunLessons.App.Tests.Support;
using SunLessons.Publishing.Players;
using SunLessons.Publishing.Tests.Support;

namespace SunLessons.Publishing.Tests;

/// <summary>The player that was built is taken again as long as it is the same player; the fixture has built one beside this program.</summary>
public sealed class PlayerFolderTests(PublishedLessons published) : IDisposable
{
    private readonly string _root = Directory.CreateTempSubdirectory("sunlessons-player-folder-").FullName;

    private string Program => Path.Combine(_root, "bin");

    private string Source => Path.Combine(_root, "src", "SunLessons.Player");

    [Fact]
    public async Task A_changed_library_or_a_changed_source_of_the_player_asks_for_another_player()
    {
        Assert.NotEmpty(published.Files);
        CopyProgram();
        CopySource();
        Assert.Equal(Path.Combine(Program, "player"), await FindAsync());

        // Whatever it is built from here, it is built: the copy of the source lies outside the solution and cannot be.
        await File.AppendAllTextAsync(Path.Combine(Source, "PageHost.cs"), "// changed");
        Assert.StartsWith("The player for published pages could not be built", (await Assert.ThrowsAsync<PublishProblemException>(FindAsync)).Message, StringComparison.Ordinal);
        CopySource();
        Assert.Equal(Path.Combine(Program, "player"), await FindAsync());
        await File.AppendAllTextAsync(Path.Combine(Program, "SunLessons.Cells.dll"), " ");
        Assert.StartsWith("The player for published pages could not be built", (await Assert.ThrowsAsync<PublishProblemException>(FindAsync)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_program_without_source_takes_the_player_that_came_with_it_and_no_other()
    {
        CopyProgram();
        Assert.Equal(Path.Combine(Program, "player"), await FindAsync());
        await File.AppendAllTextAsync(Path.Combine(Program, "SunLessons.Cells.dll"), " ");
        Assert.StartsWith("The player for published pages is not beside the program", (await Assert.ThrowsAsync<PublishProblemException>(FindAsync)).Message, StringComparison.Ordinal);
    }

    public void Dispose() => Directory.Delete(_root, recursive: true);

    private Task<string> FindAsync() => PlayerFolder.FindAsync(Program, _ => { });

    private void CopyProgram()
    {
        Directory.CreateDirectory(Path.Combine(Program, "player"));
        foreach (var file in Directory.EnumerateFiles(AppContext.BaseDirectory, "SunLessons*.dll").Append(Path.Combine(AppContext.BaseDirectory, "player", "made-from.txt")))
        {
            File.Copy(file, Path.Combine(Program, Path.GetRelativePath(AppContext.BaseDirectory, file)));
        }
    }

    private void CopySource()
    {
        Directory.CreateDirectory(Source);
        foreach (var file in Directory.EnumerateFiles(RepositoryFiles.Path("src/SunLessons.Player")))
        {
            File.Copy(file, Path.Combine(Source, Path.GetFileName(file)), overwrite: true);
        }
    }
}
