using SunLessons.Dials;

namespace SunLessons.Tests.Dials;

public class ForwardModelFacts
{
    private static readonly SolarDeclination June = SolarDeclination.FromDegrees(23.44);
    private static readonly SolarDeclination December = SolarDeclination.FromDegrees(-23.44);

    [Theory]
    [InlineData("Tromso", 69.65)]
    [InlineData("Vigo", 42.24)]
    [InlineData("Kathmandu", 27.72)]
    [InlineData("Nairobi", -1.29)]
    [InlineData("Darwin", -12.46)]
    [InlineData("Dunedin", -45.87)]
    [InlineData("Ushuaia", -54.80)]
    [InlineData("St. John's", 47.56)]
    public void A_dial_that_stands_right_shows_the_Suns_own_hour_on_every_day(string town, double degrees)
    {
        var place = Latitude.FromDegrees(degrees);
        var worst = 0.0;
        var shown = 0;
        for (var d = -23.4; d <= 23.41; d += 2.6)
        {
            for (var h = -179.0; h <= 179.0; h += 1.0)
            {
                var error = DialError.FastMinutes(
                    FlatDial.For(place), DialStance.True, place, HourAngle.FromDegrees(h), SolarDeclination.FromDegrees(d));
                if (error is { } minutes)
                {
                    worst = Math.Max(worst, Math.Abs(minutes));
                    shown++;
                }
            }
        }

        // Darwin and Nairobi included, where the noon Sun stands north of overhead for a part of the year.
        // 1e-10 minutes: rounding, magnified some 45 times at Nairobi.
        Assert.True(worst <= 1e-10 && shown > 1000, $"{town}: worst {worst} minutes in {shown} readings");
    }

    [Theory]
    // An independent exact vector reckoning for 2026 (declinations +23.44, -23.43 and -0.01 to 0): printed to a tenth.
    [InlineData(23.44, 9.4)]
    [InlineData(-23.43, -7.2)]
    [InlineData(0.0, 0.8)]
    public void A_dial_for_49_degrees_errs_at_Vigo_by_the_known_minutes(double declination, double minutes)
    {
        var error = DialError.FastMinutes(
            FlatDial.For(Latitude.FromDegrees(49)), DialStance.True, Latitude.FromDegrees(42.24), HourAngle.FromHours(3), SolarDeclination.FromDegrees(declination));
        Assert.Equal(minutes, error!.Value, 0.06); // The reckoning prints tenths; 0.01 more for the declination of the hour.
    }

    [Fact]
    public void Tipping_it_by_the_difference_of_latitude_cures_it_and_the_wrong_way_makes_it_worse()
    {
        double ErrorAt(double northUp) => DialError.FastMinutes(
            FlatDial.For(Latitude.FromDegrees(49)), DialStance.FromDegrees(0, 0, northUp), Latitude.FromDegrees(42.24), HourAngle.FromHours(3), June)!.Value;

        Assert.Equal(0.0, ErrorAt(-6.76), 1e-9); // The side away from the pole raised: parallel to home.

        // 0.1: an independent reckoning prints 21.3, and its wedge of 23.6 mm under 200 mm is 6.73 to 6.78 degrees, 1.8 minutes to the degree.
        Assert.Equal(21.3, ErrorAt(+6.76), 0.1);
    }

    [Fact]
    public void The_old_dial_shows_11_39_2_at_Vigos_solar_noon()
    {
        // Invented instrument: made for 49 degrees, its noon line 14.0 degrees clockwise of true, 21 June 2026 at solar noon.
        var shows = Assert.IsType<DialReading.Shows>(ForwardModel.Read(
            FlatDial.For(Latitude.FromDegrees(49)), DialStance.FromDegrees(13.95), Latitude.FromDegrees(42.24), HourAngle.FromDegrees(0), June));

        // 0.3 minutes: the reckoning prints the twist to 0.1 degree, and a degree is worth 1.5 minutes here.
        Assert.Equal(11 * 60 + 39.2, shows.Time.MinutesOfDay, 0.3);
    }

    [Fact]
    public void A_needle_taken_for_north_makes_a_dial_at_St_Johns_fast_at_the_equinox()
    {
        // Set by the bare needle, 16.6 degrees west of true: the noon line stands 16.6 anticlockwise. Known: 47 to 51 minutes fast.
        var place = Latitude.FromDegrees(47.56);
        foreach (var hour in new[] { -3.0, 0.0, 3.0 })
        {
            var fast = DialError.FastMinutes(
                FlatDial.For(place), DialStance.FromDegrees(-16.6), place, HourAngle.FromHours(hour), SolarDeclination.FromDegrees(0));
            Assert.InRange(fast!.Value, 46.5, 51.5);
        }
    }

    [Fact]
    public void Three_degrees_clockwise_at_Dunedin_on_an_equinox_is_eight_and_a_half_minutes_fast_all_day()
    {
        var place = Latitude.FromDegrees(-45.87);
        foreach (var hour in new[] { -4.0, -2.0, 0.0, 2.0, 4.0 })
        {
            var fast = DialError.FastMinutes(
                FlatDial.For(place), DialStance.FromDegrees(3), place, HourAngle.FromHours(hour), SolarDeclination.FromDegrees(0));
            Assert.Equal(8.6, fast!.Value, 0.3); // Known to a tenth at noon, with 0.3 allowed over the day.
        }
    }

    [Theory]
    [InlineData(-24.0, 0.0, 42.24, 42.24, NoReading.SunBelowHorizon, "The Sun stands ")]
    [InlineData(9.0, 0.0, 0.0, 0.0, NoReading.StyleParallelToPlate, "A level dial for latitude 0 degrees has its style along the plate and no hour lines; choose a scale and style away from the equator, or another kind of dial.")]
    [InlineData(9.0, 0.0, 5.0, -1.29, NoReading.StyleUnderPlate, "A style for 1.29° S would run into a plate with a scale for 5° N; use style and scale of one hemisphere.")]
    [InlineData(12.0, -70.0, 42.24, 42.24, NoReading.SunBehindPlate, "The Sun stands ")]
    public void A_dial_that_cannot_show_says_why(double hour, double northUp, double scale, double style, NoReading why, string sentence)
    {
        var place = Latitude.FromDegrees(42.24);
        var dial = new FlatDial(Latitude.FromDegrees(scale), Latitude.FromDegrees(style));
        var reading = ForwardModel.Read(dial, DialStance.FromDegrees(0, 0, northUp), place, HourAngle.FromHours(hour - 12.0), December);
        var nothing = Assert.IsType<DialReading.Nothing>(reading);
        Assert.Equal(why, nothing.Why);
        Assert.StartsWith(sentence, nothing.Sentence);
    }

    [Fact]
    public void A_shadow_outside_the_engraved_hours_is_not_read()
    {
        var place = Latitude.FromDegrees(42.24);
        var dial = FlatDial.For(place) with { Engraved = new EngravedHours(DialTime.FromHours(6), DialTime.FromHours(18)) };
        Assert.IsType<DialReading.Shows>(ForwardModel.Read(dial, DialStance.True, place, HourAngle.FromHours(5.9), June));
        var nothing = Assert.IsType<DialReading.Nothing>(ForwardModel.Read(dial, DialStance.True, place, HourAngle.FromHours(7), June));
        Assert.Equal(NoReading.OffTheScale, nothing.Why);
        Assert.Equal(
            "The shadow falls at 19:00.0, outside the engraved hours 06:00.0 to 18:00.0; choose a time when it falls on them.", nothing.Sentence);
    }
}
