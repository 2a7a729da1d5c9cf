using System.Text.Json.Nodes;

namespace SunLessons.Notebooks.Tests;

public class LearnerCopyTests
{
    private readonly string _shelf = Samples.NewFolder();
    private readonly string _own = Samples.NewFolder();

    [Fact]
    public void Edits_outputs_and_record_are_there_again_and_the_lesson_file_is_untouched()
    {
        Lesson lesson = Samples.Shelve(_shelf);
        byte[] before = File.ReadAllBytes(lesson.FilePath);
        LearnerCopy copy = LearnerCopy.Open(lesson, _own);
        copy.SetSource("sum", "40 + 2");
        copy.SetOutputs("sum", [NotebookOutput.Stream("stdout", "42")], 1);
        copy.SetRecord("prediction", "13:18");
        copy.SetRecord("longitude", -8.72);
        string added = copy.AddCodeCell("sum", "7 * 6");
        copy.Save();

        LearnerCopy again = LearnerCopy.Open(lesson, _own);
        Assert.Null(again.Notice);
        Assert.False(again.HasUnsavedChanges);
        Assert.Equal("40 + 2", again.Notebook.Find("sum")!.Source);
        Assert.Equal("42", again.Notebook.Find("sum")!.Outputs[0].StreamText);
        Assert.Equal("""{"prediction":"13:18","longitude":-8.72}""", again.Record.ToJsonString());
        Assert.Equal(["title", "sum", added, "end"], again.Notebook.Cells.Select(cell => cell.Id));
        Assert.True(again.IsEdited("sum"));
        Assert.True(again.IsEdited(added));
        Assert.False(again.IsEdited("title"));
        Assert.Equal(before, File.ReadAllBytes(lesson.FilePath));

        again.RestoreSource("sum");
        Assert.False(again.IsEdited("sum"));
        again.SetRecord("prediction", null);
        Assert.Equal("""{"longitude":-8.72}""", again.Record.ToJsonString());
    }

    [Fact]
    public void When_the_lesson_is_newer_untouched_cells_take_its_text_and_the_learners_work_stays()
    {
        Lesson lesson = Samples.Shelve(_shelf);
        LearnerCopy copy = LearnerCopy.Open(lesson, _own);
        copy.SetSource("sum", "40 + 2");
        copy.SetRecord("prediction", "13:18");
        string added = copy.AddCodeCell("sum", "7 * 6");
        copy.Save();

        Samples.Shelve(_shelf, Samples.Lesson.Replace("Read shadows.", "Read them with your back to the Sun.").Replace("1 + 1", "1 + 2"));
        LearnerCopy again = LearnerCopy.Open(lesson, _own);
        Assert.Equal("# Noon\nRead them with your back to the Sun.", again.Notebook.Find("title")!.Source);
        Assert.Equal("40 + 2", again.Notebook.Find("sum")!.Source);
        Assert.Equal(["title", "sum", added, "end"], again.Notebook.Cells.Select(cell => cell.Id));
        Assert.Equal("""{"prediction":"13:18"}""", again.Record.ToJsonString());
        Assert.Equal("The lesson has new text since you last opened it; your own changes and answers are kept, and cells that you had not changed (1) were renewed.", again.Notice);
        Assert.True(again.IsEdited("sum"));
        again.RestoreSource("sum");
        Assert.Equal("1 + 2", again.Notebook.Find("sum")!.Source);

        again.Save();
        Assert.Null(LearnerCopy.Open(lesson, _own).Notice);
    }

    [Fact]
    public void An_edited_cell_that_the_lesson_has_dropped_stays_in_its_place_and_an_untouched_one_goes()
    {
        Lesson lesson = Samples.Shelve(_shelf);
        LearnerCopy copy = LearnerCopy.Open(lesson, _own);
        copy.SetSource("sum", "40 + 2");
        copy.Save();
        Samples.Shelve(_shelf, Notebook.Parse(Samples.Lesson).WithoutCell("sum").WithoutCell("end").ToJson());
        Assert.Equal(["title", "sum"], LearnerCopy.Open(lesson, _own).Notebook.Cells.Select(cell => cell.Id));
    }

    [Fact]
    public void Outputs_of_a_cell_whose_text_was_renewed_are_dropped()
    {
        Lesson lesson = Samples.Shelve(_shelf);
        LearnerCopy copy = LearnerCopy.Open(lesson, _own);
        copy.SetOutputs("sum", [NotebookOutput.Stream("stdout", "2")], 1);
        copy.Save();
        Samples.Shelve(_shelf, Samples.Lesson.Replace("1 + 1", "1 + 2"));
        Assert.Empty(LearnerCopy.Open(lesson, _own).Notebook.Find("sum")!.Outputs);
    }

