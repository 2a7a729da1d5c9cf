using System.Diagnostics;
using System.Net.WebSockets;
using System.Text;
using System.Text.Json.Nodes;

namespace SunLessons.Publishing.Tests.Browser;

/// <summary>
/// Headless Firefox with a new profile, driven by WebDriver BiDi (W3C working draft): the few commands that these tests need. Files count as strangers to
/// each other, as they do for every user; tools for tests usually switch that off.
/// </summary>
internal sealed class Firefox : IAsyncDisposable
{
    private readonly string _profile;
    private readonly Process _process;
    private readonly ClientWebSocket _socket = new();
    private string _context = "";
    private int _commands;

    private Firefox(string profile, Process process) => (_profile, _process) = (profile, process);

    public static async Task<Firefox> OpenAsync()
    {
        var profile = Directory.CreateTempSubdirectory("sunlessons-firefox-").FullName;
        await File.WriteAllTextAsync(Path.Combine(profile, "user.js"), """
            user_pref("security.fileuri.strict_origin_policy", true);
            user_pref("network.dns.disabled", true);
            user_pref("datareporting.policy.dataSubmissionEnabled", false);
            user_pref("app.update.enabled", false);
            """);
        var start = new ProcessStartInfo(Executable()) { RedirectStandardError = true, RedirectStandardOutput = true };
        foreach (var word in (string[])["--headless", "--no-remote", "--profile", profile, "--remote-debugging-port", "0"])
        {
            start.ArgumentList.Add(word);
        }

        var firefox = new Firefox(profile, Process.Start(start)!);
        await firefox.ConnectAsync();
        return firefox;
    }

    public async Task GoAsync(Uri address) => await CommandAsync("browsingContext.navigate", new JsonObject { ["context"] = _context, ["url"] = address.ToString(), ["wait"] = "complete" });

    /// <summary>What an expression of JavaScript gives in the page, as text.</summary>
    public async Task<string> EvaluateAsync(string expression)
    {
        var answer = await CommandAsync("script.evaluate", new JsonObject
        {
            ["expression"] = $"String({expression})",
            ["target"] = new JsonObject { ["context"] = _context },
            ["awaitPromise"] = true,
        });
        return (string?)answer["result"]?["value"] ?? throw new InvalidOperationException(answer.ToJsonString());
    }

    /// <summary>Waits until an expression is true.</summary>
    public async Task WaitAsync(string condition, int seconds = 90)
    {
        var patience = Stopwatch.StartNew();
        while (await EvaluateAsync(condition) != "true")
        {
            Assert.True(patience.Elapsed.TotalSeconds < seconds, $"Firefox waited {seconds} s for: {condition}");
            await Task.Delay(100);
        }
    }

    public async ValueTask DisposeAsync()
    {
        _socket.Dispose();
        _process.Kill(entireProcessTree: true);
        await _process.WaitForExitAsync();
        _process.Dispose();
        Directory.Delete(_profile, recursive: true);
    }

    private static string Executable() =>
        new[] { "/usr/bin/firefox-esr", "/usr/bin/firefox" }.FirstOrDefault(File.Exists)
        ?? throw new InvalidOperationException("No Firefox was found; install Debian's package firefox-esr, or run tests/run --fast.");

    private async Task ConnectAsync()
    {
        const string announced = "WebDriver BiDi listening on ";
        string? line;
        do
        {
            line = await _process.StandardError.ReadLineAsync() ?? throw new InvalidOperationException("Firefox ended before it could be driven.");
        }
        while (!line.StartsWith(announced, StringComparison.Ordinal));

        // Whatever else it has to say must not fill the pipe.
        _ = _process.StandardError.ReadToEndAsync();
        _ = _process.StandardOutput.ReadToEndAsync();
        await _socket.ConnectAsync(new Uri(line[announced.Length..].Trim() + "/session"), CancellationToken.None);
        await CommandAsync("session.new", new JsonObject { ["capabilities"] = new JsonObject() });
        _context = (string)(await CommandAsync("browsingContext.getTree", []))["contexts"]![0]!["context"]!;
    }

    private async Task<JsonObject> CommandAsync(string method, JsonObject parameters)
    {
        var id = ++_commands;
        var text = new JsonObject { ["id"] = id, ["method"] = method, ["params"] = parameters }.ToJsonString();
        await _socket.SendAsync(Encoding.UTF8.GetBytes(text), WebSocketMessageType.Text, endOfMessage: true, CancellationToken.None);
        while (true)
        {
            var message = JsonNode.Parse(await ReadAsync())!.AsObject();
            if ((int?)message["id"] == id)
            {
                return message["result"]?.AsObject() ?? throw new InvalidOperationException(message.ToJsonString());
            }
        }
    }

    private async Task<string> ReadAsync()
    {
        using var whole = new MemoryStream();
        var buffer = new byte[16_384];
        WebSocketReceiveResult part;
        do
        {
            part = await _socket.ReceiveAsync(buffer, CancellationToken.None);
            whole.Write(buffer, 0, part.Count);
        }
        while (!part.EndOfMessage);

        return Encoding.UTF8.GetString(whole.ToArray());
    }
}
