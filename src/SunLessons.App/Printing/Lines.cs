using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;

namespace SunLessons.App.Printing;

/// <summary>Text for a terminal, at most 80 columns wide where words can be parted, always in the invariant culture.</summary>
internal sealed partial class Lines
{
    private const int Width = 80;

    // A label and its value stand in one line of a list; the explanation follows.
    private const int LabelWidth = 22;
    private const int ValueWidth = 12;

    private readonly StringBuilder _text = new();

    /// <summary>A paragraph, broken between words.</summary>
    public Lines Paragraph(FormattableString text) => Hanging("", Text(text));

    /// <summary>A paragraph, broken between words.</summary>
    public Lines Paragraph(string text) => Hanging("", text);

    /// <summary>A paragraph if there is one.</summary>
    public Lines Optional(string? text) => text is null ? this : Paragraph(text);

    /// <summary>A paragraph that begins after <paramref name="head"/> and hangs below its first word.</summary>
    public Lines Hanging(string head, string text)
    {
        Wrap(head, text, new string(' ', head.Length));
        return this;
    }

    /// <summary>A line as it is.</summary>
    public Lines Raw(FormattableString text)
    {
        _text.AppendLine(Text(text).TrimEnd());
        return this;
    }

    /// <summary>One line of a list: what it is, how much, and a word of explanation.</summary>
    public Lines Item(string label, string value, string explained = "")
    {
        var head = "  " + label.PadRight(LabelWidth) + value.PadLeft(ValueWidth);
        if (explained.Length == 0)
        {
            _text.AppendLine(head);
            return this;
        }

        return Hanging(head + "  ", explained);
    }

    /// <summary>An empty line.</summary>
    public Lines Gap()
    {
        _text.AppendLine();
        return this;
    }

    /// <summary>All lines, without an empty end.</summary>
    public override string ToString() => _text.ToString().TrimEnd();

    internal static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);

    private void Wrap(string head, string text, string hanging)
    {
        var line = new StringBuilder(head);
        var empty = true;
        foreach (var word in NumberAndUnit().Replace(text, "$1\u00A0$2").Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            if (!empty && line.Length + 1 + word.Length > Width)
            {
                _text.AppendLine(line.ToString());
                line.Clear().Append(hanging);
                empty = true;
            }

            line.Append(empty ? "" : " ").Append(word.Replace('\u00A0', ' '));
            empty = false;
        }

        _text.AppendLine(line.ToString());
    }

    // A number is not parted from its unit.
    [GeneratedRegex("([0-9°]) (s|min|m|nT|hPa|°C|UTC|degrees|N|S|E|W)\\b", RegexOptions.CultureInvariant)]
    private static partial Regex NumberAndUnit();
}
