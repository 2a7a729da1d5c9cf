using System.Text.Json.Nodes;
using SunLessons.App.Ahead;

namespace SunLessons.App.Tests.FrontEnds;

/// <summary><c>sunlessons jupyter add|remove|status</c>, as a person types it.</summary>
public sealed class KernelSpecTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("sunlessons-kernelspec-").FullName;

    private string Spec => Path.Combine(_folder, "share", "jupyter", "kernels", "sunlessons", "kernel.json");

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public async Task Added_below_a_prefix_shown_and_removed_again()
    {
        var before = await Tool.SunLessonsAsync(null, "jupyter", "status", "--prefix", _folder);
        Assert.Equal(1, before.ExitCode);
        Assert.Contains("Not added", before.Output);

        var added = await Tool.SunLessonsAsync(null, "jupyter", "add", "--prefix", _folder);
        Assert.Equal(0, added.ExitCode);
        Assert.Contains(Spec, added.Output);

        // Field names: "Making kernels for Jupyter", jupyter_client's documentation, section on kernel specs.
        var json = JsonNode.Parse(await File.ReadAllTextAsync(Spec))!;
        Assert.Equal("csharp", (string?)json["language"]);
        Assert.Equal("message", (string?)json["interrupt_mode"]);
        Assert.Equal("SunLessons (C#)", (string?)json["display_name"]);
        var words = json["argv"]!.AsArray().Select(word => (string)word!).ToArray();
        Assert.Equal(["kernel", "{connection_file}"], words[^2..]);
        Assert.True(File.Exists(words[0]), words[0]);
        Assert.True(File.Exists(words[^3]), words[^3]);

        var again = await Tool.SunLessonsAsync(null, "jupyter", "add", "--prefix", _folder);
        Assert.Equal(0, again.ExitCode);
        Assert.Equal(["kernel.json"], Directory.EnumerateFileSystemEntries(Path.GetDirectoryName(Spec)!).Select(Path.GetFileName));

        var status = await Tool.SunLessonsAsync(null, "jupyter", "status", "--prefix", _folder);
        Assert.Equal(0, status.ExitCode);
        Assert.Contains(words[^3], status.Output);

        var removed = await Tool.SunLessonsAsync(null, "jupyter", "remove", "--prefix", _folder);
        Assert.Equal(0, removed.ExitCode);
        Assert.False(Directory.Exists(Path.GetDirectoryName(Spec)));
        var nothing = await Tool.SunLessonsAsync(null, "jupyter", "remove", "--prefix", _folder);
        Assert.Equal(0, nothing.ExitCode);
        Assert.Contains("nothing to remove", nothing.Output);
    }

    [Fact]
    public async Task For_the_user_it_goes_where_JUPYTER_DATA_DIR_says()
    {
        var environment = new Dictionary<string, string> { ["JUPYTER_DATA_DIR"] = _folder };
        var added = await Tool.SunLessonsAsync(environment, "jupyter", "add");
        Assert.Equal(0, added.ExitCode);
        Assert.True(File.Exists(Path.Combine(_folder, "kernels", "sunlessons", "kernel.json")), added.Output);
        var status = await Tool.SunLessonsAsync(environment, "jupyter", "status", "--user");
        Assert.Equal(0, status.ExitCode);
    }

    [Fact]
    public async Task A_kernelspec_whose_program_is_gone_is_called_broken()
    {
        Directory.CreateDirectory(Path.GetDirectoryName(Spec)!);
        await File.WriteAllTextAsync(Spec, """{"argv":["dotnet","exec","/nowhere/SunLessons.App.dll","kernel","{connection_file}"]}""");
        var gone = await Tool.SunLessonsAsync(null, "jupyter", "status", "--prefix", _folder);
        Assert.Equal(1, gone.ExitCode);
        Assert.Contains("no longer there (/nowhere/SunLessons.App.dll)", gone.Output);

        await File.WriteAllTextAsync(Spec, "{");
        var half = await Tool.SunLessonsAsync(null, "jupyter", "status", "--prefix", _folder);
        Assert.Equal(1, half.ExitCode);
        Assert.Contains("holds no command", half.Output);
    }

    [Fact]
    public async Task What_cannot_be_done_is_one_sentence_and_exit_code_2()
    {
        await File.WriteAllTextAsync(Path.Combine(_folder, "share"), "a file where a folder should be");
        string[][] calls =
        [
            ["add", "--prefix", Path.Combine(_folder, "mistyped")],
            ["add", "--user", "--prefix", _folder],
            ["add", "--prefix", _folder],
            ["remove", "--prefix", ""],
        ];
        foreach (var call in calls)
        {
            var refused = await Tool.SunLessonsAsync(null, ["jupyter", .. call]);
            Assert.Equal(2, refused.ExitCode);
            Assert.Single(refused.Errors.Trim().Split('\n'));
            Assert.DoesNotContain("Exception", refused.Errors);
        }

        Assert.False(Directory.Exists(Path.Combine(_folder, "mistyped")));
    }

    [Fact]
    public async Task A_copy_of_an_older_build_stays_while_a_kernelspec_starts_it()
    {
        var (program, root) = (Path.Combine(_folder, "program"), Path.Combine(_folder, "ahead"));
        Directory.CreateDirectory(program);
        var spec = new KernelSpec(Path.Combine(_folder, "jupyter"));

        var first = await BuildAsync("1");
        spec.Write(new Jupyter.Client.KernelCommand("dotnet", ["exec", Path.Combine(first.Folder, "SunLessons.App.dll"), "kernel", "{connection_file}"]));
        first.KeepFor(spec.File);
        var second = await BuildAsync("1 and 2");
        Assert.True(first.IsReady);

        // Nothing starts the second, and after the removal nothing starts the first.
        spec.Remove();
        var third = await BuildAsync("1, 2 and 3");
        Assert.True(third.IsReady);
        Assert.False(Directory.Exists(first.Folder));
        Assert.False(Directory.Exists(second.Folder));

        async Task<AheadCopy> BuildAsync(string content)
        {
            // A part that the kernel does not refer to: it is copied as it is, so no compiler is called.
            await File.WriteAllTextAsync(Path.Combine(program, "Other.dll"), content);
            var copy = AheadCopy.Of(program, root, "no compiler is called");
            Assert.True(await copy.MakeAsync(gently: false), copy.Problem);
            return copy;
        }
    }

    [Fact]
    public async Task A_program_packed_with_its_copy_uses_it_on_the_system_it_is_for_and_no_other()
    {
        foreach (var (system, used) in new[] { ("another-system", false), (AheadCopy.SystemName, true) })
        {
            var packed = Path.Combine(_folder, "program", "packed", system);
            Directory.CreateDirectory(packed);
            await File.WriteAllTextAsync(Path.Combine(packed, "ready"), "");
            var copy = AheadCopy.Of(Path.Combine(_folder, "program"), Path.Combine(_folder, "ahead"), null);
            Assert.Equal(used, copy.IsReady);
            Assert.Equal(used, copy.Folder == packed);
            Assert.Equal(used, await copy.MakeAsync(gently: false));
            if (used)
            {
                // What came with the program may not be written to: it belongs to whoever installed it.
                copy.KeepFor("a kernel.json");
            }

            Assert.Equal(["ready"], Directory.EnumerateFiles(packed).Select(Path.GetFileName));
        }
    }

    [Theory]
    [InlineData("Microsoft.CodeAnalysis.dll")]
    [InlineData("Microsoft.CodeAnalysis.CSharp.dll")]
    public void The_program_as_built_has_the_compiler_of_cells_as_machine_code_and_knows_what_it_was_made_from(string assembly)
    {
        // On a system for which restore brings no compiler to machine code, the assemblies are as their packages have them.
        var folder = Path.GetDirectoryName(Support.Program.Assembly)!;
        var expected = File.Exists(Path.Combine(folder, "ahead-compiler.txt"));
        Assert.Equal(expected, IsImage(Path.Combine(folder, assembly)));
        if (expected)
        {
            var original = Assert.Single(File.ReadAllLines(Path.Combine(folder, "ahead-originals.txt")), path => Path.GetFileName(path) == assembly);
            Assert.False(IsImage(original));
        }

        static bool IsImage(string path)
        {
            using var image = new System.Reflection.PortableExecutable.PEReader(File.OpenRead(path));
            return image.PEHeaders.CorHeader is { ManagedNativeHeaderDirectory.Size: > 0 };
        }
    }
}
