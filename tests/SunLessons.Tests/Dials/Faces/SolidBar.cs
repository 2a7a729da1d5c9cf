namespace SunLessons.Tests.Dials.Faces;

/// <summary>
/// A bar of even width on a plate, its flat top along the Earth's axis at height 1 over the foot of the nodus: corner lines in world axes, rays cut with the
/// plate. Shares no code with the library.
/// </summary>
internal sealed class SolidBar
{
    private readonly double[] _right;
    private readonly double[] _up;
    private readonly double[] _normal;
    private readonly List<double[]> _corners = [];

    public SolidBar(double latitude, double inclination, double declination, double width)
    {
        double i = inclination * Math.PI / 180, looks = (180 + declination) * Math.PI / 180, f = latitude * Math.PI / 180;
        _normal = [Math.Sin(i) * Math.Sin(looks), Math.Sin(i) * Math.Cos(looks), Math.Cos(i)];
        _right = [-Math.Cos(looks), Math.Sin(looks), 0];
        _up = Cross(_normal, _right);
        double[] pole = [0, Math.Cos(f), Math.Sin(f)];
        var height = Dot(pole, _normal);
        var side = Cross(pole, _normal);
        var size = Math.Sqrt(Dot(side, side));

        // Points of the axis from the plate (or from one side of the foot on a polar face) to beyond the nodus.
        foreach (var part in Math.Abs(height) < 1e-9 ? new[] { -1.0, 1.0 } : [-1 / height, 1 / height])
        {
            foreach (var half in new[] { -0.5, 0.5 })
            {
                double[] top = [.. _normal.Select((n, k) => n + part * pole[k] + half * width * side[k] / size)];
                var over = Dot(top, _normal);
                _corners.Add(top);
                _corners.Add([.. top.Select((t, k) => t - over * _normal[k])]);
            }
        }
    }

    /// <summary>How far the shadow reaches on the plate in a direction (right, up).</summary>
    public double Reach(double[] sun, double right, double up) => _corners.Max(corner =>
    {
        var k = Dot(corner, _normal) / Dot(sun, _normal);
        double[] hit = [.. corner.Select((c, j) => c - k * sun[j])];
        return right * Dot(hit, _right) + up * Dot(hit, _up);
    });

    private static double[] Cross(double[] a, double[] b) =>
        [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];

    private static double Dot(double[] a, double[] b) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}
