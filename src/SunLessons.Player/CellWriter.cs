using System.Text;
using System.Text.Json.Nodes;

namespace SunLessons.Player;

/// <summary>What a cell writes to the console, told to the page.</summary>
internal sealed class CellWriter(PageHost host, Action<string> tell) : StringWriter
{
    public override Encoding Encoding => Encoding.UTF8;

    public override void Write(char value) => Write(value.ToString());

    public override void Write(char[] buffer, int index, int count) => Write(new string(buffer, index, count));

    public override void Write(string? value)
    {
        if (!string.IsNullOrEmpty(value))
        {
            tell(new JsonObject { ["kind"] = "stream", ["cell"] = host.Cell, ["text"] = value }.ToJsonString());
        }
    }

    public override void WriteLine(string? value) => Write(value + "\n");
}
