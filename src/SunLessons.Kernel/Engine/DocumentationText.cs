using System.Text;
using System.Text.RegularExpressions;
using System.Xml;
using System.Xml.Linq;

namespace SunLessons.Kernel.Engine;

/// <summary>XML documentation as plain text: summary, parameters, what is returned, remarks.</summary>
internal static partial class DocumentationText
{
    public static string From(string? xml)
    {
        if (string.IsNullOrWhiteSpace(xml))
        {
            return "";
        }

        XElement root;
        try
        {
            // A symbol's documentation comes as one element or as bare parts.
            root = XElement.Parse($"<doc>{xml}</doc>");
        }
        catch (XmlException)
        {
            return "";
        }

        var text = new StringBuilder();
        Line(text, "", root.Descendants("summary").FirstOrDefault());
        foreach (var parameter in root.Descendants("param"))
        {
            Line(text, $"{(string?)parameter.Attribute("name")}: ", parameter);
        }

        Line(text, "Returns: ", root.Descendants("returns").FirstOrDefault());
        Line(text, "", root.Descendants("remarks").FirstOrDefault());
        foreach (var error in root.Descendants("exception"))
        {
            Line(text, $"Throws {Short((string?)error.Attribute("cref"))}: ", error);
        }

        return text.ToString().TrimEnd();
    }

    private static void Line(StringBuilder text, string label, XElement? element)
    {
        if (element is null)
        {
            return;
        }

        var words = new StringBuilder();
        Words(words, element);
        var flat = Spaces().Replace(words.ToString(), " ").Trim();
        if (flat.Length > 0)
        {
            text.Append(label).Append(flat).Append('\n');
        }
    }

    private static void Words(StringBuilder words, XElement element)
    {
        foreach (var node in element.Nodes())
        {
            switch (node)
            {
                case XText piece:
                    words.Append(piece.Value);
                    break;
                case XElement inner when inner.Attribute("cref") is { } reference && inner.IsEmpty:
                    words.Append(Short(reference.Value));
                    break;
                case XElement inner when (inner.Attribute("name") ?? inner.Attribute("langword")) is { } name && inner.IsEmpty:
                    words.Append(name.Value);
                    break;
                case XElement inner:
                    Words(words, inner);
                    words.Append(inner.Name.LocalName is "para" or "item" or "description" ? " " : "");
                    break;
            }
        }
    }

    private static string Short(string? reference)
    {
        var name = reference ?? "";
        var open = name.IndexOf('(');
        name = open >= 0 ? name[..open] : name;
        name = name.Length > 2 && name[1] == ':' ? name[2..] : name;
        return name[(name.LastIndexOf('.') + 1)..];
    }

    [GeneratedRegex(@"\s+")]
    private static partial Regex Spaces();
}
