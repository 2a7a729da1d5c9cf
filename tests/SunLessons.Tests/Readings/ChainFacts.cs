using NodaTime;
using SunLessons.CivilTime;
using SunLessons.Dials;
using SunLessons.Places;
using SunLessons.Readings;

namespace SunLessons.Tests.Readings;

public class ChainFacts
{
    [Fact]
    public void The_old_dial_at_Vigo_every_minute_named()
    {
        // Invented instrument: made for 49 degrees, its plate 13.95 degrees clockwise (needle line 15 W where the offset is 1.05 W), solar noon of 21 June 2026.
        // Known from an independent exact reckoning, printed to a tenth: shows 11:39.2; +20.8 setting, +94.9 longitude, +1.8 date, +60 law = 14:36.7.
        var vigo = Assert.IsType<PlaceAnswer.Found>(Gazetteer.Find("Vigo")).Place;
        var profile = new DialProfile
        {
            ScaleLatitude = Latitude.FromDegrees(49),
            Setting = new DialSetting.NoonLine(Azimuth.FromDegrees(13.95)),
        };
        var chain = CorrectionsByHand.OneAt("Vigo", new LocalDate(2026, 6, 21), DialTime.FromHoursMinutes(11, 39.2), profile);

        // 0.3 minutes: the printed twist is good to 0.05 degrees, 1.5 minutes each.
        Assert.Equal(0.0, chain[StepName.Scale].Amount.Minutes, 0.05); // A latitude fault vanishes at noon.
        Assert.Equal(20.8, chain[StepName.Setting].Amount.Minutes, 0.3);
        Assert.Equal(94.9, chain[StepName.Longitude].Amount.Minutes, 0.05);
        Assert.Equal(1.8, chain[StepName.Date].Amount.Minutes, 0.05);
        Assert.Equal(60.0, chain[StepName.Law].Amount.Minutes);
        Assert.Equal(14 * 60 + 36.7, chain.Clock.TimeOfDay.NanosecondOfDay / 6e10, 0.3);
        Assert.Equal(177.6, chain.Total.Minutes, 0.3);
        Assert.EndsWith(" min: the noon line points 14.0 degrees clockwise (east) of true north", chain[StepName.Setting].InWords);
        Assert.Equal("add 0.0 min: the scale is made for 49° N and the place is at 42.24° N", chain[StepName.Scale].InWords);
        Assert.Equal(vigo.Point, chain.Place);
        Assert.Equal(CivilZones.TzdbVersion, chain.TzdbVersion);
        Assert.Matches("^[0-9]{4}[a-z]$", chain.TzdbVersion);
    }

    [Fact]
    public void The_old_dials_faults_at_the_equinox_and_in_December()
    {
        // The same dial, independent exact reckoning in whole minutes: 37 to 42 slow from its setting at the equinox; in December up to 61 slow,
        // of which by the table below some 54 come from the setting and 7 from the scale.
        var vigo = Latitude.FromDegrees(42.24);
        (double Setting, double Whole) Slow(double hours, double declination)
        {
            double Fast(DialStance stance) => DialError.FastMinutes(
                FlatDial.For(Latitude.FromDegrees(49)), stance, vigo, HourAngle.FromHours(hours), SolarDeclination.FromDegrees(declination))!.Value;
            var whole = Fast(DialStance.FromDegrees(13.95));
            return (Fast(DialStance.True) - whole, -whole);
        }

        var hours = Enumerable.Range(-4, 9).Select(h => (double)h).ToList();
        Assert.Equal(37.0, hours.Min(h => Slow(h, 0.0).Setting), 0.5);
        Assert.Equal(42.0, hours.Max(h => Slow(h, 0.0).Setting), 0.5);
        Assert.Equal(61.0, hours.Max(h => Slow(h, -23.44).Whole), 0.5);
        Assert.Equal(54.1, hours.Max(h => Slow(h, -23.44).Setting), 0.1);
    }

    [Fact]
    public void Reading_and_amounts_make_the_clock_exactly_and_running_times_follow()
    {
        var random = new Random(7);
        var checkedChains = 0;
        while (checkedChains < 300)
        {
            var place = Gazetteer.Towns[random.Next(Gazetteer.Towns.Count)];
            var date = new LocalDate(2026, 1, 1).PlusDays(random.Next(365));
            var southern = place.Point.Latitude.IsSouthern;
            var stance = DialStance.FromDegrees(40 * random.NextDouble() - 20, 6 * random.NextDouble() - 3, 6 * random.NextDouble() - 3);
            var profile = new DialProfile
            {
                ScaleLatitude = Latitude.FromDegrees((southern ? -1 : 1) * (10 + 50 * random.NextDouble())),
                Style = random.Next(2) == 0 ? StyleSet.ForPlace : StyleSet.ForScale,
                Setting = new DialSetting.Standing(stance),
            };
            var answer = ClockFromDial.Read(place, date, DialTime.FromHours(6 + 12 * random.NextDouble()), profile);
            var chains = answer switch
            {
                ClockReading.One one => [one.Chain],
                ClockReading.Several several => several.Chains,
                _ => [],
            };
            foreach (var chain in chains)
            {
                var sum = chain.ShownTime;
                foreach (var step in chain.Steps)
                {
                    sum = sum.PlusNanoseconds((long)Math.Round(step.Amount.Minutes * 6e10));
                    Assert.InRange(Nanoseconds(sum, step.RunningTime), -10, 10);
                }

                // The clock comes from the zone's own rules at the instant; the steps from angles. A microsecond is rounding of doubles.
                Assert.InRange(Nanoseconds(sum, chain.Clock), -1000, 1000);

                // And the dial, run forwards at that instant, shows the reading.
                var shows = Assert.IsType<DialReading.Shows>(ForwardModel.Read(
                    profile.DialAt(place.Point.Latitude), stance, place.Point.Latitude, chain.HourAngle, chain.Declination));
                Assert.Equal(chain.Shown.Hours, shows.Time.Hours, 1e-6);
                Assert.Equal(chain.Shown.Hours, chain.ShownTime.TimeOfDay.NanosecondOfDay / 3.6e12, 1e-6);
                checkedChains++;
            }
        }
    }

