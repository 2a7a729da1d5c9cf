namespace SunLessons.Figures.Layout;

/// <summary>
/// Points of what is drawn, sorted into squares, so that words that look for room ask only the squares under them: a fan of 24 lines has thousands of points,
/// and each of its words tries 24 places.
/// </summary>
/// <param name="width">The width of the drawing; points beyond its edges belong to the squares at the edge.</param>
/// <param name="height">Its height.</param>
internal sealed class InkMap(double width, double height)
{
    private const double Side = 16;
    private readonly int _columns = Math.Max(1, (int)Math.Ceiling(width / Side));
    private readonly int _rows = Math.Max(1, (int)Math.Ceiling(height / Side));
    private List<(double X, double Y)>?[]? _squares;

    public void Add(double x, double y)
    {
        _squares ??= new List<(double X, double Y)>?[_columns * _rows];
        (_squares[Row(y) * _columns + Column(x)] ??= []).Add((x, y));
    }

    /// <summary>How many points lie in a box, its edges included.</summary>
    public int Count(Box box)
    {
        if (_squares is null)
        {
            return 0;
        }

        var (left, right, bottom) = (Column(box.Left), Column(box.Right), Row(box.Bottom));
        var count = 0;
        for (var row = Row(box.Top); row <= bottom; row++)
        {
            for (var column = left; column <= right; column++)
            {
                if (_squares[row * _columns + column] is not { } points)
                {
                    continue;
                }

                foreach (var (x, y) in points)
                {
                    if (x >= box.Left && x <= box.Right && y >= box.Top && y <= box.Bottom)
                    {
                        count++;
                    }
                }
            }
        }

        return count;
    }

    private int Column(double x) => (int)Math.Clamp(x / Side, 0, _columns - 1);

    private int Row(double y) => (int)Math.Clamp(y / Side, 0, _rows - 1);
}
