using SunLessons.Dials;
using SunLessons.Dials.Faces;

namespace SunLessons.Tests.Dials.Faces;

public class FaceModelAgainstSolid
{
    [Theory]
    [InlineData(Drawn.Any)]
    [InlineData(Drawn.Upright)]
    [InlineData(Drawn.Polar)]
    [InlineData(Drawn.Equatorial)]
    [InlineData(Drawn.LevelUpOrDown)]
    public void Readings_of_crooked_dials_agree_with_the_solid_ray_traced_in_the_world(Drawn drawn)
    {
        var random = new Random(20260623);
        var worst = 0.0;
        int shown = 0, dark = 0;
        for (var i = 0; i < 2500; i++)
        {
            double Between(double low, double high) => low + (high - low) * random.NextDouble();
            var madeFor = random.Next(20) == 0 ? 90.0 * (random.Next(3) - 1) : Between(-89, 89);
            var latitude = Latitude.FromDegrees(madeFor);
            var face = DrawnFaces.Of(drawn, random, latitude);
            double twist = Between(-180, 180), east = Between(-50, 50), north = Between(-50, 50);
            double place = Between(-85, 85), declination = Between(-23.4, 23.4), hour = Between(-179, 179);
            var sun = SolidFace.Sun(place, declination, hour);
            var traced = new SolidFace(madeFor, face.Inclination.Degrees, face.Declination.Degrees, twist, east, north).Hours(sun);
            var reading = FaceModel.Read(
                new FaceDial(face, latitude),
                DialStance.FromDegrees(twist, east, north),
                Latitude.FromDegrees(place),
                HourAngle.FromDegrees(hour),
                SolarDeclination.FromDegrees(declination));
            if (traced is null)
            {
                Assert.IsType<FaceReading.Nothing>(reading);
                dark++;
                continue;
            }

            if (reading is FaceReading.Nothing { Why: NoReading.StyleParallelToPlate or NoReading.OffTheScale })
            {
                Assert.Fail($"{drawn}: no reading though the face is lit");
            }

            var shows = Assert.IsType<FaceReading.Shows>(reading);
            worst = Math.Max(worst, Math.Abs(Math.IEEERemainder(shows.Time.Hours - traced.Value, 24.0)) * 60.0);
            shown++;
        }

        Assert.True(shown > 400 && dark > 400, $"{shown} shown, {dark} dark");

        // 1e-7 minutes: rounding of doubles, magnified up to a million times where style and plate are almost parallel or the Sun grazes the plate.
        Assert.True(worst <= 1e-7, $"{drawn}: worst {worst} minutes");
    }

    [Theory]
    [InlineData("level", 0.0, 0.0)]
    [InlineData("southern wall", 90.0, 0.0)]
    [InlineData("south-east wall", 90.0, -32.5)]
    [InlineData("leaning, west of south", 25.0, 40.0)]
    public void A_style_too_steep_reads_as_the_solid_with_its_style_turned_about_the_centre(string name, double inclination, double declination)
    {
        var worst = 0.0;
        var shown = 0;
        foreach (var latitude in new[] { 51.5, -37.0 })
        {
            foreach (var steep in new[] { -6.0, -1.0, 2.0, 8.0 })
            {
                for (var h = -115.0; h <= 115; h += 10)
                {
                    foreach (var d in new[] { -23.4, 3.0, 23.4 })
                    {
                        var traced = new SolidFace(latitude, inclination, declination, styleTooSteep: steep).Hours(SolidFace.Sun(latitude, d, h));
                        var fast = FaceError.FastMinutes(
                            new FaceDial(Face.FromDegrees(inclination, declination), Latitude.FromDegrees(latitude)) { StyleTooSteep = Angle.FromDegrees(steep) },
                            DialStance.True,
                            Latitude.FromDegrees(latitude),
                            HourAngle.FromDegrees(h),
                            SolarDeclination.FromDegrees(d));
                        Assert.Equal(traced is null, fast is null);
                        if (traced is { } hours)
                        {
                            worst = Math.Max(worst, Math.Abs(Math.IEEERemainder(60 * (hours - 12) - 4 * h - fast!.Value, 1440)));
                            shown++;
                        }
                    }
                }
            }
        }

        Assert.True(worst <= 1e-9 && shown > 100, $"{name}: worst {worst} minutes in {shown}"); // Rounding only.
    }

    [Fact]
    public void A_polar_style_too_high_reads_as_the_solid_with_its_style_lifted()
    {
        var worst = 0.0;
        var shown = 0;
        var place = Latitude.FromDegrees(42.24);
        foreach (var face in new[] { Face.Polar(place), Face.VerticalEast, Face.VerticalWest })
        {
            for (var h = -85.0; h <= 85; h += 10)
            {
                var traced = new SolidFace(42.24, face.Inclination.Degrees, face.Declination.Degrees, styleTooHigh: 0.1).Hours(SolidFace.Sun(42.24, 5, h));
                var fast = FaceError.FastMinutes(
                    new FaceDial(face, place) { StyleTooHighFraction = 0.1 }, DialStance.True, place, HourAngle.FromDegrees(h), SolarDeclination.FromDegrees(5));
                Assert.Equal(traced is null, fast is null);
                if (traced is { } hours)
                {
                    worst = Math.Max(worst, Math.Abs(60 * (hours - 12) - 4 * h - fast!.Value));
                    shown++;
                }
            }
        }

        Assert.True(worst <= 1e-9 && shown > 25, $"worst {worst} minutes in {shown}"); // Rounding only.
    }
}
