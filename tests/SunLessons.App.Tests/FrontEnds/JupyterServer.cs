using System.Diagnostics;
using System.Security.Cryptography;
using System.Text;

namespace SunLessons.App.Tests.FrontEnds;

/// <summary>Debian's jupyter-server on loopback, which finds our kernel by its kernelspec and serves the page beside its own files.</summary>
internal sealed class JupyterServer : IAsyncDisposable
{
    private readonly Process _process;
    private readonly StringBuilder _said = new();

    private JupyterServer(Process process, int port, string token)
    {
        _process = process;
        Root = new Uri($"http://127.0.0.1:{port}/");
        Token = token;
        DataReceivedEventHandler keep = (_, line) =>
        {
            lock (_said)
            {
                _said.AppendLine(line.Data);
            }
        };
        process.OutputDataReceived += keep;
        process.ErrorDataReceived += keep;
        process.BeginOutputReadLine();
        process.BeginErrorReadLine();
    }

    public Uri Root { get; }

    public string Token { get; }

    /// <param name="home">Where it keeps what is its own.</param>
    /// <param name="served">A folder whose files it serves below /static/.</param>
    public static async Task<JupyterServer> StartAsync(JupyterHome home, string served)
    {
        var port = Loopback.FreePorts(1)[0];
        var token = Convert.ToHexString(RandomNumberGenerator.GetBytes(16));
        var notebooks = Directory.CreateDirectory(Path.Combine(home.Folder, "notebooks")).FullName;
        var process = Tool.Start(
            Tool.Python,
            [
                "-m", "jupyter_server", "--ServerApp.ip=127.0.0.1", $"--ServerApp.port={port}", "--ServerApp.port_retries=0", $"--ServerApp.token={token}",
                "--ServerApp.open_browser=False", $"--ServerApp.root_dir={notebooks}", $"--ServerApp.extra_static_paths=['{served.Replace('\\', '/')}']",
                "--ServerApp.allow_root=True",
            ],
            home.Environment);
        var server = new JupyterServer(process, port, token);
        await Loopback.WaitForAsync(server.Root + "api", () => process.HasExited, () => Task.FromResult(server.Said));
        return server;
    }

    private string Said
    {
        get
        {
            lock (_said)
            {
                return _said.ToString();
            }
        }
    }

    public async ValueTask DisposeAsync()
    {
        if (!_process.HasExited)
        {
            _process.Kill(entireProcessTree: true);
            await _process.WaitForExitAsync();
        }

        _process.Dispose();
    }
}
