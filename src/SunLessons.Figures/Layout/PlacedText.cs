namespace SunLessons.Figures.Layout;

/// <summary>A text with its place: the lines, where the first line's middle stands, and how the lines are anchored.</summary>
/// <param name="Lines">The words, line by line.</param>
/// <param name="X">Where the lines are anchored.</param>
/// <param name="Y">The middle of the whole block.</param>
/// <param name="Anchor"><c>start</c>, <c>middle</c> or <c>end</c>.</param>
/// <param name="Ink">Its colour.</param>
/// <param name="FromX">Where its thread begins (the point it belongs to).</param>
/// <param name="FromY">Where its thread begins.</param>
/// <param name="InMargin">Whether it stands in the margin on the right, outside the frame.</param>
internal sealed record PlacedText(IReadOnlyList<string> Lines, double X, double Y, string Anchor, Ink Ink, double FromX, double FromY, bool InMargin)
{
    /// <summary>The ground that the words take.</summary>
    /// <param name="width">The width of the widest line, measured once for all places that a text tries.</param>
    /// <param name="lineHeight">The height of a line.</param>
    public Box Box(double width, double lineHeight) => BoxAt(X, Y, Anchor, width, Lines.Count * lineHeight);

    /// <summary>The ground of words of a width and height at a place.</summary>
    public static Box BoxAt(double x, double y, string anchor, double width, double height)
    {
        var left = anchor switch { "middle" => x - width / 2, "end" => x - width, _ => x };
        return Layout.Box.At(left, y - height / 2, width, height);
    }
}
