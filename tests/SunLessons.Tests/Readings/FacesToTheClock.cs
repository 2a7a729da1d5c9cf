using NodaTime;
using SunLessons.Dials;
using SunLessons.Dials.Faces;
using SunLessons.Places;
using SunLessons.Readings;
using SunLessons.Tests.Dials.Faces;
using SunLessons.Uncertainty;

namespace SunLessons.Tests.Readings;

/// <summary>From the reading of a face that does not lie level to the clock, and back.</summary>
public class FacesToTheClock
{
    private static readonly Place Vigo = Gazetteer.Towns.Single(p => p.Name == "Vigo");
    private static readonly LocalDate June = new(2026, 6, 21);
    private static readonly Face SouthEastWall = Face.FromDegrees(90, -32.5);

    [Fact]
    public void A_sound_wall_leads_to_the_clock_that_any_sound_dial_does()
    {
        var wall = One(ClockFromDial.Read(Vigo, June, DialTime.FromHours(10), new DialProfile { Face = SouthEastWall }));
        var level = One(ClockFromDial.Read(Vigo, June, DialTime.FromHours(10)));
        Assert.Equal(0.0, (level.Instant - wall.Instant).TotalSeconds, 1e-3);
        Assert.Equal(0.0, wall[StepName.Scale].Amount.Minutes, 1e-6);
        Assert.Equal("add 0.0 min: the face is taken to stand as it was designed", wall[StepName.Setting].InWords);
        Assert.Contains("How well this face is laid out and how truly it leans is not counted.", wall.TakenAsRight);
    }

    // The wall as a solid, ray-traced in the world (no shared code): what it showed must lead back to the moment, and the steps must sum to the clock.
    [Theory]
    [InlineData(90.0, -32.5, 3.0, 1.5, -2.0)]
    [InlineData(90.0, 180.0, -2.0, 1.0, 0.5)]
    [InlineData(60.0, 20.0, 5.0, -3.0, 2.0)]
    [InlineData(42.24, 0.0, 2.0, 1.0, 1.0)]
    [InlineData(47.76, 180.0, -4.0, 2.0, -1.0)]
    public void A_crooked_face_leads_back_to_the_moment_at_which_a_ray_traced_solid_showed_the_reading(
        double inclination, double declination, double twist, double east, double north)
    {
        var profile = new DialProfile
        {
            Face = Face.FromDegrees(inclination, declination),
            Setting = new DialSetting.Standing(DialStance.FromDegrees(twist, east, north)),
        };
        var solid = new SolidFace(42.24, inclination, declination, twist, east, north);
        var moments = 0;
        for (var hour = 5; hour <= 21; hour++)
        {
            var instant = Vigo.Zone.Zone.AtStrictly(June.At(new LocalTime(hour, 17))).ToInstant();
            var h = ApparentDay.HourAngleAt(Vigo.Point, instant);
            if (solid.Hours(SolidFace.Sun(42.24, SunNow.At(instant).Declination.Degrees, h.Degrees)) is not { } shown)
            {
                Assert.IsType<DialForecast.None>(DialFromClock.At(Vigo.Point, Vigo.Zone, instant, profile));
                continue;
            }

            var chains = ClockFromDial.Read(Vigo, June, DialTime.FromHours(shown), profile) switch
            {
                ClockReading.One one => [one.Chain],
                ClockReading.Several several => several.Chains,
                _ => [],
            };
            var chain = Assert.Single(chains, c => Math.Abs((c.Instant - instant).TotalSeconds) < 0.01);
            Assert.Equal(chain.Clock, chain.ShownTime.PlusNanoseconds((long)Math.Round(chain.Total.Minutes * 6e10)), (a, b) => Math.Abs(Period.Between(a, b, PeriodUnits.Nanoseconds).Nanoseconds) < 1000);
            var forecast = Assert.IsType<DialForecast.One>(DialFromClock.At(Vigo.Point, Vigo.Zone, instant, profile));
            Assert.Equal(shown, forecast.Shows.Hours, 1e-6);
            moments++;
        }

        Assert.True(moments >= 4, $"{moments} moments");
    }

    [Fact]
    public void A_face_in_the_dark_never_showed_it()
    {
        var none = Assert.IsType<ClockReading.None>(ClockFromDial.Read(Vigo, June, DialTime.FromHours(19), new DialProfile { Face = SouthEastWall }));
        Assert.Equal(NoClock.NeverShown, none.Why);
        Assert.Contains("show 19:00.0 while the Sun is up and shines on its face", none.Sentence, StringComparison.Ordinal);
        var dark = Assert.IsType<DialForecast.None>(DialFromClock.At(Vigo, June.At(new LocalTime(20, 30)), new DialProfile { Face = SouthEastWall }));
        Assert.Contains("behind the plate", dark.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void A_needle_or_a_noon_line_sets_level_plates_only()
    {
        var profile = new DialProfile { Face = SouthEastWall, Setting = new DialSetting.NoonLine(Azimuth.FromDegrees(3)) };
        var none = Assert.IsType<ClockReading.None>(ClockFromDial.Read(Vigo, June, DialTime.FromHours(10), profile));
        Assert.Equal(NoClock.SettingUnknown, none.Why);
        Assert.StartsWith("A noon line and a compass set a plate that lies level;", none.Sentence, StringComparison.Ordinal);
        Assert.StartsWith("Only a plate that lies level is set by turning it;", SetByClock.At(Vigo, June.At(new LocalTime(14, 0)), profile).Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void Its_budget_counts_what_was_stated_and_the_draws_agree_with_it()
    {
        var doubt = new ComponentSize("direction of the wall", 1.0, ComponentUnit.Degrees, Distribution.Normal, "invented for this test");
        var profile = new DialProfile { Face = SouthEastWall, Setting = new DialSetting.Standing(DialStance.FromDegrees(2.0)) { Doubt = doubt } };
        var chain = One(ClockFromDial.Read(Vigo, June, DialTime.FromHours(10), profile));
        Assert.Equal(
            ["reading the plate", "blurred edge of the shadow", "latitude of the place", "air lifts the Sun", "direction of the wall", "longitude of the place"],
            chain.Budget.Lines.Select(line => line.Quantity.Name));

        // Twist errs by the same minutes on every face (the small-fault law, tested elsewhere): the exact difference of two runs.
        double Fast(double twist) => FaceError.FastMinutes(
            new FaceDial(SouthEastWall, Vigo.Point.Latitude), DialStance.FromDegrees(twist), Vigo.Point.Latitude, chain.HourAngle, chain.Declination)!.Value;
        Assert.Equal(Math.Abs(Fast(2.01) - Fast(1.99)) / 0.02, chain.Budget.Lines.Single(line => line.Quantity.Name == doubt.Name).Contribution, 0.02);

        var check = ReadingMonteCarlo.Of(chain, profile, draws: 100_000);
        Assert.Equal(1.0, check.MonteCarlo.StandardUncertainty / chain.Budget.CombinedStandardUncertainty, 0.03);
        Assert.Equal(chain.Total.Minutes, check.MonteCarlo.Mean, 0.1);
    }

    private static ReadingChain One(ClockReading reading) => Assert.IsType<ClockReading.One>(reading).Chain;
}
