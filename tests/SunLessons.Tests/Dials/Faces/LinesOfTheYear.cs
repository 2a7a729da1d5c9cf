using SunLessons.Dials;
using SunLessons.Dials.Faces;

namespace SunLessons.Tests.Dials.Faces;

public class LinesOfTheYear
{
    [Fact]
    public void Lit_stretches_agree_with_looking_at_the_Sun_every_ten_minutes()
    {
        var random = new Random(20260921);
        int all = 0, never = 0, one = 0, two = 0;
        for (var i = 0; i < 1500; i++)
        {
            double Between(double low, double high) => low + (high - low) * random.NextDouble();
            var latitude = random.Next(10) == 0 ? 90.0 * (random.Next(3) - 1) : Between(-90, 90);
            double inclination = Between(0, 180), declination = Between(-180, 180), d = Between(-23.44, 23.44);
            var face = Face.FromDegrees(inclination, declination);
            var lit = LitHours.On(face, Latitude.FromDegrees(latitude), SolarDeclination.FromDegrees(d));
            switch (lit)
            {
                case LitToday.AllDay: all++; break;
                case LitToday.Never: never++; break;
                case LitToday.During { Spans.Count: 1 }: one++; break;
                case LitToday.During { Spans.Count: 2 }: two++; break;
            }

            // The normal by hand, the Sun carried round the pole.
            double looks = (180 + declination) * Math.PI / 180, lean = inclination * Math.PI / 180;
            double[] normal = [Math.Sin(lean) * Math.Sin(looks), Math.Sin(lean) * Math.Cos(looks), Math.Cos(lean)];
            for (var h = -179.9; h < 180; h += 2.5)
            {
                var sun = SolidFace.Sun(latitude, d, h);
                var onFace = sun[0] * normal[0] + sun[1] * normal[1] + sun[2] * normal[2];
                if (Math.Min(Math.Abs(onFace), Math.Abs(sun[2])) < 1e-9)
                {
                    continue; // On the edge, either answer is right.
                }

                var expected = sun[2] > 0 && onFace > 0;
                var got = lit is LitToday.AllDay || (lit is LitToday.During during && during.Spans.Any(span => span.Holds(HourAngle.FromDegrees(h))));
                Assert.True(expected == got, $"latitude {latitude}, {face}, d {d}, H {h}: {expected}");
                if (expected)
                {
                    var use = Assert.IsType<LineUse.Between>(LitHours.Of(face, Latitude.FromDegrees(latitude), DialTime.FromHourAngle(HourAngle.FromDegrees(h))));
                    Assert.InRange(d, use.Least.Degrees - 1e-9, use.Greatest.Degrees + 1e-9);
                }
            }
        }

        Assert.True(all > 3 && never > 100 && one > 500 && two > 50, $"{all} all day, {never} never, {one} once, {two} twice");
    }

    [Fact]
    public void A_northern_wall_in_a_northern_June_is_lit_morning_and_evening()
    {
        var lit = Assert.IsType<LitToday.During>(LitHours.On(Face.VerticalNorth, Latitude.FromDegrees(42.24), SolarDeclination.FromDegrees(23.44)));
        Assert.Equal(2, lit.Spans.Count);

        // Worked out apart: sunrise at cos H = -tan 42.24 tan 23.44, due east at cos H = tan 23.44 / tan 42.24.
        Assert.Equal(-113.1841, lit.Spans[0].From.Degrees, 1e-3);
        Assert.Equal(-61.4785, lit.Spans[0].To.Degrees, 1e-3);
        Assert.Equal(61.4785, lit.Spans[1].From.Degrees, 1e-3);
        var winter = Assert.IsType<LitToday.Never>(LitHours.On(Face.VerticalNorth, Latitude.FromDegrees(42.24), SolarDeclination.FromDegrees(-23.44)));
        Assert.Equal(NoReading.SunBehindPlate, winter.Why);
        Assert.IsType<LineUse.Never>(LitHours.Of(Face.VerticalNorth, Latitude.FromDegrees(42.24), DialTime.FromHours(12)));
        Assert.IsType<LitToday.AllDay>(LitHours.On(Face.Horizontal, Latitude.FromDegrees(69.65), SolarDeclination.FromDegrees(23.44)));
        Assert.Equal(
            NoReading.SunBelowHorizon,
            Assert.IsType<LitToday.Never>(LitHours.On(Face.Horizontal, Latitude.FromDegrees(69.65), SolarDeclination.FromDegrees(-23.44))).Why);
    }

