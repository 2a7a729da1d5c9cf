using System.Diagnostics;
using System.Globalization;

namespace SunLessons.Notebooks.Tests;

public class KillTests
{
    [Fact]
    public async Task A_process_killed_while_it_saves_leaves_a_valid_copy_no_older_than_the_last_completed_save()
    {
        string folder = Samples.NewFolder();
        Lesson lesson = Samples.Shelve(Path.Combine(folder, "shelf"));
        string own = Path.Combine(folder, "own");
        int seed = Environment.TickCount;
        var random = new Random(seed);
        int last = 0;
        for (int kill = 1; kill <= 25; kill++)
        {
            last = Math.Max(last, await WriteUntilKilled(folder, random.Next(0, 60)));

            LearnerCopy copy = LearnerCopy.Open(lesson, own);
            string circumstances = $"kill {kill}, seed {seed}, last completed save {last}";
            Assert.True(copy.Notice is null, $"{circumstances}: {copy.Notice}");
            int stored = copy.Record["number"]!.GetValue<int>();
            Assert.True(stored >= last, $"{circumstances}: the file holds {stored}");
            last = stored;
        }

        Assert.True(last >= 25, $"Only {last} saves were made, so the kills hit nothing.");
        Assert.Equal("valid", NotebookTests.NbformatSays(Path.Combine(own, lesson.Id + ".ipynb")));
        Assert.Empty(Directory.GetFiles(own, "*damaged*"));
    }

    private static async Task<int> WriteUntilKilled(string folder, int milliseconds)
    {
        var start = new ProcessStartInfo("dotnet") { RedirectStandardOutput = true };
        start.ArgumentList.Add(typeof(KillTests).Assembly.Location);
        start.ArgumentList.Add("writer-host");
        start.ArgumentList.Add(folder);
        using Process writer = Process.Start(start)!;
        int last = 0;
        string? line = await writer.StandardOutput.ReadLineAsync();
        Assert.NotNull(line);
        last = int.Parse(line, CultureInfo.InvariantCulture);

        // The moment of the kill is the random thing; what was printed before it is read afterwards.
        await Task.Delay(milliseconds);
        writer.Kill();
        string[] rest = (await writer.StandardOutput.ReadToEndAsync()).Split('\n');
        await writer.WaitForExitAsync();

        // The text after the last line end may be half a number.
        return rest.Length > 1 ? int.Parse(rest[^2], CultureInfo.InvariantCulture) : last;
    }
}
