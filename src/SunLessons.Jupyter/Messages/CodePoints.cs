namespace SunLessons.Jupyter.Messages;

/// <summary>
/// The protocol counts cursor places in code points (messaging 5.2 and later); .NET and editors count UTF-16 units, in which a
/// character beyond U+FFFF counts twice. A place inside such a pair counts as the place before it.
/// </summary>
public static class CodePoints
{
    /// <summary>From UTF-16 units to code points.</summary>
    /// <param name="text">The text.</param>
    /// <param name="utf16">The place, from 0; beyond the end counts as the end.</param>
    public static int FromUtf16(string text, int utf16)
    {
        var end = Math.Clamp(utf16, 0, text.Length);
        var points = 0;
        for (var i = 0; i < end; i++)
        {
            if (i + 1 < text.Length && char.IsSurrogatePair(text[i], text[i + 1]))
            {
                if (i + 1 == end)
                {
                    break;
                }

                i++;
            }

            points++;
        }

        return points;
    }

    /// <summary>From code points to UTF-16 units.</summary>
    /// <param name="text">The text.</param>
    /// <param name="points">The place, from 0; beyond the end counts as the end.</param>
    public static int ToUtf16(string text, int points)
    {
        var at = 0;
        for (var left = points; left > 0 && at < text.Length; left--)
        {
            at += at + 1 < text.Length && char.IsSurrogatePair(text[at], text[at + 1]) ? 2 : 1;
        }

        return at;
    }
}
