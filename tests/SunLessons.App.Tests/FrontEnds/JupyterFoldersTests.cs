using System.Text.Json;
using SunLessons.App.Ahead;

namespace SunLessons.App.Tests.FrontEnds;

/// <summary>Where we put a kernelspec, against where Jupyter's own packages (Debian: python3-jupyter-core, python3-jupyter-client) look.</summary>
public sealed class JupyterFoldersTests(JupyterHome home) : IClassFixture<JupyterHome>
{
    [Fact]
    [Trait("needs", "jupyter")]
    public async Task The_users_folder_is_the_one_that_jupyter_core_names()
    {
        var asked = await Tool.RunAsync(Tool.Python, [Tool.Script("data_folders.py")]);
        Assert.True(asked.ExitCode == 0, asked.Errors);
        var cases = JsonSerializer.Deserialize<FolderCase[]>(asked.Output, JsonSerializerOptions.Web)!;
        Assert.Equal(10, cases.Length);
        foreach (var one in cases)
        {
            var system = Enum.Parse<JupyterSystem>(one.System);
            var ours = JupyterFolders.OfUser(system, one.Home, name => one.Variables.GetValueOrDefault(name));
            Assert.Equal(Path.GetFullPath(one.Folder), Path.GetFullPath(ours));
        }
    }

    [Fact]
    [Trait("needs", "jupyter")]
    public async Task Jupyter_finds_the_kernel_that_was_added()
    {
        var asked = await Tool.RunAsync(Tool.Python, ["-c", "import json; from jupyter_client.kernelspec import KernelSpecManager as M; s = M().get_kernel_spec('sunlessons'); print(json.dumps(s.to_dict()))"], home.Environment);
        Assert.True(asked.ExitCode == 0, asked.Errors);
        using var spec = JsonDocument.Parse(asked.Output);
        Assert.Equal("message", spec.RootElement.GetProperty("interrupt_mode").GetString());
        Assert.Equal("SunLessons (C#)", spec.RootElement.GetProperty("display_name").GetString());
    }

    private sealed record FolderCase(string System, string Home, Dictionary<string, string> Variables, string Folder);
}
