using NetMQ;
using NetMQ.Sockets;

namespace SunLessons.Jupyter.Server;

/// <summary>
/// The five sockets of a kernel over NetMQ, bound to the connection file's loopback address. All sockets live on one poller
/// thread and are touched by no other; what other threads send passes through one queue, so its order is kept.
/// </summary>
/// <param name="connection">Address and ports.</param>
public sealed class SocketTransport(ConnectionFile connection) : IServerTransport
{
    private readonly RouterSocket _shell = new();
    private readonly RouterSocket _control = new();
    private readonly RouterSocket _stdin = new();
    private readonly PublisherSocket _ioPub = new();
    private readonly ResponseSocket _heartbeat = new();
    private readonly NetMQQueue<(KernelChannel Channel, List<byte[]> Frames)> _outgoing = new();
    private NetMQPoller? _poller;
    private bool _disposed;

    /// <inheritdoc/>
    /// <exception cref="IOException">A port is taken; the message names it.</exception>
    public void Start(Action<KernelChannel, IReadOnlyList<byte[]>> received)
    {
        // Without this an output channel drops what goes beyond 1000 waiting messages; the kernel caps output itself, and says so.
        _ioPub.Options.SendHighWatermark = 0;
        Bind(_shell, KernelChannel.Shell);
        Bind(_control, KernelChannel.Control);
        Bind(_ioPub, KernelChannel.IoPub);
        Bind(_stdin, KernelChannel.Stdin);
        Bind(_heartbeat, KernelChannel.Heartbeat);

        _shell.ReceiveReady += (_, _) => Take(_shell, KernelChannel.Shell, received);
        _control.ReceiveReady += (_, _) => Take(_control, KernelChannel.Control, received);
        _stdin.ReceiveReady += (_, _) => Take(_stdin, KernelChannel.Stdin, received);
        _heartbeat.ReceiveReady += (_, _) =>
        {
            var beat = _heartbeat.ReceiveMultipartBytes();
            _heartbeat.SendMultipartBytes(beat);
        };
        _outgoing.ReceiveReady += (_, _) => SendWaiting();

        _poller = new NetMQPoller { _control, _shell, _stdin, _heartbeat, _ioPub, _outgoing };
        _poller.RunAsync("kernel sockets");
    }

    /// <inheritdoc/>
    public void Send(KernelChannel channel, List<byte[]> frames)
    {
        if (!_disposed)
        {
            _outgoing.Enqueue((channel, frames));
        }
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        if (_disposed)
        {
            return;
        }

        // The last replies (to a shutdown request) are still in the queue: give the poller a moment to hand them to the sockets,
        // and the sockets a moment to hand them to the network.
        for (var waited = 0; waited < 50 && _outgoing.Count > 0; waited++)
        {
            Thread.Sleep(10);
        }

        _disposed = true;
        foreach (var socket in new NetMQSocket[] { _shell, _control, _stdin, _ioPub, _heartbeat })
        {
            socket.Options.Linger = TimeSpan.FromMilliseconds(500);
        }

        _poller?.Stop();
        _poller?.Dispose();
        foreach (var socket in new NetMQSocket[] { _shell, _control, _stdin, _ioPub, _heartbeat })
        {
            socket.Dispose();
        }

        _outgoing.Dispose();
    }

    private static void Take(RouterSocket socket, KernelChannel channel, Action<KernelChannel, IReadOnlyList<byte[]>> received)
    {
        // Several at a time, but not without end: outgoing messages must get their turn too.
        for (var taken = 0; taken < 100; taken++)
        {
            List<byte[]>? frames = [];
            if (!socket.TryReceiveMultipartBytes(ref frames!))
            {
                return;
            }

            received(channel, frames!);
        }
    }

    private void Bind(NetMQSocket socket, KernelChannel channel)
    {
        var endpoint = connection.Endpoint(channel);
        try
        {
            socket.Bind(endpoint);
        }
        catch (NetMQException e)
        {
            throw new IOException($"The kernel cannot listen on {endpoint} ({e.Message}). Another program holds the port: start the kernel again to get other ports.", e);
        }
    }

    private void SendWaiting()
    {
        for (var sent = 0; sent < 200 && _outgoing.TryDequeue(out var next, TimeSpan.Zero); sent++)
        {
            NetMQSocket socket = next.Channel switch
            {
                KernelChannel.Shell => _shell,
                KernelChannel.Control => _control,
                KernelChannel.Stdin => _stdin,
                _ => _ioPub,
            };
            // A router drops what goes to a client that has left; that is what the protocol wants.
            socket.TrySendMultipartBytes(TimeSpan.Zero, next.Frames);
        }
    }
}
