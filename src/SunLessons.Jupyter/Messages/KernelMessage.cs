using System.Text.Json.Nodes;

namespace SunLessons.Jupyter.Messages;

/// <summary>One message of the protocol: where it came from, four JSON parts, and binary buffers.</summary>
/// <param name="Identities">Routing frames in front of the delimiter; on the output channel the topic.</param>
/// <param name="Header">Identifier, type, session.</param>
/// <param name="ParentHeader">Header of the message that this one answers; empty when it answers none.</param>
/// <param name="Metadata">What is said about the message.</param>
/// <param name="Content">What is said.</param>
/// <param name="Buffers">Binary parts; usually none.</param>
public sealed record KernelMessage(
    IReadOnlyList<byte[]> Identities,
    JsonObject Header,
    JsonObject ParentHeader,
    JsonObject Metadata,
    JsonObject Content,
    IReadOnlyList<byte[]> Buffers)
{
    /// <summary>No frames.</summary>
    public static IReadOnlyList<byte[]> NoFrames { get; } = [];

    /// <summary>The message's type, as "execute_request"; empty when the header names none.</summary>
    public string Type => Header.Text("msg_type");

    /// <summary>The message's identifier; empty when the header names none.</summary>
    public string Id => Header.Text("msg_id");

    /// <summary>The identifier of the message that this one answers; empty when it answers none.</summary>
    public string ParentId => ParentHeader.Text("msg_id");
}
