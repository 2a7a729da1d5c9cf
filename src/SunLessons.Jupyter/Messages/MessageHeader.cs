using System.Globalization;
using System.Text.Json.Nodes;

namespace SunLessons.Jupyter.Messages;

/// <summary>Makes message headers: identifier, session, type, date, protocol version (Jupyter messaging 5.4, "Message header").</summary>
/// <param name="user">Name of the user; only written, never trusted.</param>
public sealed class MessageHeaders(string user)
{
    /// <summary>The protocol version that our messages carry.</summary>
    public const string ProtocolVersion = "5.4";

    /// <summary>One identifier for all messages of one process and connection.</summary>
    public string Session { get; } = Guid.NewGuid().ToString("N");

    /// <summary>A header for a new message.</summary>
    /// <param name="messageType">The message's type, as "execute_request".</param>
    public JsonObject Create(string messageType) => new()
    {
        ["msg_id"] = Guid.NewGuid().ToString("N"),
        ["msg_type"] = messageType,
        ["username"] = user,
        ["session"] = Session,
        ["date"] = TimeProvider.System.GetUtcNow().ToString("yyyy-MM-dd'T'HH:mm:ss.ffffff'Z'", CultureInfo.InvariantCulture),
        ["version"] = ProtocolVersion,
    };
}
