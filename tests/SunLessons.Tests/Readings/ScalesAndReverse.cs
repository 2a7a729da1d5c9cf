using NodaTime;
using SunLessons.CivilTime;
using SunLessons.Dials;
using SunLessons.Places;
using SunLessons.Readings;

namespace SunLessons.Tests.Readings;

public class ScalesAndReverse
{
    private static readonly Instant Now = Instant.FromUtc(2026, 6, 21, 15, 0);

    [Theory]
    [InlineData(42.24, 35.0)]
    [InlineData(42.24, 45.0)]
    [InlineData(47.0, 50.0)]
    [InlineData(-45.87, -40.0)]
    [InlineData(27.72, 30.0)]
    public void With_the_style_set_true_the_worst_error_of_the_year_is_the_closed_form(double place, double scale)
    {
        // tan H' = q tan H with q = sin f / sin s; the largest H' - H is asin((q - 1) / (q + 1)) for either sign, whatever the date.
        var q = Math.Sin(place * Math.PI / 180.0) / Math.Sin(scale * Math.PI / 180.0);
        var closed = 4.0 * 180.0 / Math.PI * Math.Abs(Math.Asin((q - 1.0) / (q + 1.0)));
        var ranked = Assert.Single(ScaleRanking.Rank(
            GeoPoint.FromDegrees(place, 0), Now, [Latitude.FromDegrees(scale)], StyleSet.ForPlace, Altitude.FromDegrees(0)));

        // 0.001 of it: hours are five minutes apart at the top of a smooth curve, and the Sun reaches that hour every day here.
        Assert.Equal(closed, ranked.WorstSizeMinutes, 0.001 * closed);
    }

    [Fact]
    public void A_50_degree_scale_at_47_degrees_is_at_worst_5_3_minutes_off()
    {
        // Known from an independent reckoning to a tenth: style true 5.3.
        var ranked = Assert.Single(ScaleRanking.Rank(GeoPoint.FromDegrees(47, 0), Now, [Latitude.FromDegrees(50)], StyleSet.ForPlace));
        Assert.Equal(5.3, ranked.WorstSizeMinutes, 0.06);
    }

    [Fact]
    public void Scales_are_ranked_by_the_worst_of_the_year_and_the_error_now_is_a_forward_run()
    {
        var vigo = Found("Vigo").Point;
        var ranked = ScaleRanking.Rank(vigo, Now, new[] { 35.0, 40.0, 45.0, -40.0 }.Select(Latitude.FromDegrees));
        Assert.Equal([40.0, 45.0, 35.0, -40.0], ranked.Select(r => Math.Round(r.Scale.Degrees, 6)));
        Assert.True(ranked[0].WorstSizeMinutes < ranked[1].WorstSizeMinutes && ranked[1].WorstSizeMinutes < ranked[2].WorstSizeMinutes);
        Assert.NotNull(ranked[0].WorstOn);
        Assert.Null(ranked[3].Why); // A southern plate at Vigo can be read, only absurdly.
        Assert.True(ranked[3].WorstSizeMinutes > 300.0);

        var chain = Assert.IsType<DialForecast.One>(DialFromClock.At(
            vigo, CivilZones.Get("Europe/Madrid"), Now, new DialProfile { ScaleLatitude = Latitude.FromDegrees(40) })).Chain;
        Assert.Equal(-chain[StepName.Scale].Amount.Minutes, ranked[0].FastMinutesNow!.Value, 1e-6);
    }

    [Fact]
    public void Scales_that_cannot_be_used_come_last_with_their_reason()
    {
        var nairobi = Found("Nairobi").Point;
        var ranked = ScaleRanking.Rank(nairobi, Now, [Latitude.FromDegrees(5), Latitude.FromDegrees(-5)], StyleSet.ForPlace);
        Assert.Equal(-5.0, ranked[0].Scale.Degrees, 9);
        Assert.Equal("A style for 1.29° S would run into a plate with a scale for 5° N; use style and scale of one hemisphere.", ranked[1].Why);
        Assert.Null(ranked[1].WorstFastMinutes);
        var none = Assert.Throws<ArgumentException>(() => ScaleRanking.Rank(nairobi, Now, []));
        Assert.StartsWith("No scale was given; name the latitudes that the dial carries, such as 35,40,45.", none.Message);
        var year = Assert.Throws<ArgumentException>(() => ScaleRanking.Rank(nairobi, Instant.FromUtc(1850, 1, 1, 0, 0), [Latitude.FromDegrees(-5)]));
        Assert.StartsWith("Date 1 January 1850 is outside the years 1900 to 2100", year.Message);
    }

