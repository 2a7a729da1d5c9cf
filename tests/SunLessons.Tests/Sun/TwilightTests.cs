using NodaTime;
using SunLessons.Places;
using SunLessons.Sun;

namespace SunLessons.Tests.Sun;

/// <summary>Dawn and dusk against ERFA 2.0 (authorities/sun/sun_twilight_120.csv), and rising by other air.</summary>
public sealed class TwilightTests
{
    [Fact]
    public void DawnAndDuskAtAHundredAndTwentyPlacesAndDays()
    {
        var table = ErfaTable.Read("sun_twilight_120.csv");
        var kinds = new Dictionary<string, int>();
        var differences = new Differences();
        foreach (var row in table.Rows)
        {
            var place = GeoPoint.FromDegrees(table.Number(row, "lat_deg"), table.Number(row, "lon_deg"));
            var limit = table.Number(row, "limit_deg");
            var day = SunDay.Around(SunInstant.FromUt1(table.Number(row, "transit_ut1_jd"), table.Number(row, "tt_minus_ut1_s")), place);
            var kind = limit switch { -6.0 => TwilightKind.Civil, -12.0 => TwilightKind.Nautical, _ => TwilightKind.Astronomical };
            Assert.Equal(limit, TwilightEvents.LimitOf(kind).Degrees, 1e-12);
            var events = day.Twilight(kind);
            kinds[events.GetType().Name] = kinds.GetValueOrDefault(events.GetType().Name) + 1;
            Compare(events is TwilightEvents.DawnAndDusk { Dawn: var a } ? a : events is TwilightEvents.DawnOnly dawn ? dawn.Dawn : null, "dawn_ut1_jd");
            Compare(events is TwilightEvents.DawnAndDusk { Dusk: var b } ? b : events is TwilightEvents.DuskOnly dusk ? dusk.Dusk : null, "dusk_ut1_jd");

            // 0.001 degrees: the reference's samples are 6 minutes apart, and near its turning point the Sun moves by less than that in 3 minutes at these latitudes.
            switch (events)
            {
                case TwilightEvents.NeverDarker light:
                    Assert.Equal(table.Number(row, "lowest_deg"), light.Lowest.Degrees, 1e-3);
                    Assert.True(light.Lowest.Degrees > limit);
                    break;
                case TwilightEvents.NeverLighter dark:
                    Assert.Equal(table.Number(row, "highest_deg"), dark.Highest.Degrees, 1e-3);
                    Assert.True(dark.Highest.Degrees < limit);
                    break;
            }

            void Compare(SunInstant? found, string column)
            {
                Assert.Equal(table.Text(row, column).Length == 0, found is null);
                if (found is { } at)
                {
                    // 0.043 s: the reference's last place; 0.020 s: the equation of time's worst; 0.17" of declination over the Sun's speed upwards.
                    var sun = SolarEphemeris.At(at);
                    var arcSecondsPerSecond = 15.0 * Math.Abs(place.Latitude.Angle.Cos * sun.Declination.Angle.Cos * sun.HourAngleAt(place.Longitude).Angle.Sin);
                    var difference = (at.Ut1JulianDate - table.Number(row, column)) * 86400.0;
                    Assert.True(Math.Abs(difference) < 0.063 + 0.17 / arcSecondsPerSecond, $"{column} at {place}: {difference} s");
                    if (arcSecondsPerSecond > 5.0)
                    {
                        differences.Add(difference);
                    }
                }
            }
        }

        // Each ordinary kind of answer is among the rows, and the figure of the doc holds where the Sun does not skim.
        Assert.True(kinds["DawnAndDusk"] > 200 && kinds["NeverDarker"] > 20 && kinds["NeverLighter"] > 5, string.Join(' ', kinds));
        Assert.True(differences.Worst < 0.1 && differences.Count > 400, differences.ToString());
    }

    // At a pole the Sun's altitude is its declination: it passes -6 degrees about three weeks from an equinox, once upwards and once downwards a year.
    [Fact]
    public void AtAPoleTwilightBeginsOnceAndEndsOnceAYear()
    {
        var pole = GeoPoint.FromDegrees(90.0, 0.0);
        var days = Enumerable.Range(0, 365).Select(i => new LocalDate(2026, 1, 1).PlusDays(i)).ToDictionary(date => date, date => SunDay.For(pole, date).Twilight(TwilightKind.Civil));
        var dawn = Assert.Single(days, day => day.Value is TwilightEvents.DawnOnly).Key;
        var dusk = Assert.Single(days, day => day.Value is TwilightEvents.DuskOnly).Key;
        Assert.Equal(-6.0, SolarEphemeris.At(SunDay.For(pole, dawn).Transit).Declination.Degrees, 0.3);
        Assert.Equal(-6.0, SolarEphemeris.At(SunDay.For(pole, dusk).Transit).Declination.Degrees, 0.3);
        Assert.True(dawn < dusk);
        Assert.DoesNotContain(days, day => day.Value is TwilightEvents.DawnAndDusk);
    }

    // White nights: where the midnight Sun stands less than 6 degrees down it stays light; latitude + declination - 90 worked by hand.
    [Theory]
    [InlineData("St. John's", 47.56 + 23.44 - 90.0, false)]
    [InlineData("Tromso", 69.65 + 23.44 - 90.0, true)]
    public void OnTheLongestDay(string town, double midnight, bool light)
    {
        var place = Assert.IsType<PlaceAnswer.Found>(Gazetteer.Find(town)).Place;
        var events = SunDay.For(place, new LocalDate(2026, 6, 21)).Twilight(TwilightKind.Civil);
        if (light)
        {
            Assert.Equal(midnight, Assert.IsType<TwilightEvents.NeverDarker>(events).Lowest.Degrees, 0.01);
        }
        else
        {
            Assert.IsType<TwilightEvents.DawnAndDusk>(events);
        }
    }

    [Fact]
    public void InOtherAirTheSunRisesAtAnotherMoment()
    {
        var vigo = Gazetteer.Towns.Single(p => p.Name == "Vigo");
        var date = new LocalDate(2026, 3, 20);
        var usual = Assert.IsType<SunEvents.RisesAndSets>(SunDay.For(vigo, date).Events);
        var frost = Altitude.FromAngle(-(Refraction.AtHorizonIn(1030.0, -20.0) + Angle.FromArcSeconds(16.0 * 60.0)));
        var cold = Assert.IsType<SunEvents.RisesAndSets>(SunDay.For(vigo, date, frost).Events);

        // 4.78' more of air; at an equinox the Sun climbs 15 cos(latitude) arcminutes a minute of time: 4.78 / (15 x 0.7403) = 0.430 min, worked by hand.
        Assert.Equal(0.430, (usual.Rise.Ut1DaysFromJ2000 - cold.Rise.Ut1DaysFromJ2000) * 1440.0, 0.005);
        Assert.Equal(0.430, (cold.Set.Ut1DaysFromJ2000 - usual.Set.Ut1DaysFromJ2000) * 1440.0, 0.005);
    }
}
