using SunLessons.Dials.Faces;

namespace SunLessons.Tests.Dials.Faces;

public class FaceFacts
{
    private static readonly Latitude Vigo = Latitude.FromDegrees(42.24);

    [Theory]
    [InlineData("level, north", 0, 0, 42.24, FaceKind.Horizontal, NumbersRun.Clockwise, 42.24)]
    [InlineData("level, south", 0, 0, -45.87, FaceKind.Horizontal, NumbersRun.Anticlockwise, -45.87)]
    [InlineData("southern wall, north", 90, 0, 42.24, FaceKind.VerticalDirect, NumbersRun.Anticlockwise, -47.76)]
    [InlineData("northern wall, north", 90, 180, 42.24, FaceKind.VerticalDirect, NumbersRun.Clockwise, 47.76)]
    [InlineData("northern wall, south", 90, 180, -45.87, FaceKind.VerticalDirect, NumbersRun.Clockwise, 44.13)]
    [InlineData("east wall", 90, -90, 42.24, FaceKind.Polar, NumbersRun.AcrossTheFace, 0)]
    [InlineData("declining wall", 90, 30, 42.24, FaceKind.VerticalDeclining, NumbersRun.Anticlockwise, -39.8776)]
    [InlineData("roof to the south", 20, 0, 42.24, FaceKind.Inclining, NumbersRun.Clockwise, 22.24)]
    [InlineData("roof to the west", 20, 90, 42.24, FaceKind.IncliningDeclining, NumbersRun.Clockwise, 39.1754)]
    [InlineData("ceiling", 180, 0, 42.24, FaceKind.Overhead, NumbersRun.Anticlockwise, -42.24)]
    [InlineData("level at the pole", 0, 0, 90, FaceKind.Equatorial, NumbersRun.Clockwise, 90)]
    [InlineData("wall at the pole", 90, 25, 90, FaceKind.Polar, NumbersRun.AcrossTheFace, 0)]
    [InlineData("southern wall at the equator", 90, 0, 0, FaceKind.Equatorial, NumbersRun.Anticlockwise, -90)]
    public void Kinds_of_faces_their_style_and_the_way_their_numbers_run(
        string name, double inclination, double declination, double latitude, FaceKind kind, NumbersRun numbers, double styleHeight)
    {
        var layout = FaceLayout.Of(Face.FromDegrees(inclination, declination), Latitude.FromDegrees(latitude));
        Assert.True(layout.Kind == kind, $"{name}: {layout.Kind}");
        Assert.Equal(numbers, layout.Numbers);

        // Common practice, no source: sin(style) = -cos(latitude) cos(declination) on walls, a roof to the west has sin(latitude) cos(slope); worked out apart to four decimals.
        Assert.Equal(styleHeight, layout.StyleHeight.Degrees, 5e-5);
    }

    [Theory]
    [InlineData(42.24)]
    [InlineData(-54.8)]
    public void Numbers_run_as_they_say(double latitude)
    {
        var checkedFaces = 0;
        for (var inclination = 0.0; inclination <= 180; inclination += 15)
        {
            for (var declination = -165.0; declination <= 180; declination += 15)
            {
                var layout = FaceLayout.Of(Face.FromDegrees(inclination, declination), Latitude.FromDegrees(latitude));
                for (var h = 0.0; h < 24; h++)
                {
                    var (here, next) = (layout.LineFor(DialTime.FromHours(h)), layout.LineFor(DialTime.FromHours(h + 1)));
                    if (here is FaceHourLine.FromCentre a && next is FaceHourLine.FromCentre b)
                    {
                        Assert.Equal(layout.Numbers == NumbersRun.Clockwise, (b.Clockwise - a.Clockwise).AroundZero().Degrees > 0);
                        checkedFaces++;
                    }
                    else if (here is FaceHourLine.BesideStyle c && next is FaceHourLine.BesideStyle d)
                    {
                        Assert.True(layout.Numbers == NumbersRun.AcrossTheFace && d.RightOfStyle > c.RightOfStyle);
                        checkedFaces++;
                    }
                }
            }
        }

        Assert.True(checkedFaces > 7000, $"{checkedFaces}");
    }

    [Fact]
    public void An_equatorial_face_has_even_hours_and_no_substyle()
    {
        foreach (var face in new[] { Face.EquatorialUpper(Vigo), Face.EquatorialLower(Vigo) })
        {
            var layout = FaceLayout.Of(face, Vigo);
            Assert.Equal(FaceKind.Equatorial, layout.Kind);
            var none = Assert.IsType<Substyle.None>(layout.Substyle);
            Assert.Equal("The style stands square on a face parallel to the equator; draw it at the centre and start from any hour line.", none.Sentence);
            for (var h = 0; h < 24; h++)
            {
                var step = Assert.IsType<FaceHourLine.FromCentre>(layout.LineFor(DialTime.FromHours(h + 1))).Clockwise
                    - Assert.IsType<FaceHourLine.FromCentre>(layout.LineFor(DialTime.FromHours(h))).Clockwise;
                Assert.Equal(layout.Numbers == NumbersRun.Clockwise ? 15.0 : -15.0, step.AroundZero().Degrees, 9);
            }
        }

        Assert.Equal(NumbersRun.Clockwise, FaceLayout.Of(Face.EquatorialUpper(Vigo), Vigo).Numbers);
        Assert.Equal(NumbersRun.Anticlockwise, FaceLayout.Of(Face.EquatorialLower(Vigo), Vigo).Numbers);
    }

