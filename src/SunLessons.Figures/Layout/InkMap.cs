namespace SunLessons.Figures.Layout;

/// <summary>
/// Points of what is drawn, sorted into squares, so that words that look for room ask only the squares under them: a fan of 24 lines has thousands of points,
/// and each of its words tries 24 places. In plain lists of numbers, each square a chain through them, because it fills anew for each drawing.
/// </summary>
internal sealed class InkMap
{
    private const double Side = 16;
    private readonly int _columns;
    private readonly int _rows;
    private readonly int[] _first;
    private double[] _x = new double[1024];
    private double[] _y = new double[1024];
    private int[] _next = new int[1024];

    // Number 0 ends a chain, so points count from 1.
    private int _last;

    /// <param name="width">The width of the drawing; points beyond its edges belong to the squares at the edge.</param>
    /// <param name="height">Its height.</param>
    public InkMap(double width, double height)
    {
        _columns = Math.Max(1, (int)Math.Ceiling(width / Side));
        _rows = Math.Max(1, (int)Math.Ceiling(height / Side));
        _first = new int[_columns * _rows];
    }

    public void Add(double x, double y) => AddAlong(x, y, 0, 0, 0, 1);

    /// <summary>Adds points of a straight line.</summary>
    /// <param name="x">Where it begins.</param>
    /// <param name="y">Where it begins.</param>
    /// <param name="dx">How far it goes.</param>
    /// <param name="dy">How far it goes.</param>
    /// <param name="from">The first point to add, counted from 0.</param>
    /// <param name="steps">Into how many equal steps it is cut; the end is not added.</param>
    public void AddAlong(double x, double y, double dx, double dy, int from, int steps)
    {
        Reserve(steps - from);
        var (xs, ys, next, first) = (_x, _y, _next, _first);
        var (columns, lastColumn, lastRow) = (_columns, _columns - 1, _rows - 1);
        var last = _last;
        for (var k = from; k < steps; k++)
        {
            var px = x + dx * k / steps;
            var py = y + dy * k / steps;
            var column = px / Side;
            var row = py / Side;
            var square = (row > 0 ? row < lastRow ? (int)row : lastRow : 0) * columns + (column > 0 ? column < lastColumn ? (int)column : lastColumn : 0);
            last++;
            xs[last] = px;
            ys[last] = py;
            next[last] = first[square];
            first[square] = last;
        }

        _last = last;
    }

    /// <summary>How many points lie in a box, its edges included.</summary>
    /// <param name="box">The box.</param>
    /// <param name="enough">Where counting may stop, for so many are as bad as more.</param>
    public int Count(in Box box, double enough)
    {
        var (left, top, right, bottom) = (box.Left, box.Top, box.Right, box.Bottom);
        var (fromColumn, toColumn, toRow) = (Square(left, _columns), Square(right, _columns), Square(bottom, _rows));
        var (xs, ys, next) = (_x, _y, _next);
        var count = 0;
        for (var row = Square(top, _rows); row <= toRow; row++)
        {
            for (var column = fromColumn; column <= toColumn; column++)
            {
                for (var i = _first[row * _columns + column]; i > 0; i = next[i])
                {
                    var (x, y) = (xs[i], ys[i]);
                    if (x >= left && x <= right && y >= top && y <= bottom)
                    {
                        count++;
                    }
                }
            }

            if (count >= enough)
            {
                return count;
            }
        }

        return count;
    }

    private static int Square(double at, int squares) => (int)Math.Clamp(at / Side, 0, squares - 1);

    private void Reserve(int more)
    {
        if (_last + more >= _x.Length)
        {
            var length = Math.Max(_x.Length * 2, _last + more + 1);
            Array.Resize(ref _x, length);
            Array.Resize(ref _y, length);
            Array.Resize(ref _next, length);
        }
    }
}
