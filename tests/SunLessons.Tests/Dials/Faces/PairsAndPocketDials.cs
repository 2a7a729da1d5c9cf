using SunLessons.Dials;
using SunLessons.Dials.Faces;
using SunLessons.Magnetism;

namespace SunLessons.Tests.Dials.Faces;

public class PairsAndPocketDials
{
    [Theory]
    [InlineData(42.24)]
    [InlineData(-45.87)]
    public void Plates_with_a_fitting_string_agree_even_when_the_pair_stands_wrong(double latitude)
    {
        var place = Latitude.FromDegrees(latitude);
        double apart = 0, error = 0;
        var both = 0;
        for (var h = -85.0; h <= 85; h += 5)
        {
            foreach (var d in new[] { -20.0, 0.0, 20.0 })
            {
                var stance = DialStance.FromDegrees(12, -3, 4);
                var reading = new FoldingPair(place).Read(stance, Latitude.FromDegrees(latitude * 0.9), HourAngle.FromDegrees(h), SolarDeclination.FromDegrees(d));
                if (reading.UprightAheadMinutes is { } minutes)
                {
                    apart = Math.Max(apart, Math.Abs(minutes));
                    error = Math.Max(error, Math.Abs(((FaceReading.Shows)reading.Flat).Time.HourAngle.Degrees - h) * 4);
                    both++;
                }
            }
        }

        Assert.True(apart <= 1e-9 && both > 50, $"{apart} minutes in {both}"); // Rounding only.
        Assert.True(error > 20, $"{error}"); // Minutes: it does stand wrong.
    }

    [Theory]
    [InlineData(42.24, 47.0)]
    [InlineData(-45.87, -40.0)]
    public void Plates_part_where_the_string_does_not_fit_as_two_solids_say(double latitude, double stringFor)
    {
        var place = Latitude.FromDegrees(latitude);
        var pair = new FoldingPair(place) { StringFor = Latitude.FromDegrees(stringFor) };
        Assert.Equal(Math.Tan(Math.Abs(stringFor) * Math.PI / 180), pair.HoleHeight, 9);
        var steeper = Math.Abs(stringFor) - Math.Abs(latitude);
        var widest = 0.0;
        foreach (var h in new[] { -60.0, -20.0, 0.0, 35.0, 70.0 })
        {
            var reading = pair.Read(DialStance.True, place, HourAngle.FromDegrees(h), SolarDeclination.FromDegrees(0));
            var sun = SolidFace.Sun(latitude, 0, h);
            var flat = new SolidFace(latitude, 0, 0, styleTooSteep: steeper).Hours(sun)!.Value;
            var upright = new SolidFace(latitude, 90, latitude < 0 ? 180 : 0, styleTooSteep: -steeper).Hours(sun)!.Value;
            Assert.Equal(60 * (upright - flat), reading.UprightAheadMinutes!.Value, 1e-7); // The solid's hours are found by halving.
            widest = Math.Max(widest, Math.Abs(reading.UprightAheadMinutes.Value));
        }

        Assert.True(widest > 10, $"{widest}"); // Minutes: five degrees of string are seen.
    }

    [Fact]
    public void A_pocket_dial_set_by_a_line_for_15_west_reads_early_at_Vigo()
    {
        // Invented instrument: scales 35 to 55, needle line 15 W. Known for the scale of 49 in its place: 11:39.2 at solar noon on 21 June 2026.
        var dial = new PocketDial(
            [Latitude.FromDegrees(49), Latitude.FromDegrees(35), Latitude.FromDegrees(42)],
            StyleSet.ForScale,
            new CompassLine(MagneticDeclination.FromDegrees(-15)));
        Assert.Equal([35.0, 42.0, 49.0], dial.Scales.Select(scale => Math.Round(scale.Degrees, 9)));
        var place = Latitude.FromDegrees(42.24);
        var today = MagneticDeclination.FromDegrees(-1.05);
        Assert.Equal(13.95, dial.StanceAt(today).TwistClockwise.Degrees, 9);
        var shows = Assert.IsType<DialReading.Shows>(
            dial.Read(Latitude.FromDegrees(49), place, today, HourAngle.FromDegrees(0), SolarDeclination.FromDegrees(23.44)));

        // 0.3 minutes: the reckoning prints the twist to 0.1 degree, and a degree is worth 1.5 minutes here.
        Assert.Equal(11 * 60 + 39.2, shows.Time.MinutesOfDay, 0.3);
        Assert.Equal(42.0, dial.BestScale(place)!.Value.Degrees, 9);
        Assert.Null(dial.BestScale(Latitude.FromDegrees(-42)));
        Assert.Equal(
            shows.Time.MinutesOfDay - 720,
            dial.FastMinutes(Latitude.FromDegrees(49), place, today, HourAngle.FromDegrees(0), SolarDeclination.FromDegrees(23.44))!.Value,
            9);
    }

    [Fact]
    public void Scales_of_both_hemispheres_are_refused()
    {
        var refused = Assert.Throws<ArgumentException>(() => new PocketDial(
            [Latitude.FromDegrees(40), Latitude.FromDegrees(-40)], StyleSet.ForScale, new CompassLine(MagneticDeclination.FromDegrees(0))));
        Assert.StartsWith(
            "A pocket dial needs one or more scales, all north or all south of the equator and none on it; name latitudes such as 35, 40 and 45 degrees.",
            refused.Message);
    }
}
