using System.Text.Json.Nodes;
using System.Text.RegularExpressions;

namespace SunLessons.Kernel.Tests;

/// <summary>The kernel seen by Jupyter's own programs.</summary>
public sealed class JupyterTests
{
    // jupyter_kernel_test 0.4.5 has twelve tests (kernel.md counts them so too); a test of the suite that skips itself is not "ok".
    private const int TestsOfTheSuite = 12;

    [Fact]
    [Trait("needs", "jupyter")]
    public async Task Jupyters_own_kernel_test_suite_passes_whole()
    {
        var (code, _, report) = await JupyterTools.RunAsync("suite.py");
        Assert.True(code == 0, report);
        Assert.Equal(TestsOfTheSuite, Regex.Count(report, @"\.\.\. ok\s*$", RegexOptions.Multiline));
        Assert.DoesNotContain("skipped", report);
    }

    [Fact]
    [Trait("needs", "jupyter")]
    public async Task Nbclient_runs_a_notebook()
    {
        var (code, output, errors) = await JupyterTools.RunAsync("run_notebook.py");
        Assert.True(code == 0, errors);
        var cells = JsonNode.Parse(output)!.AsArray();
        Assert.Equal("60", (string)cells[0]![0]!["data"]!["text/plain"]!);
        Assert.Equal(["stdout", "stderr"], cells[1]!.AsArray().Select(o => (string)o!["name"]!));
        Assert.Equal("<p>4 hours</p>", (string)cells[2]![0]!["data"]!["text/html"]!);
    }
}
