using SunLessons.Dials;
using SunLessons.Dials.Faces;

namespace SunLessons.Tests.Dials.Faces;

/// <summary>From a reading on any face back to the Sun's hour angle: all answers, and none where there is none.</summary>
public class FaceInverseFacts
{
    // The reading comes from a solid ray-traced in the world, which shares no code with the library.
    [Theory]
    [InlineData(Drawn.Any)]
    [InlineData(Drawn.Upright)]
    [InlineData(Drawn.Polar)]
    [InlineData(Drawn.Equatorial)]
    [InlineData(Drawn.LevelUpOrDown)]
    public void The_true_hour_is_among_the_answers_to_the_reading_of_a_ray_traced_solid(Drawn drawn)
    {
        var random = new Random(20261201);
        double Between(double low, double high) => low + (high - low) * random.NextDouble();
        int asked = 0, twice = 0;
        var worst = 0.0;
        while (asked < 400)
        {
            double madeFor = Between(-89, 89), place = Between(-85, 85), declination = Between(-23.4, 23.4), hour = Between(-179, 179);
            double twist = Between(-180, 180), east = Between(-50, 50), north = Between(-50, 50);
            var face = DrawnFaces.Of(drawn, random, Latitude.FromDegrees(madeFor));
            if (new SolidFace(madeFor, face.Inclination.Degrees, face.Declination.Degrees, twist, east, north).Hours(SolidFace.Sun(place, declination, hour)) is not { } traced)
            {
                continue;
            }

            var answers = FaceInverse.HourAngles(
                new FaceDial(face, Latitude.FromDegrees(madeFor)),
                DialStance.FromDegrees(twist, east, north),
                Latitude.FromDegrees(place),
                SolarDeclination.FromDegrees(declination),
                DialTime.FromHours(traced));
            Assert.NotEmpty(answers);
            worst = Math.Max(worst, answers.Min(a => Math.Abs(Math.IEEERemainder(a.Degrees - hour, 360.0) * 4.0)));
            twice += answers.Count == 2 ? 1 : 0;
            asked++;
        }

        // 1e-3 minutes: where the Sun's circle only just touches the plane of the reading, an error of 1e-15 becomes its square root.
        Assert.True(worst <= 1e-3, $"{drawn}: worst {worst} minutes");
        Assert.True(twice > 10, $"{drawn}: {twice} of {asked} readings fit twice");
    }

    // Every quarter of a degree of the day forwards: where the reading passes the time asked for, an answer must be; and each answer shows it.
    [Theory]
    [InlineData(Drawn.Any)]
    [InlineData(Drawn.Upright)]
    [InlineData(Drawn.Polar)]
    [InlineData(Drawn.Equatorial)]
    public void No_answer_is_missed_in_a_search_of_the_whole_day(Drawn drawn)
    {
        var random = new Random(5);
        double Between(double low, double high) => low + (high - low) * random.NextDouble();
        int passings = 0, none = 0;
        for (var i = 0; i < 300; i++)
        {
            var madeFor = Latitude.FromDegrees(Between(-80, 80));
            var dial = new FaceDial(DrawnFaces.Of(drawn, random, madeFor), madeFor) { StyleTooHighFraction = drawn == Drawn.Polar ? Between(-0.3, 0.5) : 0.0 };
            var stance = i % 2 == 0 ? DialStance.True : DialStance.FromDegrees(Between(-30, 30), Between(-20, 20), Between(-20, 20));
            var place = i % 2 == 0 ? madeFor : Latitude.FromDegrees(Between(-80, 80));
            var declination = SolarDeclination.FromDegrees(Between(-23.4, 23.4));
            var shown = DialTime.FromHours(Between(0, 24));
            var answers = FaceInverse.HourAngles(dial, stance, place, declination, shown);
            Assert.InRange(answers.Count, 0, 2);
            none += answers.Count == 0 ? 1 : 0;
            double? before = null;
            for (var h = -180.0; h <= 180.0; h += 0.25)
            {
                var off = FaceModel.Read(dial, stance, place, HourAngle.FromDegrees(h), declination) is FaceReading.Shows shows
                    ? (shows.Time.HourAngle.Angle - shown.HourAngle.Angle).AroundZero().Degrees
                    : (double?)null;

                // A jump of half a turn is midnight on the scale, not a passing.
                if (before * off < 0.0 && Math.Abs(before!.Value - off!.Value) < 90.0)
                {
                    passings++;
                    Assert.Contains(answers, a => a.Degrees >= h - 0.2501 && a.Degrees <= h + 0.0001);
                }

                before = off;
            }

            Assert.All(answers, a => Assert.Equal(
                0.0,
                (Assert.IsType<FaceReading.Shows>(FaceModel.Read(dial, stance, place, a, declination)).Time.HourAngle.Angle - shown.HourAngle.Angle).AroundZero().Degrees,
                1e-5));
        }

        Assert.True(passings > 30 && none > 30, $"{drawn}: {passings} passings, {none} without an answer");
    }

