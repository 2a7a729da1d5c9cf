namespace SunLessons.Figures.Layout;

/// <summary>A rectangle in drawing units, y downwards.</summary>
internal readonly record struct Box(double Left, double Top, double Right, double Bottom)
{
    public double Width => Right - Left;

    public double Height => Bottom - Top;

    public static Box At(double left, double top, double width, double height) => new(left, top, left + width, top + height);

    public bool Overlaps(Box other) => Left < other.Right && other.Left < Right && Top < other.Bottom && other.Top < Bottom;

    public bool Contains(double x, double y) => x >= Left && x <= Right && y >= Top && y <= Bottom;

    public bool Holds(Box other) => other.Left >= Left && other.Right <= Right && other.Top >= Top && other.Bottom <= Bottom;
}
