using SunLessons.Dials;

namespace SunLessons.Tests.Dials;

public class InverseModelFacts
{
    [Fact]
    public void Every_true_hour_is_among_the_answers_to_the_reading_it_gave()
    {
        var random = new Random(42);
        double Between(double low, double high) => low + (high - low) * random.NextDouble();
        int asked = 0, twice = 0;
        var worst = 0.0;
        while (asked < 3000)
        {
            var south = random.Next(2) == 0 ? -1.0 : 1.0;
            var dial = new FlatDial(Latitude.FromDegrees(south * Between(3, 80)), Latitude.FromDegrees(south * Between(3, 80)));
            var stance = DialStance.FromDegrees(Between(-180, 180), Between(-50, 50), Between(-50, 50));
            var place = Latitude.FromDegrees(Between(-85, 85));
            var declination = SolarDeclination.FromDegrees(Between(-23.4, 23.4));
            var truth = HourAngle.FromDegrees(Between(-179, 179));
            if (ForwardModel.Read(dial, stance, place, truth, declination) is not DialReading.Shows shows)
            {
                continue;
            }

            var answers = InverseModel.HourAngles(dial, stance, place, declination, shows.Time);
            Assert.NotEmpty(answers);
            worst = Math.Max(worst, answers.Min(a => Math.Abs((a.Angle - truth.Angle).AroundZero().TimeMinutes)));
            twice += answers.Count > 1 ? 1 : 0;
            asked++;
        }

        // 1e-3 minutes: where the Sun's circle only just touches the plane, an error of 1e-15 becomes its square root.
        Assert.True(worst <= 1e-3, $"worst {worst} minutes");
        Assert.True(twice > 100, $"{twice} of {asked} readings fit twice");
    }

    [Fact]
    public void A_right_dial_gives_the_reading_itself_once_by_day_and_never_by_night()
    {
        var vigo = Latitude.FromDegrees(42.24);
        var june = SolarDeclination.FromDegrees(23.44);
        var only = Assert.Single(InverseModel.HourAngles(FlatDial.For(vigo), DialStance.True, vigo, june, DialTime.FromHours(15)));
        Assert.Equal(45.0, only.Degrees, 9);
        Assert.Empty(InverseModel.HourAngles(FlatDial.For(vigo), DialStance.True, vigo, june, DialTime.FromHours(23)));
    }

    [Fact]
    public void A_dial_carried_far_into_the_tropics_shows_one_time_twice_a_day_and_both_are_listed()
    {
        // A dial for 80 degrees north lying level at 10 degrees north in June: its style points so high that the Sun's circle passes beside it,
        // not round it, so that the shadow goes forward, stops and comes back.
        var place = Latitude.FromDegrees(10);
        var dial = FlatDial.For(Latitude.FromDegrees(80));
        var stance = DialStance.True;
        var june = SolarDeclination.FromDegrees(23.44);
        var readings = new List<double>();
        for (var h = -85.0; h <= 85.0; h += 5.0)
        {
            if (ForwardModel.Read(dial, stance, place, HourAngle.FromDegrees(h), june) is DialReading.Shows shows)
            {
                readings.Add(shows.Time.Hours);
            }
        }

        // The forward model itself says that the hand turns back.
        Assert.Contains(Enumerable.Range(1, readings.Count - 1), i => readings[i] < readings[i - 1]);
        Assert.Contains(readings, r => InverseModel.HourAngles(dial, stance, place, june, DialTime.FromHours(r)).Count == 2);
    }

    [Fact]
    public void The_equator_has_no_answers()
    {
        Assert.Empty(InverseModel.HourAngles(
            FlatDial.For(Latitude.FromDegrees(0)), DialStance.True, Latitude.FromDegrees(0), SolarDeclination.FromDegrees(10), DialTime.FromHours(9)));
    }
}
