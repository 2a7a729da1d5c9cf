using System.Net;
using System.Net.Sockets;
using System.Security.Cryptography;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace SunLessons.Jupyter;

/// <summary>
/// What a kernel and its client agree on before they talk: address, five ports, and the key that signs every message
/// (Jupyter client documentation, "Connection files"). Only loopback addresses are accepted, because whoever reaches these
/// ports with the key runs code on this machine.
/// </summary>
/// <param name="Address">A loopback address, as 127.0.0.1.</param>
/// <param name="ShellPort">Port of the shell channel: requests that are answered in order.</param>
/// <param name="IoPubPort">Port of the output channel, which every client hears.</param>
/// <param name="StdinPort">Port on which the kernel asks for a line of input.</param>
/// <param name="ControlPort">Port of the control channel: interrupt and shutdown, heard while a cell runs.</param>
/// <param name="HeartbeatPort">Port that echoes what it is sent.</param>
/// <param name="Key">Key of the signature, as text; empty means unsigned, which only another program's file may say.</param>
public sealed record ConnectionFile(string Address, int ShellPort, int IoPubPort, int StdinPort, int ControlPort, int HeartbeatPort, string Key)
{
    /// <summary>A new connection on 127.0.0.1 with five ports that were free a moment ago and a fresh key of 256 random bits.</summary>
    public static ConnectionFile CreateNew()
    {
        // All five listeners are open at the same time, so that the system cannot give the same port twice.
        var listeners = Enumerable.Range(0, 5).Select(_ => new TcpListener(IPAddress.Loopback, 0)).ToArray();
        try
        {
            foreach (var listener in listeners)
            {
                listener.Start();
            }

            var ports = listeners.Select(l => ((IPEndPoint)l.LocalEndpoint).Port).ToArray();
            var key = Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(32));
            return new ConnectionFile("127.0.0.1", ports[0], ports[1], ports[2], ports[3], ports[4], key);
        }
        finally
        {
            foreach (var listener in listeners)
            {
                listener.Dispose();
            }
        }
    }

    /// <summary>Reads a connection file.</summary>
    /// <param name="path">The file's path.</param>
    /// <exception cref="FormatException">The file is no connection file, or asks for something we refuse; the message is one sentence.</exception>
    /// <exception cref="IOException">The file cannot be read.</exception>
    public static ConnectionFile Read(string path) => Parse(File.ReadAllText(path), path);

    /// <summary>Reads a connection file's text.</summary>
    /// <param name="json">The text.</param>
    /// <param name="name">How error sentences call it.</param>
    /// <exception cref="FormatException">As for <see cref="Read"/>.</exception>
    public static ConnectionFile Parse(string json, string name)
    {
        JsonObject root;
        try
        {
            root = JsonNode.Parse(json) as JsonObject
                ?? throw new FormatException($"{name} is no connection file: it holds no JSON object. Let the program that starts the kernel write it.");
        }
        catch (JsonException e)
        {
            throw new FormatException($"{name} is no connection file: {e.Message} Let the program that starts the kernel write it.", e);
        }

        var transport = Text(root, "transport", name, "tcp");
        if (transport != "tcp")
        {
            throw new FormatException($"{name} asks for transport \"{transport}\"; only \"tcp\" on a loopback address is served. Write \"transport\": \"tcp\".");
        }

        var scheme = Text(root, "signature_scheme", name, "hmac-sha256");
        if (scheme != "hmac-sha256")
        {
            throw new FormatException($"{name} asks for signatures by \"{scheme}\"; only \"hmac-sha256\" is served. Write \"signature_scheme\": \"hmac-sha256\".");
        }

        var address = Text(root, "ip", name, "127.0.0.1");
        if (!IPAddress.TryParse(address, out var ip) || !IPAddress.IsLoopback(ip))
        {
            throw new FormatException($"{name} asks to listen on \"{address}\"; a kernel runs code for whoever reaches it, so only a loopback address is served. Write \"ip\": \"127.0.0.1\".");
        }

        return new ConnectionFile(
            address,
            Port(root, "shell_port", name),
            Port(root, "iopub_port", name),
            Port(root, "stdin_port", name),
            Port(root, "control_port", name),
            Port(root, "hb_port", name),
            Text(root, "key", name, ""));
    }

    /// <summary>The file's text.</summary>
    public string ToJson() => new JsonObject
    {
        ["transport"] = "tcp",
        ["ip"] = Address,
        ["shell_port"] = ShellPort,
        ["iopub_port"] = IoPubPort,
        ["stdin_port"] = StdinPort,
        ["control_port"] = ControlPort,
        ["hb_port"] = HeartbeatPort,
        ["key"] = Key,
        ["signature_scheme"] = "hmac-sha256",
        ["kernel_name"] = "sunlessons",
    }.ToJsonString(new JsonSerializerOptions { WriteIndented = true });

    /// <summary>Writes the file, readable by its owner alone, into <see cref="PrivateFiles.RuntimeFolder"/> and returns its path.</summary>
    public string WritePrivate()
    {
        var path = Path.Combine(PrivateFiles.RuntimeFolder(), $"kernel-{Guid.NewGuid():N}.json");
        PrivateFiles.WriteNew(path, ToJson());
        return path;
    }

    /// <summary>The endpoint of one channel, as "tcp://127.0.0.1:40123".</summary>
    /// <param name="channel">Which channel.</param>
    public string Endpoint(KernelChannel channel)
    {
        var port = channel switch
        {
            KernelChannel.Shell => ShellPort,
            KernelChannel.Control => ControlPort,
            KernelChannel.IoPub => IoPubPort,
            KernelChannel.Stdin => StdinPort,
            _ => HeartbeatPort,
        };
        return Address.Contains(':') ? $"tcp://[{Address}]:{port}" : $"tcp://{Address}:{port}";
    }

    private static string Text(JsonObject root, string name, string file, string whenAbsent) => root[name] switch
    {
        null => whenAbsent,
        JsonValue value when value.TryGetValue<string>(out var text) => text,
        var other => throw new FormatException($"{file} has {other.ToJsonString()} for \"{name}\"; a text in quotation marks is needed there."),
    };

    private static int Port(JsonObject root, string name, string file)
    {
        if (root[name] is JsonValue value && value.TryGetValue<int>(out var port) && port is >= 1 and <= 65535)
        {
            return port;
        }

        throw new FormatException($"{file} has {root[name]?.ToJsonString() ?? "nothing"} for \"{name}\"; a port from 1 to 65535 is needed. Let the program that starts the kernel choose it.");
    }
}