    [Fact]
    public void Scale_and_setting_are_forward_runs_and_their_meeting_falls_to_the_setting()
    {
        var place = Assert.IsType<PlaceAnswer.Found>(Gazetteer.Find("Dunedin")).Place;
        var date = new LocalDate(2026, 12, 22);
        var scale = Latitude.FromDegrees(-38);
        var stance = DialStance.FromDegrees(26.3, 1, -2);
        var both = new DialProfile { ScaleLatitude = scale, Setting = new DialSetting.Standing(stance) };
        var chain = CorrectionsByHand.OneAt("Dunedin", date, DialTime.FromHours(15), both);

        double Fast(FlatDial dial, DialStance s) => DialError.FastMinutes(dial, s, place.Point.Latitude, chain.HourAngle, chain.Declination)!.Value;
        var scaleAlone = Fast(FlatDial.For(scale), DialStance.True);
        var together = Fast(FlatDial.For(scale), stance);
        Assert.Equal(-scaleAlone, chain[StepName.Scale].Amount.Minutes, 1e-6);
        Assert.Equal(-(together - scaleAlone), chain[StepName.Setting].Amount.Minutes, 1e-6);
        Assert.NotEqual(Fast(FlatDial.For(place.Point.Latitude), stance), together - scaleAlone, 0.5); // They do meet here, by more than half a minute.
    }

    [Theory]
    [InlineData("Tromso", 2026, 6, 21, 23.83, "2026-06-22")] // Polar day: 23:50 on the dial is after midnight by the clock.
    [InlineData("Tromso", 2026, 6, 21, 0.5, "2026-06-21")]
    [InlineData("Kiritimati", 2026, 6, 21, 12.0, "2026-06-21")] // +14 h at longitude 157 W: the step must not carry a whole day.
    public void The_date_may_roll_over_midnight_and_the_date_line_does_not_shift_it(string town, int year, int month, int day, double hours, string clockDate)
    {
        var chain = CorrectionsByHand.OneAt(town, new LocalDate(year, month, day), DialTime.FromHours(hours));
        Assert.Equal(clockDate, chain.Clock.Date.ToString("uuuu-MM-dd", null));
        Assert.InRange(chain[StepName.Longitude].Amount.Minutes, -120, 120);
    }

    [Fact]
    public void When_the_Sun_is_down_the_sentence_says_when_it_is_up()
    {
        var none = NoneAt("Vigo", new LocalDate(2026, 6, 21), DialTime.FromHours(23));
        Assert.Equal(NoClock.SunIsDown, none.Why);
        Assert.Equal(
            "When a dial shows 23:00.0 on 21 June 2026 at 42.24° N 8.72° W the Sun is down; it rises at 06:58.5 and sets at 22:14.9 by the clock, so give a reading from 04:21.9 to 19:38.1.",
            none.Sentence);

        var night = NoneAt("Tromso", new LocalDate(2026, 12, 21), DialTime.FromHours(12));
        Assert.Equal(
            "When a dial shows 12:00.0 on 21 December 2026 at 69.65° N 18.96° E the Sun is down; it does not rise at all, so give another date.", night.Sentence);
    }

    [Fact]
    public void A_reading_the_dial_never_shows_and_a_dial_without_scale_are_named()
    {
        // A plate that faces away from the low northern Sun: tipped 60 degrees towards the south at Dunedin.
        var away = new DialProfile { Setting = new DialSetting.Standing(DialStance.FromDegrees(0, 0, 60)) };
        var never = NoneAt("Dunedin", new LocalDate(2026, 6, 21), DialTime.FromHours(12), away);
        Assert.Equal(NoClock.NeverShown, never.Why);
        Assert.StartsWith("At no moment on 21 June 2026 at 45.87° S 170.5° E does this dial, as it stands, show 12:00.0 while the Sun is up; it rises at ", never.Sentence);

        var across = new DialProfile { ScaleLatitude = Latitude.FromDegrees(5), Style = StyleSet.ForPlace };
        var none = NoneAt("Nairobi", new LocalDate(2026, 6, 21), DialTime.FromHours(12), across);
        Assert.Equal(NoClock.DialHasNoScale, none.Why);
        Assert.Equal("A style for 1.29° S would run into a plate with a scale for 5° N; use style and scale of one hemisphere.", none.Sentence);
    }

