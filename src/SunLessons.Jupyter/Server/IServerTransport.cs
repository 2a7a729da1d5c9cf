namespace SunLessons.Jupyter.Server;

/// <summary>What carries frames between a kernel and its clients: NetMQ sockets in earnest, lists in memory in a test.</summary>
public interface IServerTransport : IDisposable
{
    /// <summary>Opens the channels. From here on <paramref name="received"/> is called for everything that comes, on one thread.</summary>
    /// <param name="received">Takes the channel and the frames; must return quickly.</param>
    void Start(Action<KernelChannel, IReadOnlyList<byte[]>> received);

    /// <summary>Sends frames; may be called from any thread. Frames of one channel keep their order.</summary>
    /// <param name="channel">Shell, control, output or stdin.</param>
    /// <param name="frames">The frames.</param>
    void Send(KernelChannel channel, List<byte[]> frames);
}
