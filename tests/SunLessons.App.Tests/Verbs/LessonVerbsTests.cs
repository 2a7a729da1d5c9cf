using System.Text.RegularExpressions;
using SunLessons.App.Tests.FrontEnds;
using SunLessons.App.Tests.Support;
using SunLessons.Notebooks;

namespace SunLessons.App.Tests.Verbs;

/// <summary>For authors: a lesson to begin with, and what is to mend in one, cell by cell.</summary>
public sealed partial class LessonVerbsTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("sunlessons-authors-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [GeneratedRegex(@"\s+")]
    private static partial Regex Spaces();

    [Fact]
    public async Task The_lessons_of_the_program_have_nothing_to_mend()
    {
        var run = await Tool.SunLessonsAsync(null, "check-lessons");
        Assert.Equal("", run.Errors);
        Assert.Equal(0, run.ExitCode);
        Assert.EndsWith(" lessons checked, nothing to mend.\n", run.Output.ReplaceLineEndings("\n"), StringComparison.Ordinal);
        var counts = Regex.Matches(Flat(run.Output), @"(\d+) cells run, (\d+) checks answered\. Finished, and nothing to mend\.");
        Assert.True(counts.Count >= 4);
        Assert.All(counts, count => Assert.True(int.Parse(count.Groups[1].Value) >= 20 && int.Parse(count.Groups[2].Value) >= 8, count.Value));
    }

    [Fact]
    public async Task Pages_are_not_written_among_lessons_when_only_these_were_named()
    {
        var own = Path.Combine(_folder, "my-lessons");
        await Tool.SunLessonsAsync(null, "new-lesson", Path.Combine(own, "09-a-blunt-shadow"));
        var run = await Tool.SunLessonsAsync(null, "publish", own);
        Assert.Equal((2, ""), (run.ExitCode, run.Output));
        Assert.Equal($"{own} holds lessons, and pages need a folder of their own; write sunlessons publish {own} OUT.", run.Errors.Trim());
        Assert.Equal(["lesson.ipynb"], Directory.EnumerateFiles(own, "*", SearchOption.AllDirectories).Select(Path.GetFileName));
    }

    [Fact]
    public async Task A_new_lesson_runs_and_is_judged_as_not_finished_with_nothing_to_mend()
    {
        var own = Path.Combine(_folder, "my-lessons", "09-a-blunt-shadow");
        var written = await Tool.SunLessonsAsync(null, "new-lesson", own);
        Assert.Equal((0, ""), (written.ExitCode, written.Errors));
        var file = Path.Combine(own, "lesson.ipynb");
        Assert.StartsWith($"A lesson to begin with is in {file}.", written.Output, StringComparison.Ordinal);
        Assert.Equal(["lesson.ipynb"], Directory.EnumerateFileSystemEntries(own).Select(Path.GetFileName));
        var lesson = new LessonShelf(Path.GetDirectoryName(own)!).Find("a-blunt-shadow");
        Assert.Equal(("A blunt shadow", 9), (lesson.Title, lesson.Number));
        Assert.Equal(await File.ReadAllTextAsync(file), lesson.ReadNotebook().ToJson());
        Assert.StartsWith("# A blunt shadow\n", lesson.ReadNotebook().Cells[0].Source, StringComparison.Ordinal);

        foreach (var folder in new[] { own, Path.GetDirectoryName(own)! })
        {
            var judged = await Tool.SunLessonsAsync(null, "check-lessons", folder);
            Assert.Equal((0, ""), (judged.ExitCode, judged.Errors));
            var said = Flat(judged.Output);
            Assert.StartsWith("09-a-blunt-shadow: A blunt shadow. 6 cells run, 2 checks answered. Not finished: 18 parts are still to write.", said, StringComparison.Ordinal);
            Assert.Contains("anatomy: The lesson has no cell with the role worked; add one after cell 13 (table, \"table-after\").", said, StringComparison.Ordinal);
            Assert.EndsWith("1 lesson checked, nothing to mend.", said, StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task Nothing_is_written_over_a_lesson_and_nothing_is_made_of_a_name_that_no_lesson_can_have()
    {
        var file = await NewAsync();
        var mine = (await File.ReadAllTextAsync(file)).Replace("# A stick", "# My own", StringComparison.Ordinal);
        await File.WriteAllTextAsync(file, mine);
        var again = await Tool.SunLessonsAsync(null, "new-lesson", Path.GetDirectoryName(file)!);
        Assert.Equal(2, again.ExitCode);
        Assert.Equal($"{Path.GetDirectoryName(file)} holds a lesson already, and nothing is written over one; name another folder.", again.Errors.TrimEnd());
        Assert.Equal(mine, await File.ReadAllTextAsync(file));

        var wrong = await Tool.SunLessonsAsync(null, "new-lesson", Path.Combine(_folder, "A blunt shadow"));
        Assert.Equal(2, wrong.ExitCode);
        Assert.Equal("The folder is called \"A blunt shadow\", and a lesson's folder has lower-case letters, digits and hyphens; write such as 09-a-blunt-shadow.", wrong.Errors.TrimEnd());
        Assert.False(Path.Exists(Path.Combine(_folder, "A blunt shadow")));
    }

    [Theory]
    [InlineData("2 / tangent;", "2 / tangnt;", "cell 15 (check, \"check-shadow\"), runs: The cell does not run to its end: ")]
    [InlineData("2 / tangent;", "2 / tangent + calls++;", "cell 15 (check, \"check-shadow\"), check: The check \"shadow-length\" does not take its own answer ")]
    [InlineData("0.02, \\\"m\\\"", "0.9, \\\"m\\\"", "cell 15 (check, \"check-shadow\"), runs: The cell does not run to its end: Check 'shadow-length' cannot tell slips apart: ")]
    [InlineData("    Slip(SineForTangent", "    // Slip(SineForTangent", "cell 15 (check, \"check-shadow\"), check: The check \"shadow-length\" declares 2 slips, and a check knows 3 to 6;")]
    [InlineData("[1.73](", "[1.74](", "cell 13 (table, \"table-after\"), quoted: The text quotes \"shadow-at-thirty\" as 1.74, and the cells give 1.73; write [1.73](#value:shadow-at-thirty).")]
    [InlineData("Value(\\\"shadow-at-thirty\\\"", "if (height > 90) Value(\\\"shadow-at-thirty\\\"", "cell 13 (table, \"table-after\"), quoted: The text quotes \"shadow-at-thirty\" as 1.73, and no cell gave it; write Value(")]
    [InlineData("1 / Angle.FromDegrees(degrees).Tan;", "Here.Point.Latitude.IsSouthern ? throw new InvalidOperationException() : 1 / Angle.FromDegrees(degrees).Tan;", "cell 10 (experiment, \"experiment\"), figure: The figure \"length\" cannot be drawn at Dunedin once the guess is recorded: ")]
    [InlineData("\"role\": \"goals\"", "\"role\": \"ornament\"", "cell 4 (ornament, \"goals\"), role: The cell's role is \"ornament\", and a role is one of ")]
    [InlineData("\"finished\": false", "\"finished\": true", "fades: The worked example with every step shown is missing; write Worked(")]
    public async Task What_is_to_mend_is_told_with_its_cell_and_what_to_write(string text, string instead, string told)
    {
        var file = await NewAsync();
        var whole = await File.ReadAllTextAsync(file);
        Assert.Contains(text, whole, StringComparison.Ordinal);
        await File.WriteAllTextAsync(file, whole.Replace("Show(NumberCheck(", "int calls = 0; Show(NumberCheck(", StringComparison.Ordinal).Replace(text, instead, StringComparison.Ordinal));
        var run = await Tool.SunLessonsAsync(null, "check-lessons", _folder);
        Assert.Equal((1, ""), (run.ExitCode, run.Errors));
        Assert.Contains(told, Flat(run.Output), StringComparison.Ordinal);
        Assert.Matches("1 lesson checked, [1-9][0-9]* things? to mend\\.$", Flat(run.Output));
    }

    [Fact]
    [Trait("needs", "spelling")]
    public async Task A_translation_is_checked_too_and_a_slip_of_the_pen_in_it_is_told()
    {
        var own = Directory.CreateDirectory(Path.Combine(_folder, "06-your-own-noon")).FullName;
        foreach (var file in Directory.GetFiles(RepositoryFiles.Path("lessons", "06-your-own-noon"), "*.ipynb"))
        {
            await File.WriteAllTextAsync(Path.Combine(own, Path.GetFileName(file)), (await File.ReadAllTextAsync(file)).Replace("un reloj de pared", "un relog de pared", StringComparison.Ordinal));
        }

        var run = await Tool.SunLessonsAsync(null, "check-lessons", _folder);
        Assert.Equal((0, ""), (run.ExitCode, run.Errors));
        Assert.Matches(@"06-your-own-noon\.es: Tu propio mediodía\..* Words that the dictionary es_ES does not know, names or slips of the pen: [^.]*\brelog\b", Flat(run.Output));
        Assert.EndsWith("2 lessons checked, nothing to mend.", Flat(run.Output), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_folder_without_lessons_and_a_broken_one_are_told()
    {
        var empty = await Tool.SunLessonsAsync(null, "check-lessons", _folder);
        Assert.Equal((2, ""), (empty.ExitCode, empty.Output));
        Assert.Equal($"{_folder} holds no lesson, and a lesson is a folder with a file lesson.ipynb; begin one with sunlessons new-lesson FOLDER.", empty.Errors.TrimEnd());

        var nowhere = await Tool.SunLessonsAsync(null, "check-lessons", Path.Combine(_folder, "nowhere"));
        Assert.Equal(2, nowhere.ExitCode);
        Assert.StartsWith("There is no folder ", nowhere.Errors, StringComparison.Ordinal);

        var broken = Directory.CreateDirectory(Path.Combine(_folder, "07-broken")).FullName;
        await File.WriteAllTextAsync(Path.Combine(broken, "lesson.ipynb"), "{\"cells\": [");
        var shelf = await Tool.SunLessonsAsync(null, "check-lessons", _folder);
        Assert.Equal((1, ""), (shelf.ExitCode, shelf.Errors));
        Assert.EndsWith("0 lessons checked, 1 thing to mend.", Flat(shelf.Output), StringComparison.Ordinal);
        var one = await Tool.SunLessonsAsync(null, "check-lessons", broken);
        Assert.Equal((2, ""), (one.ExitCode, one.Output));
        Assert.Single(one.Errors.TrimEnd().Split('\n'));
    }

    private static string Flat(string text) => Spaces().Replace(text, " ").Trim();

    private async Task<string> NewAsync()
    {
        var own = Path.Combine(_folder, "a-stick");
        var run = await Tool.SunLessonsAsync(null, "new-lesson", own);
        Assert.Equal((0, ""), (run.ExitCode, run.Errors));
        return Path.Combine(own, "lesson.ipynb");
    }
}