    [Fact]
    public void A_sound_wall_gives_the_reading_itself_once_while_it_is_lit_and_never_while_it_is_dark()
    {
        var vigo = Latitude.FromDegrees(42.24);
        var wall = new FaceDial(Face.FromDegrees(90, -32.5), vigo);
        var june = SolarDeclination.FromDegrees(23.44);
        Assert.Equal(-30.0, Assert.Single(FaceInverse.HourAngles(wall, DialStance.True, vigo, june, DialTime.FromHours(10))).Degrees, 1e-9);
        Assert.Empty(FaceInverse.HourAngles(wall, DialStance.True, vigo, june, DialTime.FromHours(19)));
        Assert.Empty(FaceInverse.HourAngles(wall, DialStance.True, vigo, june, DialTime.FromHours(2)));

        // A polar face has no line for six hours from its substyle; a style under the plate shows nothing.
        Assert.Empty(FaceInverse.HourAngles(new FaceDial(Face.Polar(vigo), vigo), DialStance.True, vigo, june, DialTime.FromHours(18)));
        Assert.Empty(FaceInverse.HourAngles(wall with { StyleTooSteep = Angle.FromDegrees(-80) }, DialStance.True, vigo, june, DialTime.FromHours(10)));
    }

    [Fact]
    public void Both_equatorial_faces_answer_in_their_own_half_of_the_year()
    {
        var vigo = Latitude.FromDegrees(42.24);
        foreach (var (face, declination, dark) in new[] { (Face.EquatorialUpper(vigo), 20.0, -20.0), (Face.EquatorialLower(vigo), -20.0, 20.0) })
        {
            var dial = new FaceDial(face, vigo);
            Assert.Equal(45.0, Assert.Single(FaceInverse.HourAngles(dial, DialStance.True, vigo, SolarDeclination.FromDegrees(declination), DialTime.FromHours(15))).Degrees, 1e-9);
            Assert.Empty(FaceInverse.HourAngles(dial, DialStance.True, vigo, SolarDeclination.FromDegrees(dark), DialTime.FromHours(15)));
        }
    }

    [Fact]
    public void A_style_too_steep_is_undone()
    {
        var place = Latitude.FromDegrees(-37);
        var dial = new FaceDial(Face.FromDegrees(60, 160), place) { StyleTooSteep = Angle.FromDegrees(6) };
        var declination = SolarDeclination.FromDegrees(-12);
        for (var h = -60.0; h <= 60.0; h += 7.5)
        {
            var shows = Assert.IsType<FaceReading.Shows>(FaceModel.Read(dial, DialStance.True, place, HourAngle.FromDegrees(h), declination));
            Assert.Contains(FaceInverse.HourAngles(dial, DialStance.True, place, declination, shows.Time), a => Math.Abs(a.Degrees - h) < 1e-6);
        }
    }

    [Fact]
    public void An_analemmatic_dial_set_to_a_wrong_date_and_crooked_is_undone()
    {
        var random = new Random(11);
        double Between(double low, double high) => low + (high - low) * random.NextDouble();
        int asked = 0, two = 0;
        while (asked < 500)
        {
            var latitude = Latitude.FromDegrees(Between(-70, 70));
            var dial = new AnalemmaticDial(latitude);
            var (setFor, declination) = (SolarDeclination.FromDegrees(Between(-23.4, 23.4)), SolarDeclination.FromDegrees(Between(-23.4, 23.4)));
            var stance = DialStance.FromDegrees(Between(-20, 20), Between(-10, 10), Between(-10, 10));
            var truth = HourAngle.FromDegrees(Between(-179, 179));
            if (dial.Read(setFor, stance, LocalDirection.FromHourAngle(truth, declination, latitude)) is not AnalemmaticReading.Shows shows)
            {
                continue;
            }

            foreach (var time in shows.Times)
            {
                Assert.Contains(dial.HourAngles(setFor, stance, latitude, declination, time), a => Math.Abs((a.Angle - truth.Angle).AroundZero().TimeMinutes) < 1e-3);
            }

            two += shows.Times.Count == 2 ? 1 : 0;
            asked++;
        }

        Assert.True(two > 5, $"{two} readings of two times");

        // Set right and standing right it gives the reading itself; at night nothing.
        var vigo = Latitude.FromDegrees(42.24);
        var june = SolarDeclination.FromDegrees(23.44);
        Assert.Equal(-37.5, Assert.Single(new AnalemmaticDial(vigo).HourAngles(june, DialStance.True, vigo, june, DialTime.FromHours(9.5))).Degrees, 1e-9);
        Assert.Empty(new AnalemmaticDial(vigo).HourAngles(june, DialStance.True, vigo, june, DialTime.FromHours(1)));
    }
}
