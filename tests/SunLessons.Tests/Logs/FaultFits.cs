using NodaTime;
using SunLessons.Dials;
using SunLessons.Logs;
using SunLessons.Places;

namespace SunLessons.Tests.Logs;

public class FaultFits
{
    private static readonly LocalDate[] Year = [new(2026, 3, 20), new(2026, 6, 21), new(2026, 9, 23), new(2026, 12, 22)];
    private static readonly double[] Hours = [-3, -2, -1, 1, 2, 3];

    private static Place Town(string name) => Gazetteer.Towns.Single(p => p.Name == name);

    /// <summary>A log of invented readings of a faulty dial, exact or rounded to tenths of a minute as a log is written.</summary>
    private static LogResiduals Readings(
        Place place, Func<LightMoment, double> fastMinutes, LocalDate[] days, Func<int, double>? noise = null, bool rounded = false)
    {
        var observations = new List<Observation>();
        foreach (var day in days)
        {
            foreach (var hours in Hours)
            {
                if (LogPlanner.Session(place.Point, day, hours) is not [var moment] || Altitude(place, moment) < 3.0)
                {
                    continue;
                }

                // The clock to the second; the Sun's hour at that very second.
                var clock = place.Zone.ClockAt(NoonOf(place, day) + Duration.FromHours(hours));
                clock = new LocalDateTime(clock.Year, clock.Month, clock.Day, clock.Hour, clock.Minute, clock.Second);
                var truth = LogResiduals.Of(
                    new ObservationLog([new Observation(1, clock, DialTime.FromHours(12), "", "")]), place).Readings.Single();
                var at = new LightMoment(truth.HourAngle, truth.Declination);
                var minutes = 720.0 + at.HourAngle.Hours * 60.0 + fastMinutes(at) + (noise?.Invoke(observations.Count) ?? 0.0);
                observations.Add(new Observation(
                    observations.Count + 2, clock, DialTime.FromHours((rounded ? Math.Round(minutes, 1) : minutes) / 60.0), "invented", ""));
            }
        }

        return LogResiduals.Of(new ObservationLog(observations), place);
    }

    private static Instant NoonOf(Place place, LocalDate day)
    {
        var t = day.At(LocalTime.Noon).InUtc().ToInstant() - Duration.FromHours(place.Point.Longitude.Degrees / 15.0);
        return t - Duration.FromHours(SunLessons.Readings.ApparentDay.HourAngleAt(place.Point, t).Hours);
    }

    private static double Altitude(Place place, LightMoment m) =>
        LocalDirection.FromHourAngle(m.HourAngle, m.Declination, place.Point.Latitude).Altitude.Degrees;

    private static Func<LightMoment, double> Exact(Place place, FlatDial dial, DialStance stance, double slip = 0.0) =>
        m => DialError.FastMinutes(dial, stance, place.Point.Latitude, m.HourAngle, m.Declination)!.Value + slip;

    private static FaultPrior[] Trusted { get; } =
    [
        new(Fault.ClockSlow, 0, 0, "time signal, taken as exact"), new(Fault.StyleNorthward, 0, 0, "protractor, taken as exact"),
        new(Fault.LinesNorthward, 0, 0, "plate measured, taken as exact"),
    ];

    [Fact]
    public void Ushuaia_three_numbers_give_twist_minus_2_east_plus_1_north_plus_1_5()
    {
        // Lesson 12 N1: c0 -8.84, c1 -1.34, c2 +6.0 of the small-fault law; asked to 0.1 degree.
        var ushuaia = Town("Ushuaia");
        static double Law(LightMoment m)
        {
            var tan = Math.Tan(m.Declination.Radians);
            return -8.84 - 1.34 * m.HourAngle.Angle.Cos * tan + 6.0 * m.HourAngle.Angle.Sin * tan;
        }

        var fit = FaultFit.Of(Readings(ushuaia, Law, Year), 1.0, Trusted);
        Assert.Equal(-2.0, fit[Fault.TwistClockwise]!.Value, 0.1);
        Assert.Equal(1.0, fit[Fault.EastEdgeRaised]!.Value, 0.1);
        Assert.Equal(1.5, fit[Fault.NorthEdgeRaised]!.Value, 0.1);

        // The combinations are the law's own three numbers, but for the exact rotation: 0.1 minutes for faults of 2 degrees.
        Assert.Equal(-8.84, fit[Combination.Constant].Value!.Value, 0.15);
        Assert.Equal(-1.34 / 4.0, fit[Combination.StyleSideways].Value!.Value, 0.05);
        Assert.Equal(6.0 / 4.0, fit[Combination.StyleForLatitude].Value!.Value, 0.05);
        Assert.Equal(0.0, fit[Combination.LinesAgainstStyle].Value!.Value, 0.05);
    }