    [Fact]
    public void A_direct_polar_face_has_its_hours_at_the_tangents_and_none_from_six_on()
    {
        foreach (var latitude in new[] { 42.24, -45.87, 0.0 })
        {
            var place = Latitude.FromDegrees(latitude);
            var layout = FaceLayout.Of(Face.Polar(place), place);
            Assert.Null(layout.Centre);
            for (var h = -5; h <= 5; h++)
            {
                // Common practice, no source: style height times tan(15 degrees x hours).
                var line = Assert.IsType<FaceHourLine.BesideStyle>(layout.LineFor(DialTime.FromHours(12 + h)));
                Assert.Equal(Math.Tan(h * Math.PI / 12), line.RightOfStyle, 9);
            }

            var none = Assert.IsType<FaceHourLine.None>(layout.LineFor(DialTime.FromHours(19)));
            Assert.Equal(
                "At 19:00.0 the Sun's hour plane never cuts this polar face in front of its style; choose an hour less than 6 from that of the substyle.",
                none.Sentence);
        }
    }

    [Fact]
    public void A_face_and_its_back_share_the_plane_and_turn_their_style_round()
    {
        var face = Face.FromDegrees(65, -40);
        Assert.Equal(-FaceLayout.Of(face, Vigo).StyleHeight.Degrees, FaceLayout.Of(face.Back, Vigo).StyleHeight.Degrees, 9);
        Assert.Equal(face.Declination.Degrees, face.Back.Back.Declination.Degrees, 9);
        Assert.Equal(face.Inclination.Degrees, face.Back.Back.Inclination.Degrees, 9);
    }

    [Fact]
    public void Longitude_built_in_turns_every_line_by_four_minutes_to_the_degree()
    {
        var layout = FaceLayout.Of(Face.VerticalSouth, Vigo);
        var zone = new HourNumbering.ZoneTime(Longitude.FromDegrees(-8.72), NodaTime.Offset.FromHours(1));
        Assert.Equal(-94.88, zone.LocalAheadMinutes, 9); // 4 x 8.72 + 60 by hand.
        var built = Assert.IsType<FaceHourLine.FromCentre>(layout.LineFor(DialTime.FromHours(15), zone));
        var apparent = Assert.IsType<FaceHourLine.FromCentre>(layout.LineFor(DialTime.FromHours(15 - 94.88 / 60)));
        Assert.Equal(apparent.Clockwise.Degrees, built.Clockwise.Degrees, 9);
    }

    [Fact]
    public void A_loop_runs_about_its_straight_line_by_the_equation_of_time()
    {
        var layout = FaceLayout.Of(Face.Horizontal, Vigo);
        var zone = new HourNumbering.ZoneTime(Longitude.FromDegrees(-8.72), NodaTime.Offset.FromHours(1));
        var loop = LoopedHourLine.Of(layout, zone, DialTime.FromHours(14), 2026);
        Assert.Equal(365, loop.Points.Count);
        var worst = 0.0;
        foreach (var point in loop.Points)
        {
            Assert.IsType<NodusShadow.At>(point.Shadow);
            var expected = zone.ApparentAt(DialTime.FromHours(14), point.EquationOfTime).HourAngle.Degrees;
            worst = Math.Max(worst, Math.Abs(point.HourAngle.Degrees - expected));
        }

        // 0.005 degrees: UT1 is within 0.9 s of the clock's UTC (0.004 degrees), 0.02 s for the Sun.
        Assert.True(worst <= 0.005, $"worst {worst} degrees");

        // Almanac extremes of the equation of time for this age: some -14.2 in February and +16.4 in November.
        Assert.InRange(loop.Points.Min(p => p.EquationOfTime.Minutes), -14.35, -14.1);
        Assert.InRange(loop.Points.Max(p => p.EquationOfTime.Minutes), 16.3, 16.55);
    }

    [Fact]
    public void Loops_of_twelve_years_lie_within_0_42_minutes()
    {
        var layout = FaceLayout.Of(Face.Horizontal, Vigo);
        var zone = new HourNumbering.ZoneTime(Longitude.FromDegrees(-8.72), NodaTime.Offset.FromHours(1));
        var spread = Enumerable.Range(2024, 12)
            .SelectMany(year => LoopedHourLine.Of(layout, zone, DialTime.FromHours(14), year).Points)
            .GroupBy(point => (point.Date.Month, point.Date.Day))
            .Max(date => date.Max(p => p.EquationOfTime.Minutes) - date.Min(p => p.EquationOfTime.Minutes));
        Assert.InRange(spread, 0.40, 0.42);
    }

    [Theory]
    [InlineData(-1.0)]
    [InlineData(181.0)]
    [InlineData(double.NaN)]
    public void An_inclination_out_of_range_is_refused_in_one_sentence(double degrees)
    {
        var refused = Assert.Throws<ArgumentOutOfRangeException>(() => PlateInclination.FromDegrees(degrees));
        Assert.StartsWith(
            FormattableString.Invariant($"Plate inclination {degrees} degrees is outside 0 to 180 degrees (0 level, 90 upright). For a plate that leans the other way turn its declination by 180 degrees."),
            refused.Message);
    }
}
