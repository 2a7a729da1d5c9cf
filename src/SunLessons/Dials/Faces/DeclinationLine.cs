namespace SunLessons.Dials.Faces;

/// <summary>The line that the shadow of the nodus draws on a face while the Sun keeps one declination: the date line of that day.</summary>
/// <param name="Declination">The Sun's declination.</param>
/// <param name="Kind">Which conic the line is a part of.</param>
/// <param name="Strokes">
/// Its lit parts in the order of the day, each a chain of points; empty where the face is dark all day or the shadow falls farther off than asked.
/// </param>
public sealed record DeclinationLine(SolarDeclination Declination, ConicKind Kind, IReadOnlyList<IReadOnlyList<DeclinationPoint>> Strokes)
{
    // Declinations and style heights are told apart to a billionth of a degree: rounding only.
    private const double SameDegrees = 1e-9;

    /// <summary>Draws the line.</summary>
    /// <param name="layout">The face at its latitude.</param>
    /// <param name="declination">The Sun's declination.</param>
    /// <param name="everyMinutes">The step between points, minutes of hour angle, above 0.</param>
    /// <param name="reach">How far from the foot of the nodus points are wanted, in nodus heights, above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">A step or reach that is not above 0.</exception>
    public static DeclinationLine Of(FaceLayout layout, SolarDeclination declination, double everyMinutes = 5.0, double reach = 20.0)
    {
        ArgumentNullException.ThrowIfNull(layout);
        if (!(everyMinutes > 0.0) || !(reach > 0.0))
        {
            throw new ArgumentOutOfRangeException(
                nameof(everyMinutes), $"Step {everyMinutes} minutes and reach {reach} nodus heights must both be above 0; give such as 5 minutes and 20 heights.");
        }

        var strokes = new List<IReadOnlyList<DeclinationPoint>>();
        foreach (var (from, hours) in Lit(layout, declination))
        {
            var steps = Math.Max(2, (int)Math.Ceiling(hours * 60.0 / everyMinutes));
            var stroke = new List<DeclinationPoint>();
            for (var i = 0; i <= steps; i++)
            {
                var hourAngle = HourAngle.FromDegrees(from + 15.0 * hours * i / steps);
                if (layout.ShadowOfNodus(hourAngle, declination) is NodusShadow.At at && at.Point.DistanceTo(default) <= reach)
                {
                    stroke.Add(new DeclinationPoint(hourAngle, declination, at.Point));
                }
                else if (stroke.Count > 0)
                {
                    strokes.Add(stroke);
                    stroke = [];
                }
            }

            if (stroke.Count > 0)
            {
                strokes.Add(stroke);
            }
        }

        return new DeclinationLine(declination, KindOf(layout, declination), strokes);
    }

    /// <summary>Which conic a declination line is a part of, whether or not the Sun is up on that part.</summary>
    public static ConicKind KindOf(FaceLayout layout, SolarDeclination declination)
    {
        ArgumentNullException.ThrowIfNull(layout);
        var height = Math.Abs(layout.StyleHeight.Degrees);
        var d = declination.Degrees;
        if (Math.Abs(d) < SameDegrees)
        {
            return height > 90.0 - SameDegrees ? ConicKind.Nothing : ConicKind.StraightLine;
        }

        // The rays through the nodus make a cone about the axis, half angle 90° − |d|; the plate stands at the style height to the axis.
        var over = Math.Abs(d) + height - 90.0;
        if (over < -SameDegrees)
        {
            return ConicKind.Hyperbola;
        }

        // Steeper than the cone, the plate cuts one half of it only: that of the Suns on the pole's side that stands over the face.
        if (d > 0.0 != layout.StyleHeight.Degrees > 0.0)
        {
            return ConicKind.Nothing;
        }

        return over <= SameDegrees && height < 90.0 - SameDegrees ? ConicKind.Parabola : height > 90.0 - SameDegrees ? ConicKind.Circle : ConicKind.Ellipse;
    }

    private static IEnumerable<(double FromDegrees, double Hours)> Lit(FaceLayout layout, SolarDeclination declination) =>
        LitHours.On(layout.Face, layout.Latitude, declination) switch
        {
            LitToday.AllDay => [(-180.0, 24.0)],
            LitToday.During during => during.Spans.Select(span => (span.From.Degrees, span.Hours)),
            _ => [],
        };
}