    [Theory]
    [InlineData("Vigo", 3.0, -1.5, 0.8)]
    [InlineData("Dunedin", -2.0, 1.0, 1.2)]
    [InlineData("Vigo", 14.0, 3.0, -2.0)]
    public void Planted_faults_are_found_exactly_and_combinations_hold_whatever_made_them(string town, double t, double e, double n)
    {
        var place = Town(town);
        var sound = FlatDial.For(place.Point.Latitude);
        var log = Readings(place, Exact(place, sound, DialStance.FromDegrees(t, e, n)), Year);
        var fit = FaultFit.Of(log, 1.0, Trusted);

        // The clock is read to the second, but the reading was made for that very second: what is left is rounding of the search.
        Assert.Equal(t, fit[Fault.TwistClockwise]!.Value, 1e-4);
        Assert.Equal(e, fit[Fault.EastEdgeRaised]!.Value, 1e-4);
        Assert.Equal(n, fit[Fault.NorthEdgeRaised]!.Value, 1e-4);
        Assert.All(fit.Readings, r => Assert.Equal(0.0, r.LeftMinutes, 1e-4));
        Assert.Contains("if one trusts: time signal, taken as exact;", fit[Fault.TwistClockwise]!.Sentence);

        // Without measurements: the combinations leave nothing over either, and name nothing.
        var bare = FaultFit.Of(log, 1.0);
        Assert.Empty(bare.NamedFaults);
        Assert.All(bare.Readings, r => Assert.Equal(0.0, r.LeftMinutes, 1e-4));
        Assert.Equal(0.0, bare[Combination.LinesAgainstStyle].Value!.Value, 1e-3);
    }

    [Fact]
    public void A_slip_and_a_turn_about_the_pole_are_one_observation()
    {
        var vigo = Town("Vigo");
        var f = vigo.Point.Latitude.Angle;
        var slip = FaultFit.Of(Readings(vigo, Exact(vigo, FlatDial.For(vigo.Point.Latitude), DialStance.True, 4.0), Year), 1.0);
        var turn = FaultFit.Of(Readings(vigo, Exact(vigo, FlatDial.For(vigo.Point.Latitude), DialStance.FromDegrees(-f.Sin, -f.Cos)), Year), 1.0);
        Assert.Equal(4.0, slip[Combination.Constant].Value!.Value, 1e-4);

        // One degree about the pole put together from a twist and a tip: equal to the second order, 0.5 × (1°)² = 0.01°.
        Assert.Equal(4.0, turn[Combination.Constant].Value!.Value, 0.05);
        Assert.Equal(0.0, turn[Combination.StyleSideways].Value!.Value, 0.02);
        Assert.Contains("No reading can ever part a slip of clock, longitude or zone from a turn about the polar axis: trust or measure one of them.", turn.Sentences);
    }

    [Fact]
    public void An_equinox_day_alone_is_said_to_be_useless()
    {
        var vigo = Town("Vigo");
        var log = Readings(vigo, Exact(vigo, FlatDial.For(vigo.Point.Latitude), DialStance.FromDegrees(3.0)), [Year[0]], rounded: true);
        var fit = FaultFit.Of(log, 1.0);
        Assert.Null(fit[Combination.StyleSideways].Value);
        Assert.Null(fit[Combination.StyleForLatitude].Value);
        Assert.Equal(-4.0 * 3.0 * vigo.Point.Latitude.Angle.Sin, fit[Combination.Constant].Value!.Value, 0.1);
        Assert.Contains(fit.Open, s => s.StartsWith("These readings are useless for telling a twist from a tip or from the clock: the Sun stood within 0.1 degrees of the equator", StringComparison.Ordinal));

        // One reading at midsummer is too little of another kind.
        var one = FaultFit.Of(LogResiduals.Of(new ObservationLog([new Observation(2, new LocalDateTime(2026, 6, 21, 14, 36), DialTime.FromHours(12), "", "")]), vigo));
        Assert.Contains("These readings are too few, or too near one hour, to tell where the style points; read again at other hours and in another season.", one.Open);
        Assert.Contains("reading the plate, the shadow's edge and the clock", one.ReadingUncertaintySource);
    }