    [Theory]
    [InlineData("")]
    [InlineData("{\"cells\": [")]
    [InlineData("{\"nbformat\": 3}")]
    public void A_damaged_copy_is_renamed_never_deleted_and_one_sentence_says_so(string damaged)
    {
        Lesson lesson = Samples.Shelve(_shelf);
        for (int n = 1; n <= 2; n++)
        {
            File.WriteAllText(Path.Combine(_own, "your-own-noon.ipynb"), damaged);
            LearnerCopy copy = LearnerCopy.Open(lesson, _own);
            Assert.EndsWith($", so it was kept as your-own-noon.damaged-{n}.ipynb and the lesson starts afresh.", copy.Notice);
            Assert.StartsWith("Your saved copy could not be read (your-own-noon.ipynb is ", copy.Notice);
            Assert.Equal(damaged, File.ReadAllText(Path.Combine(_own, $"your-own-noon.damaged-{n}.ipynb")));
            Assert.Equal("1 + 1", copy.Notebook.Find("sum")!.Source);
        }
    }

    [Fact]
    public void A_failed_save_leaves_the_previous_file_and_no_litter_and_says_one_sentence()
    {
        Lesson lesson = Samples.Shelve(_shelf);
        LearnerCopy copy = LearnerCopy.Open(lesson, _own);
        copy.Save();
        string saved = File.ReadAllText(copy.FilePath);

        // A folder in the file's place: no rename can take it, on any system, for any user.
        string aside = copy.FilePath + ".kept";
        File.Move(copy.FilePath, aside);
        Directory.CreateDirectory(copy.FilePath);
        copy.SetRecord("answer", 93.2);
        var problem = Assert.Throws<NotebookFormatException>(copy.Save);
        Assert.StartsWith($"Your copy {copy.FilePath} could not be saved (", problem.Message);
        Assert.True(copy.HasUnsavedChanges);
        Assert.Empty(Directory.GetFiles(_own, "*" + SafeFile.UnfinishedEnding));
        Assert.Empty(Directory.GetFiles(_own, ".*" + SafeFile.UnfinishedEnding));

        Directory.Delete(copy.FilePath);
        File.Move(aside, copy.FilePath);
        Assert.Equal(saved, File.ReadAllText(copy.FilePath));
        copy.Save();
        Assert.Equal(93.2, LearnerCopy.Open(lesson, _own).Record["answer"]!.GetValue<double>());
    }

    [Fact]
    public void Unfinished_files_of_a_killed_process_are_cleared_once_they_are_old()
    {
        Lesson lesson = Samples.Shelve(_shelf);
        string old = Path.Combine(_own, ".your-own-noon.ipynb.0123.part");
        string young = Path.Combine(_own, ".your-own-noon.ipynb.4567.part");
        File.WriteAllText(old, "{");
        File.WriteAllText(young, "{");
        File.SetLastWriteTimeUtc(old, TimeProvider.System.GetUtcNow().UtcDateTime.AddHours(-2));
        LearnerCopy.Open(lesson, _own);
        Assert.False(File.Exists(old));
        Assert.True(File.Exists(young));
    }

    [Fact]
    public void Many_threads_change_and_save_and_nothing_is_lost()
    {
        Lesson lesson = Samples.Shelve(_shelf);
        LearnerCopy copy = LearnerCopy.Open(lesson, _own);
        Parallel.For(0, 60, n =>
        {
            copy.SetRecord($"key{n}", n);
            copy.Save();
        });
        JsonObject record = LearnerCopy.Open(lesson, _own).Record;
        Assert.Equal(60, record.Count);
        Assert.All(Enumerable.Range(0, 60), n => Assert.Equal(n, record[$"key{n}"]!.GetValue<int>()));
    }

    [Fact]
    public async Task The_saver_writes_after_a_change_and_at_the_end()
    {
        Lesson lesson = Samples.Shelve(_shelf);
        LearnerCopy copy = LearnerCopy.Open(lesson, _own);
        var saver = new LearnerCopySaver(copy, TimeSpan.FromMilliseconds(5));
        var saved = new TaskCompletionSource();
        saver.Saved += () =>
        {
            if (!copy.HasUnsavedChanges)
            {
                saved.TrySetResult();
            }
        };
        copy.SetRecord("a", 1);
        await saved.Task.WaitAsync(TimeSpan.FromSeconds(30), TestContext.Current.CancellationToken);
        Assert.Equal(1, LearnerCopy.Open(lesson, _own).Record["a"]!.GetValue<int>());
        copy.SetRecord("b", 2);
        saver.Dispose();
        Assert.Equal(2, LearnerCopy.Open(lesson, _own).Record["b"]!.GetValue<int>());
    }

    [Fact]
    public void The_folder_is_the_named_one_or_the_systems_place_for_programs_data()
    {
        string named = Path.Combine(_own, "mine");
        Assert.Equal(named, LearnerFolder.For(name => name == LearnerFolder.Variable ? named : null));
        string usual = LearnerFolder.For(_ => null);
        Assert.True(Path.IsPathFullyQualified(usual));
        if (OperatingSystem.IsLinux())
        {
            Assert.EndsWith("/.local/share/sunlessons", usual);
            Assert.Equal("/data/sunlessons", LearnerFolder.For(name => name == "XDG_DATA_HOME" ? "/data" : null));
            Assert.Equal(usual, LearnerFolder.For(name => name == "XDG_DATA_HOME" ? "relative" : null));
        }
        else
        {
            Assert.EndsWith("SunLessons", usual);
        }
    }
}
