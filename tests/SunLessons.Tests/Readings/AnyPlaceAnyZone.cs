using NodaTime;
using SunLessons.CivilTime;
using SunLessons.Dials;
using SunLessons.Magnetism;
using SunLessons.Readings;

namespace SunLessons.Tests.Readings;

public class AnyPlaceAnyZone
{
    [Fact]
    public void Any_reading_gets_an_answer_whose_steps_lead_to_the_clock_and_back()
    {
        // Places at random and at the poles, the equator and the date line; any zone of the database, also a clock kept on the time of the far side;
        // every date from 1900 to 2100; dials from faultless to absurd.
        var random = new Random(5);
        int answered = 0, refused = 0;
        for (var i = 0; i < 600; i++)
        {
            double Between(double low, double high) => low + (high - low) * random.NextDouble();
            var place = random.Next(12) switch
            {
                0 => GeoPoint.FromDegrees(90, 0),
                1 => GeoPoint.FromDegrees(-90, 50),
                2 => GeoPoint.FromDegrees(0, Between(-180, 180)),
                3 => GeoPoint.FromDegrees(Between(-90, 90), 180),
                _ => GeoPoint.FromDegrees(Between(-90, 90), Between(-180, 180)),
            };
            var zone = CivilZones.Get(CivilZones.Ids[random.Next(CivilZones.Ids.Count)]);
            var date = new LocalDate(1900, 1, 1).PlusDays(random.Next(73414));
            var profile = random.Next(4) switch
            {
                0 => DialProfile.Faultless,
                1 => new DialProfile { ScaleLatitude = Latitude.FromDegrees(Between(-90, 90)) },
                2 => new DialProfile { Setting = new DialSetting.NeedleOnLine(new CompassLine(MagneticDeclination.FromDegrees(Between(-30, 30)))) },
                _ => new DialProfile
                {
                    ScaleLatitude = Latitude.FromDegrees(Between(-90, 90)),
                    Style = (StyleSet)random.Next(2),
                    Setting = new DialSetting.Standing(DialStance.FromDegrees(Between(-180, 180), Between(-40, 40), Between(-40, 40))),
                    NearestOfScalesApart = Angle.FromDegrees(5),
                },
            };
            var answer = ClockFromDial.Read(place, zone, date, DialTime.FromHours(Between(0, 24)), profile);
            if (answer is ClockReading.None none)
            {
                Assert.EndsWith(".", none.Sentence);
                refused++;
                continue;
            }

            foreach (var chain in answer is ClockReading.Several several ? several.Chains : [((ClockReading.One)answer).Chain])
            {
                var story = $"{place} {zone} {date} {chain.Shown} {profile}";
                Assert.True(Math.Abs(Period.Between(chain.Steps[^1].RunningTime, chain.Clock, PeriodUnits.Nanoseconds).Nanoseconds) <= 10_000, story);
                Assert.True(double.IsFinite(chain.Budget.CombinedStandardUncertainty), story);
                var back = DialFromClock.At(place, zone, chain.Instant, profile);
                Assert.True(back is DialForecast.One one && Math.Abs(Math.IEEERemainder(one.Shows.Hours - chain.Shown.Hours, 24.0)) < 1e-5, story);
                Assert.NotEmpty(SetByClock.At(place, zone, chain.Clock, profile).Sentence);
                answered++;
            }
        }

        Assert.True(answered > 100 && refused > 100, $"{answered} answered, {refused} refused");
    }
}