    [Fact]
    public void A_wild_reading_is_shown_and_hardly_counts()
    {
        var vigo = Town("Vigo");
        double Noise(int i) => (i == 8 ? 15.0 : 0.0) + new[] { 0.4, -0.7, 0.2, 0.9, -0.5, -0.3 }[i % 6];
        var truth = Exact(vigo, FlatDial.For(vigo.Point.Latitude), DialStance.FromDegrees(2.0));
        var fit = FaultFit.Of(Readings(vigo, truth, Year, Noise, rounded: true));
        var clean = FaultFit.Of(Readings(vigo, truth, Year, i => Noise(i) - (i == 8 ? 15.0 : 0.0), rounded: true));
        var wild = Assert.Single(fit.Readings, r => r.IsWild);
        Assert.Equal(10, wild.Reading.Observation.Line);
        Assert.Equal(24, fit.Readings.Count);
        Assert.Contains(fit.Sentences, s => s.StartsWith("Line 10: this reading lies 1", StringComparison.Ordinal) && s.EndsWith("look at it again, it is not dropped. It is a quarter of an hour off: the next line may have been read.", StringComparison.Ordinal));

        // Its pull is that of a reading 1.5 scatters off: at most 1.5 √h standard uncertainties, h its leverage, of which 24 readings share 4; h = 0.3 is allowed for.
        Assert.Equal(clean[Combination.StyleSideways].Value!.Value, fit[Combination.StyleSideways].Value!.Value, 1.5 * Math.Sqrt(0.3) * clean[Combination.StyleSideways].StandardUncertainty);
        Assert.Equal("the scatter of these readings", fit.ReadingUncertaintySource);
    }

    [Fact]
    public void The_stated_uncertainty_is_the_scatter_of_repeated_logs()
    {
        // 200 logs of one dial with 1 minute of noise: their results scatter by the uncertainty each states. Seeded; five times the scatter of a scatter, 0.05 each.
        var vigo = Town("Vigo");
        var log = Readings(vigo, Exact(vigo, FlatDial.For(vigo.Point.Latitude), DialStance.FromDegrees(1.0, 0.5)), Year);
        var random = SunLessons.Uncertainty.Xoshiro256.FromSeed(12);
        var found = new List<double[]>();
        FaultFit? fit = null;
        for (var k = 0; k < 200; k++)
        {
            var noisy = new ObservationLog(log.Readings.Select(r => r.Observation with
            {
                Shown = DialTime.FromHours(r.Observation.Shown.Hours + SunLessons.Uncertainty.PortableMath.NormalQuantile(random.Uniform()) / 60.0),
            }));
            fit = FaultFit.Of(LogResiduals.Of(noisy, vigo), 1.0);
            found.Add([.. fit.Combinations.Select(c => c.Value!.Value)]);
        }

        for (var c = 0; c < 4; c++)
        {
            var mean = found.Average(v => v[c]);
            var scatter = Math.Sqrt(found.Sum(v => (v[c] - mean) * (v[c] - mean)) / 199.0);

            // Huber's weighting costs 4 % of the efficiency at the bell.
            Assert.Equal(1.0, scatter / fit!.Combinations[c].StandardUncertainty, 0.25);
        }
    }

    [Fact]
    public void Readings_that_cannot_be_compared_are_listed_with_the_reason()
    {
        var vigo = Town("Vigo");
        var log = ObservationLog.Parse("date_year_month_day,clock_hours_minutes,dial_hours_minutes,who,note\n2026-03-29,02:30,12:00,a,\n2026-06-21,03:00,12:00,a,\n1850-06-21,12:00,12:00,a,\n");
        var residuals = LogResiduals.Of(log, vigo);
        Assert.Empty(residuals.Readings);
        Assert.Equal(3, residuals.Unused.Count);
        Assert.StartsWith("Line 2: ", residuals.Unused[0].Why);
        Assert.StartsWith("Line 3: The Sun stands ", residuals.Unused[1].Why);
        Assert.StartsWith("Line 4: Date 21 June 1850 is outside the years 1900 to 2100", residuals.Unused[2].Why);
        Assert.StartsWith("The log has no reading that can be compared; Line 2: ", Assert.Throws<ArgumentException>(() => FaultFit.Of(residuals)).Message);
        Assert.Throws<ArgumentException>(() => new FaultPrior(Fault.ClockSlow, 0, 0, " "));
    }
}
