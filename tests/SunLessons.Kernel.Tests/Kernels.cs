using SunLessons.Jupyter.Client;

namespace SunLessons.Kernel.Tests;

/// <summary>Starts kernels for tests.</summary>
internal static class Kernels
{
    public static KernelCommand Command { get; } =
        KernelCommand.DotNet(typeof(Kernels).Assembly.Location, "kernel-host", KernelCommand.ConnectionFile);

    public static Task<KernelProcess> StartAsync() => KernelProcess.StartAsync(Command);
}

/// <summary>What one run of a cell gave.</summary>
internal sealed record Ran(ExecuteReply Reply, IReadOnlyList<KernelOutput> Outputs)
{
    public string Stdout => string.Concat(Outputs.OfType<StreamOutput>().Where(o => o.Name == "stdout").Select(o => o.Text));

    public string Stderr => string.Concat(Outputs.OfType<StreamOutput>().Where(o => o.Name == "stderr").Select(o => o.Text));

    public string? Result => Outputs.OfType<ResultOutput>().SingleOrDefault()?.Data["text/plain"]?.GetValue<string>();

    public ErrorOutput? Error => Outputs.OfType<ErrorOutput>().SingleOrDefault();
}

internal static class ClientExtensions
{
    /// <summary>Runs a cell and gathers its outputs; waits for at most 30 s, so that a kernel that hangs is a failure and not a wait without end.</summary>
    public static async Task<Ran> RunAsync(this KernelClient client, string code, System.Text.Json.Nodes.JsonObject? metadata = null, System.Text.Json.Nodes.JsonObject? options = null)
    {
        var outputs = new List<KernelOutput>();
        using var patience = new CancellationTokenSource(TimeSpan.FromSeconds(30));
        var reply = await client.ExecuteAsync(code, metadata, outputs.Add, options, patience.Token);
        return new Ran(reply, outputs);
    }
}

/// <summary>One kernel process for the tests of a class.</summary>
public sealed class RunningKernel : IAsyncLifetime
{
    internal KernelProcess Process { get; private set; } = null!;

    internal KernelClient Client => Process.Client;

    public async ValueTask InitializeAsync() => Process = await Kernels.StartAsync();

    public ValueTask DisposeAsync() => Process.DisposeAsync();
}