    [Fact]
    public void Through_a_year_both_equatorial_faces_share_the_seasons()
    {
        var place = GeoPoint.FromDegrees(-45.87, 170.5);
        var upper = LitHours.ThroughYear(Face.EquatorialUpper(place.Latitude), place, 2026);
        var lower = LitHours.ThroughYear(Face.EquatorialLower(place.Latitude), place, 2026);
        Assert.Equal(365, upper.Count);
        for (var i = 0; i < 365; i++)
        {
            // In the south the upper face looks to the south pole: lit from September to March.
            Assert.Equal(upper[i].Declination.Degrees < 0, upper[i].Lit is LitToday.During);
            Assert.Equal(upper[i].Declination.Degrees > 0, lower[i].Lit is LitToday.During);
        }
    }

    [Fact]
    public void Declination_lines_are_the_conics_that_they_say()
    {
        var seen = new HashSet<ConicKind>();
        foreach (var latitude in new[] { 42.24, -12.46, 69.65, 90.0, 75.0 })
        {
            var place = Latitude.FromDegrees(latitude);
            foreach (var face in new[] { Face.Horizontal, Face.VerticalSouth, Face.VerticalNorth, Face.FromDegrees(35, 50), Face.EquatorialUpper(place), Face.Polar(place) })
            {
                foreach (var d in new[] { -23.44, -15.0, 0.0, 15.0, 23.44 })
                {
                    var layout = FaceLayout.Of(face, place);
                    var line = DeclinationLine.Of(layout, SolarDeclination.FromDegrees(d), 4.0, 12.0);
                    var points = line.Strokes.SelectMany(stroke => stroke).Select(point => point.Point).ToList();
                    if (line.Kind == ConicKind.Nothing)
                    {
                        Assert.Empty(points);
                    }

                    if (points.Count < 30)
                    {
                        continue;
                    }

                    seen.Add(line.Kind);
                    Assert.Equal(Discriminant(points), line.Kind);
                }
            }
        }

        Assert.Superset(new HashSet<ConicKind> { ConicKind.StraightLine, ConicKind.Hyperbola, ConicKind.Ellipse, ConicKind.Circle, ConicKind.Parabola }, seen);
    }

    [Theory]
    [InlineData("level", 0.0, 0.0, 42.24)]
    [InlineData("south-west wall", 90.0, 35.0, 42.24)]
    [InlineData("leaning", 40.0, -60.0, -33.0)]
    public void Hours_from_sunrise_and_sunset_have_straight_lines_and_unequal_hours_nearly(string name, double inclination, double declination, double latitude)
    {
        var layout = FaceLayout.Of(Face.FromDegrees(inclination, declination), Latitude.FromDegrees(latitude));
        var lines = 0;
        foreach (var count in new[] { HorizonHours.SinceSunrise, HorizonHours.SinceSunset, HorizonHours.Unequal })
        {
            for (var hour = 1; hour < (count == HorizonHours.Unequal ? 12 : 24); hour++)
            {
                var points = HorizonHourLine.Of(layout, count, hour, 49, 8.0).Points;
                if (points.Count < 5)
                {
                    continue;
                }

                var bend = Bend([.. points.Select(point => point.Point)]);
                Assert.True(count == HorizonHours.Unequal ? bend < 0.1 : bend < 1e-9, $"{name} {count} {hour}: {bend} nodus heights from straight");
                lines++;
                foreach (var point in points)
                {
                    Assert.Equal(hour, HorizonHour.HoursCounted(count, point.HourAngle, layout.Latitude, point.Declination)!.Value, 9);
                }
            }
        }

        Assert.True(lines > 15, $"{lines}");
    }

    [Fact]
    public void Where_the_Sun_does_not_set_no_hours_are_counted_from_the_horizon()
    {
        var none = Assert.IsType<HorizonHour.None>(
            HorizonHour.Of(HorizonHours.Unequal, 3, Latitude.FromDegrees(69.65), SolarDeclination.FromDegrees(23.44)));
        Assert.Equal("The Sun neither rises nor sets that day, so no hours can be counted from the horizon; choose another date.", none.Sentence);
        var refused = Assert.Throws<ArgumentOutOfRangeException>(
            () => HorizonHour.Of(HorizonHours.Unequal, 13, Latitude.FromDegrees(42), SolarDeclination.FromDegrees(0)));
        Assert.StartsWith("Hour 13 is outside 0 to 12; equal hours run from 0 to 24 and unequal ones from 0 to 12.", refused.Message);
    }

