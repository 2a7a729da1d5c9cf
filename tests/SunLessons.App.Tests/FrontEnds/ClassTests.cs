using System.Diagnostics;
using System.Security.Cryptography;
using System.Text.Json;
using SunLessons.App.Tests.Support;

namespace SunLessons.App.Tests.FrontEnds;

/// <summary>A class: JupyterHub (Debian: jupyterhub, node-configurable-http-proxy) on loopback, with our kernelspec and two users at once.</summary>
public sealed class ClassTests(JupyterHome home) : IClassFixture<JupyterHome>
{
    [Fact]
    [Trait("needs", "jupyter")]
    [Trait("needs", "hub")]
    public async Task Two_users_run_a_lesson_at_once_and_apart()
    {
        var folder = Path.Combine(home.Folder, "hub");
        foreach (var user in new[] { "amal", "binta" })
        {
            Directory.CreateDirectory(Path.Combine(folder, "homes", user));
        }

        var ports = Loopback.FreePorts(3);
        var token = Convert.ToHexString(RandomNumberGenerator.GetBytes(16));
        var environment = new Dictionary<string, string>(home.Environment)
        {
            ["HUB_FOLDER"] = folder,
            ["HUB_PORTS"] = string.Join(' ', ports),
            ["HUB_TOKEN"] = token,
        };
        using var hub = Tool.Start(Tool.Python, ["-m", "jupyterhub", "-f", Tool.Script("jupyterhub_config.py")], environment, folder);
        try
        {
            var output = hub.StandardOutput.ReadToEndAsync();
            var errors = hub.StandardError.ReadToEndAsync();
            var root = $"http://127.0.0.1:{ports[0]}/";
            await Loopback.WaitForAsync(root + "hub/api", () => hub.HasExited, async () => hub.HasExited ? await errors + await output : "it is still starting");
            var ran = await Tool.RunAsync(Tool.Python, [Tool.Script("run_class.py"), root, token, RepositoryFiles.Path("lessons", "06-your-own-noon", "lesson.ipynb")], home.Environment);
            Assert.True(ran.ExitCode == 0, ran.Errors);
            var told = JsonSerializer.Deserialize<Told>(ran.Output, new JsonSerializerOptions { PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower })!;
            Assert.True(told.Cells > 0);
            Assert.Equal(2, told.Pupils.Length);
            foreach (var pupil in told.Pupils)
            {
                Assert.Empty(pupil.Failed);
                Assert.True(pupil.Shown > 0, $"{pupil.User} was shown nothing.");
                Assert.True(pupil.SeesOwn, $"{pupil.User} lost a value of their own.");
                Assert.False(pupil.SeesTheirs, $"{pupil.User} sees a value of the other.");
                Assert.Equal(1, pupil.Kernels);
                Assert.False(pupil.EntersTheirs, $"{pupil.User} gets into the other's server.");
            }
        }
        finally
        {
            await StopAsync(hub);
        }
    }

    /// <summary>First the users' servers, which stand in sessions of their own, by the tree below the hub; then the hub.</summary>
    private static async Task StopAsync(Process hub)
    {
        if (!hub.HasExited)
        {
            hub.Kill(entireProcessTree: true);
            await hub.WaitForExitAsync();
        }
    }

    private sealed record Told(int Cells, Pupil[] Pupils);

    private sealed record Pupil(string User, string[] Failed, int Shown, bool SeesOwn, bool SeesTheirs, int Kernels, bool EntersTheirs);
}
