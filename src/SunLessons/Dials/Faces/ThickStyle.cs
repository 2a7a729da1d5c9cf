using System.Globalization;

namespace SunLessons.Dials.Faces;

/// <summary>
/// A style of some thickness: a bar of even width whose flat top lies along the Earth's axis, its sides square to the plate. Immutable.
/// </summary>
/// <remarks>
/// Of its two upper edges one throws the outline that is read. While the Sun lights the top, it is the edge on the shadow's side; when the Sun has sunk behind
/// the top (more than 6 hours from the substyle's hour), the other. So the hour lines start from two centres a thickness apart, and the scale has a gap at the
/// substyle's hour, noon on a level dial: the noon gap. Checked by ray tracing the bar in the tests.
/// </remarks>
public sealed class ThickStyle
{
    private readonly FaceLayout _layout;

    private ThickStyle(FaceLayout layout, double width)
    {
        _layout = layout;
        Width = width;
    }

    /// <summary>The bar's width, and so the gap's, in nodus heights.</summary>
    public double Width { get; }

    /// <summary>
    /// The local apparent time at which the gap lies, 12 on a level dial; null on a face parallel to the equator, where a style has no top edge to cast by.
    /// </summary>
    public DialTime? GapAt => _layout.Substyle is Substyle.Stands substyle ? DialTime.FromHourAngle(substyle.DifferenceOfLongitude) : null;

    /// <summary>Puts a bar on a face.</summary>
    /// <param name="layout">The face at its latitude.</param>
    /// <param name="width">The bar's width in nodus heights, 0 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">A width below 0 or not a number.</exception>
    public static ThickStyle On(FaceLayout layout, double width)
    {
        ArgumentNullException.ThrowIfNull(layout);
        return width >= 0.0 && double.IsFinite(width)
            ? new ThickStyle(layout, width)
            : throw new ArgumentOutOfRangeException(
                nameof(width), $"Style width {width.ToString("0.###", CultureInfo.InvariantCulture)} nodus heights is below 0; give 0 or more, such as 0.05.");
    }

    /// <summary>
    /// The line or lines for a local apparent time: two at the gap itself, a width apart, one for each edge; else one.
    /// </summary>
    public IReadOnlyList<FaceHourLine> LinesFor(DialTime time)
    {
        var line = _layout.LineFor(time);
        if (_layout.Substyle is not Substyle.Stands substyle)
        {
            return [new FaceHourLine.None("A bar that stands square on its face throws a shadow as wide as itself; read the middle of it.")];
        }

        var h0 = substyle.DifferenceOfLongitude.Angle;
        var h = time.HourAngle.Angle - h0;
        var lit = h.Sin * h.Cos;

        // At the substyle's hour (and 12 hours from it) both edges serve. Six hours from it the two lines are one. Rounding: 1e-12 radians.
        if (Math.Abs(h.Sin) < 1e-12)
        {
            return [Shifted(line, h0, +0.5 * Width), Shifted(line, h0, -0.5 * Width)];
        }

        return [Shifted(line, h0, lit <= 0.0 ? 0.5 * Width : -0.5 * Width)];
    }

    /// <summary>A line moved across the substyle towards the side where the Sun goes (from which shadows come), in nodus heights.</summary>
    private FaceHourLine Shifted(FaceHourLine line, Angle substyleHour, double by)
    {
        // The direction of growing hour angle at the substyle's hour lies in the plate, square to the substyle.
        var sky = _layout.Sky;
        var right = substyleHour.Cos * sky.West.X - substyleHour.Sin * sky.Meridian.X;
        var up = substyleHour.Cos * sky.West.Y - substyleHour.Sin * sky.Meridian.Y;
        FacePoint Move(FacePoint p) => new(p.Right + by * right, p.Up + by * up);
        return line switch
        {
            FaceHourLine.FromCentre centre => centre with { Centre = Move(centre.Centre) },
            FaceHourLine.BesideStyle beside => beside with { Through = Move(beside.Through), RightOfStyle = beside.RightOfStyle - by },
            _ => line,
        };
    }
}
