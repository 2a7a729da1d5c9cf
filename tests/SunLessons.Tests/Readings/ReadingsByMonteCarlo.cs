using NodaTime;
using SunLessons.Dials;
using SunLessons.Places;
using SunLessons.Readings;
using SunLessons.Uncertainty;

namespace SunLessons.Tests.Readings;

public class ReadingsByMonteCarlo
{
    private static readonly DialProfile Pocket = new()
    {
        ScaleLatitude = Latitude.FromDegrees(49.0),
        Setting = new DialSetting.NoonLine(Azimuth.FromDegrees(14.0)) { Doubt = ReadingComponents.CompassReading },
        DateByTable = true,
    };

    private static (ReadingChain Chain, DialProfile? Profile) Case(string town, int month, int day, int hour, bool pocket)
    {
        var profile = pocket ? Pocket : null;
        if (profile is not null && town == "Dunedin")
        {
            profile = profile with { ScaleLatitude = Latitude.FromDegrees(-45.0) };
        }

        var place = Gazetteer.Towns.Single(p => p.Name == town);
        var chain = ((ClockReading.One)ClockFromDial.Read(place, new LocalDate(2026, month, day), DialTime.FromHours(hour), profile)).Chain;
        return (chain, profile);
    }

    [Theory]
    [InlineData("Vigo", 6, 21, 12)]
    [InlineData("Vigo", 12, 22, 14)]
    [InlineData("Dunedin", 3, 20, 9)]
    [InlineData("St. John's", 11, 3, 13)]
    public void Each_drawn_dial_shows_the_reading_when_run_forwards(string town, int month, int day, int hour)
    {
        var (chain, profile) = Case(town, month, day, hour, pocket: true);
        var draw = new ReadingDraw(chain, profile!);
        var source = new InputDraws(draw.Inputs, null);
        var random = Xoshiro256.FromSeed(3);
        double[] values = new double[source.Count], scratch = new double[source.Count];
        var worst = 0.0;
        for (var i = 0; i < 300; i++)
        {
            source.Draw(ref random, values, scratch);
            var hourAngle = draw.HourAngleDegrees(values);
            var made = draw.Made(values);
            var later = Duration.FromMinutes(4.0 * (hourAngle - chain.HourAngle.Degrees));
            var sun = LocalDirection.FromHourAngle(HourAngle.FromDegrees(hourAngle), SunNow.At(chain.Instant + later).Declination, made.Place);
            var lifted = LocalDirection.FromAzimuthAltitude(sun.Azimuth, Altitude.FromDegrees(sun.Altitude.Degrees + made.Air));
            var shows = (DialReading.Shows)ForwardModel.Read(made.Dial, made.Stance, lifted);

            // The line's place on the plate moved by the engraver: what the scale says where the shadow lies, less that move.
            var line = HourLines.At(made.Dial.ScaleLatitude, made.Shown).Clockwise.Degrees + made.Engraving;
            worst = Math.Max(worst, Math.Abs((shows.ShadowClockwise - Angle.FromDegrees(line)).AroundZero().TimeMinutes));
        }

        // Three rounds leave some 1e-7; the Sun's declination does not move quite evenly.
        Assert.InRange(worst, 0.0, 1e-5);
    }

    [Theory]
    [InlineData("Vigo", 6, 21, 12, true)]
    [InlineData("Dunedin", 3, 20, 9, true)]
    [InlineData("Kathmandu", 2, 11, 13, false)]
    public void First_order_and_the_draws_agree_on_mean_and_size(string town, int month, int day, int hour, bool pocket)
    {
        var (chain, profile) = Case(town, month, day, hour, pocket);
        var check = ReadingMonteCarlo.Of(chain, profile, draws: 200_000);
        var u = chain.Budget.CombinedStandardUncertainty;

        // A degree or two of each fault: the bend within them is a few hundredths of the size; five times the scatter of 200,000 draws is 0.011.
        Assert.Equal(1.0, check.MonteCarlo.StandardUncertainty / u, 0.03);
        Assert.Equal(chain.Total.Minutes, check.MonteCarlo.Mean, 0.05 * u);
        Assert.Equal(0, check.MonteCarlo.DrawsWithoutResult);

        // And each cause alone, by its own first-order line.
        var (inputs, model) = ReadingMonteCarlo.ModelOf(chain, profile);
        var again = Budget.Of("minutes", inputs, x => model([.. x]));
        foreach (var (line, known) in again.Lines.Zip(chain.Budget.Lines))
        {
            // Slopes of the reading's own budget are differences over 0.001 degrees.
            Assert.Equal(known.Sensitivity, line.Sensitivity, 1e-3 + 1e-3 * Math.Abs(known.Sensitivity));
        }
    }

    [Fact]
    public void Near_the_equator_first_order_fails_and_says_so()
    {
        // A level dial at Nairobi, its style 1.29 degrees over the plate and good to 0.95: the answer is anything but straight in that height.
        var nairobi = Gazetteer.Towns.Single(p => p.Name == "Nairobi");
        var profile = new DialProfile { ScaleLatitude = nairobi.Point.Latitude, Setting = new DialSetting.Standing(DialStance.True) };
        var chain = ((ClockReading.One)ClockFromDial.Read(nairobi, new LocalDate(2026, 6, 21), DialTime.FromHours(14), profile)).Chain;
        var check = ReadingMonteCarlo.Of(chain, profile, draws: 100_000);
        Assert.True(check.Verdict == FirstOrderVerdict.Fails, check.Sentence);
        Assert.StartsWith("First order fails here: first order says ", check.Sentence);
    }

    [Fact]
    public void Another_profile_than_the_chains_own_is_refused()
    {
        var (chain, profile) = Case("Vigo", 12, 22, 14, pocket: true);
        Assert.Throws<ArgumentException>(() => ReadingMonteCarlo.Of(chain, profile! with { ScaleLatitude = Latitude.FromDegrees(40.0) }));
    }
}