    [Fact]
    public void A_reading_that_fits_twice_lists_both()
    {
        // A dial for 80 degrees north, level at 10 degrees north in June: the shadow turns back.
        var place = GeoPoint.FromDegrees(10, 0);
        var zone = CivilZones.Get("UTC");
        var profile = new DialProfile { ScaleLatitude = Latitude.FromDegrees(80) };
        var twice = Enumerable.Range(0, 48)
            .Select(i => ClockFromDial.Read(place, zone, new LocalDate(2026, 6, 21), DialTime.FromHours(i / 2.0), profile))
            .OfType<ClockReading.Several>()
            .ToList();
        Assert.NotEmpty(twice);
        Assert.All(twice, several =>
        {
            Assert.Equal(2, several.Chains.Count);
            Assert.True(several.Chains[0].Instant < several.Chains[1].Instant);
            Assert.Contains(" twice on 21 June 2026: ", several.Sentence, StringComparison.Ordinal);
        });
    }

    [Fact]
    public void In_the_doubled_hour_both_names_are_given()
    {
        // A traveller's watch kept on Spanish time, read beside a dial on the far side of the world while the clocks at home are moved back:
        // 25 October 2026, 01:00 UT. At longitude 150 W the dial shows about 15:16 then, half an hour earlier 14:46.
        var zone = CivilZones.Get("Europe/Madrid");
        var place = GeoPoint.FromDegrees(20, -150);
        var before = Assert.IsType<ClockReading.One>(ClockFromDial.Read(place, zone, new LocalDate(2026, 10, 24), DialTime.FromHoursMinutes(14, 46))).Chain;
        var after = Assert.IsType<ClockReading.One>(ClockFromDial.Read(place, zone, new LocalDate(2026, 10, 24), DialTime.FromHoursMinutes(15, 46))).Chain;
        Assert.Equal(Duration.FromHours(1).TotalMinutes, (after.Instant - before.Instant).TotalMinutes, 0.1);
        Assert.Equal(60.0, before[StepName.Law].Amount.Minutes);
        Assert.Equal(0.0, after[StepName.Law].Amount.Minutes);
        Assert.EndsWith(
            "twice that night because it was moved back: this is the earlier, UTC+1 and 60 min daylight time, not the later, UTC+1.", before.DoubledHour);
        Assert.EndsWith(
            "twice that night because it was moved back: this is the later, UTC+1, not the earlier, UTC+1 and 60 min daylight time.", after.DoubledHour);
    }

    [Fact]
    public void A_day_that_was_left_out_has_no_readings()
    {
        // Samoa went from 29 to 31 December 2011 (time-zone database).
        var zone = CivilZones.Get("Pacific/Apia");
        var answer = ClockFromDial.Read(GeoPoint.FromDegrees(-13.83, -171.76), zone, new LocalDate(2011, 12, 30), DialTime.FromHours(12));
        var none = Assert.IsType<ClockReading.None>(answer);
        Assert.Equal(NoClock.NoSuchDay, none.Why);
        Assert.StartsWith("Clock time 12:00 on 30 December 2011 does not exist in Pacific/Apia", none.Sentence);
    }

    [Fact]
    public void Four_minutes_to_a_degree_and_a_place_east_of_the_meridian_subtracts()
    {
        // Common practice, no source: four minutes of time to a degree; one degree east of the zone's meridian subtracts four.
        var zone = CivilZones.Get("UTC+1");
        var east = Assert.IsType<ClockReading.One>(ClockFromDial.Read(GeoPoint.FromDegrees(40, 16), zone, new LocalDate(2026, 8, 21), DialTime.FromHours(12))).Chain;
        Assert.Equal(-4.0, east[StepName.Longitude].Amount.Minutes, 1e-9);
        Assert.Equal("subtract 4.0 min: the dial is east of the zone's meridian", east[StepName.Longitude].InWords);

        // Common practice, no source: the correction for 21 August is +3 minutes, to the nearest minute.
        Assert.Equal(3.0, Math.Round(east[StepName.Date].Amount.Minutes));
        var on = Assert.IsType<ClockReading.One>(ClockFromDial.Read(GeoPoint.FromDegrees(40, 15), zone, new LocalDate(2026, 8, 21), DialTime.FromHours(12))).Chain;
        Assert.Equal("add 0.0 min: the dial is on the zone's meridian", on[StepName.Longitude].InWords);
    }

    private static long Nanoseconds(LocalDateTime from, LocalDateTime to) => Period.Between(from, to, PeriodUnits.Nanoseconds).Nanoseconds;

    private static ClockReading.None NoneAt(string town, LocalDate date, DialTime shown, DialProfile? profile = null)
    {
        var place = Assert.IsType<PlaceAnswer.Found>(Gazetteer.Find(town)).Place;
        return Assert.IsType<ClockReading.None>(ClockFromDial.Read(place, date, shown, profile));
    }
}
