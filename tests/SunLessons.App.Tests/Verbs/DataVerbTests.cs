using System.Text.Json.Nodes;
using SunLessons.App.Tests.FrontEnds;
using SunLessons.App.Tests.Support;
using SunLessons.Jupyter.Client;
using SunLessons.Tests.CivilTime;

namespace SunLessons.App.Tests.Verbs;

/// <summary>Later compass models and time-zone rules, added from files by the command and seen by every later start of the program, kernels too.</summary>
public sealed class DataVerbTests : IDisposable
{
    // An invented model of 2030: tests/SunLessons.Tests/authorities/geomag/later.
    private static readonly string Model = RepositoryFiles.Path("tests", "SunLessons.Tests", "authorities", "geomag", "later", "later_2030.cof");

    private readonly string _folder = Directory.CreateTempSubdirectory("sunlessons-data-").FullName;

    private IReadOnlyDictionary<string, string> Mine => new Dictionary<string, string> { ["SUNLESSONS_LEARNER_FOLDER"] = _folder };

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public async Task A_later_model_answers_after_its_epoch_and_status_says_so_until_it_is_removed()
    {
        string[] north = ["north", "--place", "Vigo", "--date", "2032-01-01", "--json"];
        var before = await Tool.SunLessonsAsync(Mine, north);
        Assert.Equal(2, before.ExitCode);
        Assert.StartsWith("WMM2025 was valid until 2030.0 and cannot answer for 2032.0: add the next model's coefficient file with \"sunlessons data add\"", before.Errors, StringComparison.Ordinal);

        Assert.Equal(
            "Added: Compass model WMM2030, which answers for 2030.0 to 2035.0.\nPages, lessons and kernels that start from now on use it.\n",
            await SaidAsync("data", "add", Model));
        Assert.Equal(["compass-2030.0.cof"], Directory.EnumerateFileSystemEntries(Path.Combine(_folder, "data")).Select(Path.GetFileName));
        var answer = JsonNode.Parse(await SaidAsync(north))!.AsObject();
        Assert.Equal("WMM2030", answer.At("model")!.GetValue<string>());

        // npm's geomagnetism 0.2.0 for the same file (authorities/geomag/later/later_2030.csv).
        Assert.Equal(-0.1745863, answer.Number("magnetic_declination_degrees"), 1e-6);
        Assert.StartsWith("the error model of WMM2025 carried over", answer.At("uncertainty_source")!.GetValue<string>(), StringComparison.Ordinal);

        var status = await SaidAsync("data", "status");
        Assert.Matches(@"(?m)^  WMM2025 +built in  answers for 2025\.0 to 2030\.0;", status);
        Assert.Matches(@"(?m)^  WMM2030 +added  answers for 2030\.0 to 2035\.0;", status);
        Assert.Contains("\n  compass-2030.0.cof\n", status + "\n", StringComparison.Ordinal);

        Assert.Equal("Removed: compass-2030.0.cof\n", await SaidAsync("data", "remove", "compass-2030.0.cof"));
        Assert.DoesNotContain("WMM2030", await SaidAsync("data", "status"), StringComparison.Ordinal);
        Assert.Equal(2, (await Tool.SunLessonsAsync(Mine, north)).ExitCode);
    }

    [Fact]
    public async Task Later_time_zone_rules_move_the_clock_and_are_named_beside_it()
    {
        var file = Path.Combine(_folder, "tzdb2027a.nzd");
        await File.WriteAllBytesAsync(file, LaterZoneFile.Make());
        string[] clock = ["clock", "--place", "Vigo", "--date", "2027-07-01", "--shown", "12:00", "--json"];
        var before = JsonNode.Parse(await SaidAsync(clock))!.AsObject();
        Assert.StartsWith("Added: Time-zone rules 2027a.\n", await SaidAsync("data", "add", file), StringComparison.Ordinal);
        var after = JsonNode.Parse(await SaidAsync(clock))!.AsObject();

        // In the invented rules Spain keeps UTC all year: two hours less than UTC+1 with daylight time.
        Assert.Equal(before.MinutesOfDay("answers/0/clock") - 120.0, after.MinutesOfDay("answers/0/clock"), 1e-3);
        Assert.Equal("2027a", after.At("answers/0/time_zone_rules")!.GetValue<string>());
        Assert.Matches(@"(?m)^  2027a +added  laws of clocks as far as they were known\n +in 2027;", await SaidAsync("data", "status"));
    }

