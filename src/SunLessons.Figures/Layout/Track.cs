namespace SunLessons.Figures.Layout;

/// <summary>The points of a series in drawing units, y downwards; a gap is not a number.</summary>
internal readonly record struct Track(double[] X, double[] Y)
{
    public bool HasPoint(int i) => double.IsFinite(X[i]) && double.IsFinite(Y[i]);

    public (double X, double Y)[] Points()
    {
        var points = new (double X, double Y)[X.Length];
        for (var i = 0; i < points.Length; i++)
        {
            points[i] = (X[i], Y[i]);
        }

        return points;
    }
}
