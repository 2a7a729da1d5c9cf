using System.Security.Cryptography;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace SunLessons.Jupyter.Messages;

/// <summary>
/// Turns messages into signed frames and back (Jupyter messaging 5.4, "The Wire Protocol"): identities, the delimiter
/// &lt;IDS|MSG&gt;, the signature in hexadecimal, header, parent header, metadata, content, buffers. The signature is
/// HMAC-SHA256 over the four JSON frames as they were sent; it is compared in a time that does not depend on its value.
/// </summary>
public sealed class MessageFrames
{
    private static readonly byte[] Delimiter = "<IDS|MSG>"u8.ToArray();

    // Messages travel over loopback and are read by JSON parsers only: escaping for web pages would only make them longer.
    private static readonly JsonWriterOptions Writing = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    private readonly byte[] _key;

    /// <summary>Frames signed with a key.</summary>
    /// <param name="key">The key as it stands in the connection file; empty means that messages carry no signature.</param>
    public MessageFrames(string key) => _key = Encoding.UTF8.GetBytes(key);

    /// <summary>The frames of a message.</summary>
    /// <param name="message">The message.</param>
    public List<byte[]> Encode(KernelMessage message)
    {
        var header = Utf8(message.Header);
        var parent = Utf8(message.ParentHeader);
        var metadata = Utf8(message.Metadata);
        var content = Utf8(message.Content);
        return
        [
            .. message.Identities,
            Delimiter,
            Sign(header, parent, metadata, content),
            header,
            parent,
            metadata,
            content,
            .. message.Buffers,
        ];
    }

    /// <summary>Reads frames; false, with the reason in one sentence, when they are no message of ours or the signature is wrong.</summary>
    /// <param name="frames">What came.</param>
    /// <param name="message">The message.</param>
    /// <param name="reason">Why it was refused; it quotes nothing of the message.</param>
    public bool TryDecode(IReadOnlyList<byte[]> frames, out KernelMessage message, out string reason)
    {
        message = null!;
        var at = 0;
        while (at < frames.Count && !frames[at].AsSpan().SequenceEqual(Delimiter))
        {
            at++;
        }

        if (frames.Count < at + 6)
        {
            reason = $"A message of {frames.Count} frames was dropped: delimiter, signature and four parts are needed.";
            return false;
        }

        var expected = Sign(frames[at + 2], frames[at + 3], frames[at + 4], frames[at + 5]);
        if (!CryptographicOperations.FixedTimeEquals(expected, frames[at + 1]))
        {
            reason = "A message with a wrong signature was dropped: its key is not the one of this kernel's connection file.";
            return false;
        }

        try
        {
            message = new KernelMessage(
                [.. frames.Take(at)],
                Parse(frames[at + 2]),
                Parse(frames[at + 3]),
                Parse(frames[at + 4]),
                Parse(frames[at + 5]),
                [.. frames.Skip(at + 6)]);
            reason = "";
            return true;
        }
        catch (JsonException)
        {
            reason = "A message was dropped: one of its four parts is no JSON object.";
            return false;
        }
    }

    private static byte[] Utf8(JsonObject part)
    {
        using var buffer = new MemoryStream();
        using (var writer = new Utf8JsonWriter(buffer, Writing))
        {
            part.WriteTo(writer);
        }

        return buffer.ToArray();
    }

    private static JsonObject Parse(byte[] utf8)
    {
        var part = JsonNode.Parse(utf8) as JsonObject ?? throw new JsonException("no object");
        // A parsed object makes its table on the first look, which is not safe from two threads; headers are read by several.
        _ = part.Count;
        return part;
    }

    private byte[] Sign(byte[] header, byte[] parent, byte[] metadata, byte[] content)
    {
        if (_key.Length == 0)
        {
            return [];
        }

        using var hash = IncrementalHash.CreateHMAC(HashAlgorithmName.SHA256, _key);
        hash.AppendData(header);
        hash.AppendData(parent);
        hash.AppendData(metadata);
        hash.AppendData(content);
        return Encoding.ASCII.GetBytes(Convert.ToHexStringLower(hash.GetHashAndReset()));
    }
}