    [Fact]
    public void From_the_clock_to_the_dial_and_back_is_the_same_clock()
    {
        var random = new Random(11);
        var done = 0;
        while (done < 200)
        {
            var place = Gazetteer.Towns[random.Next(8)];
            var clock = new LocalDateTime(2026, 1, 1, 0, 0).PlusMinutes(random.Next(365 * 1440));
            var south = place.Point.Latitude.IsSouthern ? -1.0 : 1.0;
            var profile = random.Next(3) == 0 ? DialProfile.Faultless : new DialProfile
            {
                ScaleLatitude = Latitude.FromDegrees(south * (20 + 40 * random.NextDouble())),
                Setting = new DialSetting.Standing(DialStance.FromDegrees(20 * random.NextDouble() - 10, random.NextDouble(), random.NextDouble())),
            };
            if (DialFromClock.At(place, clock, profile) is not DialForecast.One forecast)
            {
                continue;
            }

            Assert.Equal(clock, Rounded(forecast.Chain.Clock));
            var back = ClockFromDial.Read(place, forecast.Chain.Date, forecast.Shows, profile);
            var clocks = back switch
            {
                ClockReading.One one => [one.Chain.Clock],
                ClockReading.Several several => several.Chains.Select(chain => chain.Clock).ToList(),
                _ => [],
            };
            Assert.Contains(clock, clocks.Select(Rounded));
            done++;
        }
    }

    [Fact]
    public void A_clock_time_that_was_skipped_or_doubled_or_is_at_night_says_so()
    {
        var vigo = Found("Vigo");
        var skipped = Assert.IsType<DialForecast.None>(DialFromClock.At(vigo, new LocalDateTime(2026, 3, 29, 2, 30)));
        Assert.Equal(
            "Clock time 02:30 on 29 March 2026 does not exist in Europe/Madrid: the clock was moved from 02:00 to 03:00. Write 01:30 or 03:30.", skipped.Sentence);
        var doubled = Assert.IsType<DialForecast.Two>(DialFromClock.At(vigo, new LocalDateTime(2026, 10, 25, 2, 30)));
        Assert.IsType<DialForecast.None>(doubled.Earlier); // It is night, both times.
        Assert.IsType<DialForecast.None>(doubled.Later);
        Assert.Contains("happens twice in Europe/Madrid", doubled.Sentence, StringComparison.Ordinal);
        var night = Assert.IsType<DialForecast.None>(DialFromClock.At(vigo, new LocalDateTime(2026, 6, 21, 4, 30)));
        Assert.Equal(
            "At 04:30.0 on 21 June 2026 at 42.24° N 8.72° W the Sun is down; it rises at 06:58.5 and sets at 22:14.9 by the clock, so ask for a time when it is up.",
            night.Sentence);
    }

    [Theory]
    [InlineData("Vigo", 42.24, 11)]
    [InlineData("Vigo", 49.0, 18)]
    [InlineData("Dunedin", -45.0, 16)]
    [InlineData("Kathmandu", 30.0, 9)]
    public void A_dial_turned_until_it_shows_what_it_should_stands_true(string town, double scale, int hour)
    {
        var place = Found(town);
        var clock = new LocalDateTime(2026, 11, 3, hour, 0);
        var profile = new DialProfile { ScaleLatitude = Latitude.FromDegrees(scale) };
        var turn = Assert.IsType<SetByClock.Turn>(SetByClock.At(place, clock, profile));

        // Turn a level dial through the circle and see where it shows that: at true north, and where the answer says besides.
        var forecast = Assert.IsType<DialForecast.One>(DialFromClock.At(place, clock, profile)).Chain;
        var shown = new List<double>();
        for (var twist = -180.0; twist < 180.0; twist += 0.1)
        {
            var reading = ForwardModel.Read(
                FlatDial.For(Latitude.FromDegrees(scale)), DialStance.FromDegrees(twist), place.Point.Latitude, forecast.HourAngle, forecast.Declination);
            if (Math.Abs(Math.IEEERemainder(Assert.IsType<DialReading.Shows>(reading).Time.Hours - turn.TurnUntil.Hours, 24.0)) * 60.0 < 0.02)
            {
                shown.Add(twist);
            }
        }

        Assert.Contains(shown, twist => Math.Abs(twist) < 0.06);
        Assert.All(shown, twist => Assert.True(
            Math.Abs(twist) < 0.2 || turn.OtherTwists.Any(other => Math.Abs(Math.IEEERemainder(other.Degrees - twist, 360.0)) < 0.2), $"{twist}"));
        Assert.StartsWith($"At {hour:00}:00.0 on 3 November 2026 lay the dial level and turn it until it shows {turn.TurnUntil}: ", turn.Sentence);
    }

    [Fact]
    public void A_noon_when_turning_hardly_moves_the_shadow_is_warned_of()
    {
        // Kathmandu in June: a degree of twist is worth 0.3 minutes at noon (independent reckoning), for the Sun stands 4 degrees from overhead.
        var turn = Assert.IsType<SetByClock.Turn>(SetByClock.At(Found("Kathmandu"), new LocalDateTime(2026, 6, 21, 12, 0)));
        Assert.True(turn.HardlyAnswers);
        Assert.Equal(-0.3, turn.MinutesPerDegree, 0.06);
        Assert.EndsWith("Choose another hour if you can: now a degree of turning moves the reading by 0.3 min only.", turn.Sentence);

        var impossible = Assert.IsType<SetByClock.Impossible>(SetByClock.At(Found("Vigo"), new LocalDateTime(2026, 3, 29, 2, 30)));
        Assert.StartsWith("Clock time 02:30 on 29 March 2026 does not exist", impossible.Sentence);
    }

    private static LocalDateTime Rounded(LocalDateTime time) => time.PlusMilliseconds(500).With(TimeAdjusters.TruncateToSecond);

    private static Place Found(string town) => Assert.IsType<PlaceAnswer.Found>(Gazetteer.Find(town)).Place;
}