    [Theory]
    [InlineData("level, north", 0.0, 0.0, 42.24)]
    [InlineData("level, south", 0.0, 0.0, -45.87)]
    [InlineData("southern wall", 90.0, 0.0, 51.5)]
    [InlineData("declining wall", 90.0, -32.5, 51.5)]
    [InlineData("leaning", 35.0, 50.0, 42.24)]
    [InlineData("west wall", 90.0, 90.0, 42.24)]
    public void The_lines_of_a_thick_style_are_the_outline_of_the_solid_bars_shadow(string name, double inclination, double declination, double latitude)
    {
        const double Width = 0.3;
        var face = Face.FromDegrees(inclination, declination);
        var layout = FaceLayout.Of(face, Latitude.FromDegrees(latitude));
        var substyle = Assert.IsType<Substyle.Stands>(layout.Substyle);
        var style = ThickStyle.On(layout, Width);
        Assert.Equal(DialTime.FromHourAngle(substyle.DifferenceOfLongitude).Hours, style.GapAt!.Value.Hours, 9);
        var compared = 0;
        for (var h = -178.7; h < 180; h += 4.1)
        {
            foreach (var d in new[] { -23.44, 5.0, 23.44 })
            {
                if (layout.ShadowOfNodus(HourAngle.FromDegrees(h), SolarDeclination.FromDegrees(d)) is not NodusShadow.At)
                {
                    continue;
                }

                var (point, along) = Assert.Single(style.LinesFor(DialTime.FromHourAngle(HourAngle.FromDegrees(h)))) switch
                {
                    FaceHourLine.FromCentre line => (line.Centre, line.Clockwise),
                    FaceHourLine.BesideStyle line => (line.Through, line.Clockwise),
                    _ => throw new InvalidOperationException(),
                };

                // Square to the line, on the side away from the bar's foot, which lies along the substyle; along a polar face the side of the shadow.
                var (qx, qy) = (along.Cos, -along.Sin);
                var away = qx * substyle.Clockwise.Sin + qy * substyle.Clockwise.Cos;
                if (layout.Centre is null)
                {
                    away = -(point.Right * qx + point.Up * qy);
                }

                if (away > 0)
                {
                    (qx, qy) = (-qx, -qy);
                }

                var bar = new SolidBar(latitude, inclination, declination, Width);
                var outline = bar.Reach(SolidFace.Sun(latitude, d, h), qx, qy);

                // 1e-7 of the reach: rounding, magnified where the Sun grazes the plate.
                Assert.Equal(qx * point.Right + qy * point.Up, outline, 1e-7 * (1 + Math.Abs(outline)));
                compared++;
            }
        }

        Assert.True(compared > 60, $"{name}: {compared}");
        var gap = style.LinesFor(style.GapAt.Value);
        Assert.Equal(2, gap.Count);
        FacePoint Start(FaceHourLine line) => line is FaceHourLine.FromCentre c ? c.Centre : ((FaceHourLine.BesideStyle)line).Through;
        Assert.Equal(Width, Start(gap[0]).DistanceTo(Start(gap[1])), 9);
    }

    /// <summary>Least squares free: a conic through five spread points decides by its discriminant; all points must then lie on it.</summary>
    private static ConicKind Discriminant(IReadOnlyList<FacePoint> points)
    {
        if (Bend(points) < 1e-9)
        {
            return ConicKind.StraightLine;
        }

        // a x² + b xy + c y² + d x + e y = 1 fitted by normal equations to all points, scaled by their reach; shifted off the origin first.
        var scale = points.Max(p => p.DistanceTo(default));
        var matrix = MathNet.Numerics.LinearAlgebra.Matrix<double>.Build.Dense(points.Count, 6, (i, j) =>
        {
            double x = points[i].Right / scale, y = points[i].Up / scale;
            return j switch { 0 => x * x, 1 => x * y, 2 => y * y, 3 => x, 4 => y, _ => 1 };
        });
        var svd = matrix.Svd();
        var conic = svd.VT.Row(5);
        Assert.True(svd.S[5] < 1e-9 * svd.S[0], $"no conic: {svd.S[5]} of {svd.S[0]}"); // Rounding only.
        double a = conic[0], b = conic[1], c = conic[2];
        var size = a * a + b * b + c * c;
        var discriminant = (b * b - 4 * a * c) / size;

        // 1e-5: rounding of the fit; the nearest hyperbola or ellipse of the cases drawn is a hundred times farther from a parabola.
        return Math.Abs(discriminant) < 1e-5 ? ConicKind.Parabola
            : discriminant > 0 ? ConicKind.Hyperbola
            : (a - c) * (a - c) + b * b < 1e-10 * size ? ConicKind.Circle
            : ConicKind.Ellipse;
    }

    private static double Bend(IReadOnlyList<FacePoint> points)
    {
        var (a, b) = (points[0], points[^1]);
        var length = a.DistanceTo(b);
        return length == 0 ? double.PositiveInfinity : points.Max(p => Math.Abs((p.Right - a.Right) * (b.Up - a.Up) - (p.Up - a.Up) * (b.Right - a.Right)) / length);
    }
}