    // A kernel is a process of its own: what it computes must be what the verb says.
    [Fact]
    public async Task A_kernel_answers_from_the_added_data()
    {
        var file = Path.Combine(_folder, "tzdb2027a.nzd");
        await File.WriteAllBytesAsync(file, LaterZoneFile.Make());
        await SaidAsync("data", "add", Model);
        await SaidAsync("data", "add", file);
        await using var kernel = await KernelProcess.StartAsync(WithFolder(Ahead.KernelLaunch.Verb));
        var printed = "";
        using var patience = new CancellationTokenSource(TimeSpan.FromMinutes(2));
        await kernel.Client.ExecuteAsync(
            "Console.Write($\"{((NorthAnswer.Known)MagneticField.At(GeoPoint.FromDegrees(42.24, -8.72), 2032.0)).Declination} {CivilZones.TzdbVersion}\")",
            onOutput: output => printed += output is StreamOutput stream ? stream.Text : "",
            stop: patience.Token);
        Assert.Contains("-0.1745", printed, StringComparison.Ordinal);
        Assert.EndsWith("2027a", printed, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_cannot_be_added_is_one_sentence_exit_code_2_and_leaves_nothing()
    {
        var junk = Path.Combine(_folder, "letter.txt");
        await File.WriteAllTextAsync(junk, "Dear reader\n");
        var picture = Path.Combine(_folder, "picture.png");
        await File.WriteAllBytesAsync(picture, [137, 80, 78, 71, 13, 10, 26, 10, 0, 0, 0, 13]);
        var older = Path.Combine(_folder, "tzdb.nzd");
        await File.WriteAllBytesAsync(older, LaterZoneFile.Make("2020a"));
        var gap = Path.Combine(_folder, "gap.cof");
        await File.WriteAllTextAsync(gap, (await File.ReadAllTextAsync(Model)).Replace("2030.0  ", "2035.0  ", StringComparison.Ordinal));
        foreach (var (path, begins) in new[]
        {
            (junk, "The first line \"Dear reader\" is not that of a World Magnetic Model"),
            (picture, "The file is neither the coefficient file of a World Magnetic Model (WMM.COF) nor a time-zone database"),
            (older, "The time-zone rules 2020a are not later than 2026f, which this program has; give a later file."),
            (gap, "WMM2030 begins with 2035.0 and the models here end with 2030.0, which leaves years without an answer"),
            (Path.Combine(_folder, "nowhere.cof"), "There is no file "),
        })
        {
            var refused = await Tool.SunLessonsAsync(Mine, "data", "add", path);
            Assert.Equal(2, refused.ExitCode);
            Assert.StartsWith(begins, refused.Errors, StringComparison.Ordinal);
            Assert.Single(refused.Errors.TrimEnd().Split('\n'));
            Assert.Equal("", refused.Output);
            Assert.False(Directory.Exists(Path.Combine(_folder, "data")));
        }

        var none = await Tool.SunLessonsAsync(Mine, "data", "remove", "compass-2030.0.cof");
        Assert.Equal(2, none.ExitCode);
        Assert.Equal("No file compass-2030.0.cof was added; none was.\n", none.Errors.ReplaceLineEndings("\n"));
    }

    // A disk may lose what it was given: the program says so and answers from its own data.
    [Fact]
    public async Task A_damaged_file_is_named_and_the_built_in_data_answer()
    {
        await SaidAsync("data", "add", Model);
        await File.WriteAllTextAsync(Path.Combine(_folder, "data", "compass-2030.0.cof"), "2030.0 WMM-2030 12/13/2029\n");
        var status = await Tool.SunLessonsAsync(Mine, "data", "status");
        Assert.Equal(0, status.ExitCode);
        Assert.StartsWith("The added data in ", status.Errors, StringComparison.Ordinal);
        Assert.Contains("are not used: The file ends within degree 0", status.Errors, StringComparison.Ordinal);
        Assert.DoesNotContain("WMM2030", status.Output, StringComparison.Ordinal);
    }

    private async Task<string> SaidAsync(params string[] words)
    {
        var run = await Tool.SunLessonsAsync(Mine, words);
        Assert.Equal("", run.Errors);
        Assert.Equal(0, run.ExitCode);
        return run.Output.ReplaceLineEndings("\n");
    }

    private KernelCommand WithFolder(string verb) => OperatingSystem.IsWindows()
        ? new KernelCommand("cmd", ["/c", $"set SUNLESSONS_LEARNER_FOLDER={_folder}&& dotnet exec {Support.Program.Assembly} {verb} {KernelCommand.ConnectionFile}"])
        : new KernelCommand("/usr/bin/env", [$"SUNLESSONS_LEARNER_FOLDER={_folder}", "dotnet", "exec", Support.Program.Assembly, verb, KernelCommand.ConnectionFile]);
}
