using NodaTime;
using SunLessons.Places;
using SunLessons.Sun;

namespace SunLessons.Tests.Sun;

/// <summary>Days without sunrise or sunset, days at the poles, and the towns of the lessons.</summary>
public sealed class SunDayTests
{
    private static Place Town(string name) => Assert.IsType<PlaceAnswer.Found>(Gazetteer.Find(name)).Place;

    // Cross-check worked with ERFA for the lessons: at Tromso the Sun stays down from 28 November to 14 January.
    [Theory]
    [InlineData(2026, 11, 27, true)]
    [InlineData(2026, 11, 28, false)]
    [InlineData(2026, 12, 21, false)]
    [InlineData(2027, 1, 14, false)]
    [InlineData(2027, 1, 15, true)]
    public void PolarNightAtTromso(int year, int month, int day, bool rises)
    {
        var events = SunDay.For(Town("Tromso"), new LocalDate(year, month, day)).Events;
        if (rises)
        {
            Assert.IsType<SunEvents.RisesAndSets>(events);
        }
        else
        {
            Assert.True(Assert.IsType<SunEvents.NeverRises>(events).Highest.Degrees < -50.0 / 60.0);
        }
    }

    [Fact]
    public void PolarDayAtTromso()
    {
        var lowest = Assert.IsType<SunEvents.NeverSets>(SunDay.For(Town("Tromso"), new LocalDate(2026, 6, 21)).Events).Lowest;

        // At lower transit the altitude is latitude + declination - 90 degrees: 69.65 + 23.44 - 90.
        Assert.Equal(69.65 + 23.437 - 90.0, lowest.Degrees, 0.01);
    }

    // At a pole the Sun's altitude is its declination: it rises once and sets once a year, about the equinoxes (sooner and later by air and disc).
    [Theory]
    [InlineData(90.0, 3, 9)]
    [InlineData(-90.0, 9, 3)]
    public void AtAPoleTheSunRisesOnceAndSetsOnceAYear(double latitude, int risingMonth, int settingMonth)
    {
        var pole = GeoPoint.FromDegrees(latitude, 0.0);
        var rises = new List<int>();
        var sets = new List<int>();
        for (var date = new LocalDate(2026, 1, 1); date.Year == 2026; date = date.PlusDays(1))
        {
            switch (SunDay.For(pole, date).Events)
            {
                case SunEvents.RisesOnly:
                    rises.Add(date.Month);
                    break;
                case SunEvents.SetsOnly:
                    sets.Add(date.Month);
                    break;
                case SunEvents.RisesAndSets:
                    Assert.Fail($"{date}: rises and sets at a pole");
                    break;
            }
        }

        Assert.Equal([risingMonth], rises);
        Assert.Equal([settingMonth], sets);
    }

    // Clock time of solar noon in standard time, first and last of 2026, worked by hand: 12:00 + 4 min x (15 x base offset - longitude) less the
    // largest (+16.45 min) and the smallest (-14.17 min) equation of time of that year in authorities/sun/eot_extrema_zeros.csv.
    [Theory]
    [InlineData("Tromso", "11:27.7", "11:58.3")]
    [InlineData("Vigo", "13:18.4", "13:49.1")]
    [InlineData("Kathmandu", "11:47.3", "12:17.9")]
    [InlineData("Nairobi", "12:16.3", "12:46.9")]
    [InlineData("Darwin", "12:30.2", "13:00.8")]
    [InlineData("Dunedin", "12:21.6", "12:52.2")]
    [InlineData("Ushuaia", "13:16.8", "13:47.4")]
    [InlineData("St. John's", "11:44.4", "12:15.0")]
    public void NoonByTheClockOverTheYear(string town, string first, string last)
    {
        var place = Town(town);
        var minutes = new List<double>();
        for (var date = new LocalDate(2026, 1, 1); date.Year == 2026; date = date.PlusDays(1))
        {
            var noon = SunDay.For(place, date).Transit.ToInstant();
            var clock = noon.WithOffset(place.Zone.RuleAt(noon).BaseOffset).LocalDateTime;
            Assert.Equal(date, clock.Date);
            minutes.Add((clock.TimeOfDay - LocalTime.Midnight).ToDuration().TotalMinutes);
        }

        // 0.06: the value is rounded to a tenth of a minute, and the noon nearest the turning point lies up to half a day from it (0.1 s).
        Assert.Equal(Minutes(first), minutes.Min(), 0.06);
        Assert.Equal(Minutes(last), minutes.Max(), 0.06);

        // N3 of the lesson on the date: 30.6 +- 0.5 min in any town.
        Assert.Equal(30.6, minutes.Max() - minutes.Min(), 0.1);
    }

    // Cross-check of the lessons, noon heights in June, at an equinox, in December 2026: 90 - |latitude - declination|.
    [Theory]
    [InlineData("Vigo", 71.2, 47.8, 24.3)]
    [InlineData("Kathmandu", 85.7, 62.3, 38.9)]
    [InlineData("Nairobi", 65.3, 88.7, 67.9)]
    [InlineData("Darwin", 54.1, 77.5, 79.0)]
    [InlineData("Dunedin", 20.7, 44.1, 67.6)]
    [InlineData("Ushuaia", 11.8, 35.2, 58.6)]
    [InlineData("St. John's", 65.9, 42.4, 19.0)]
    public void NoonHeights(string town, double june, double equinox, double december)
    {
        double Height(int month, int day) => SunDay.For(Town(town), new LocalDate(2026, month, day)).TransitAltitude.Degrees;
        Assert.Equal(june, Height(6, 21), 0.06);
        Assert.Equal(december, Height(12, 22), 0.06);

        // At the March equinox of 2026 (20 March 14:46 UTC) the declination at a town's noon is still within 0.25 degrees of nought.
        Assert.Equal(equinox, Height(3, 20), 0.3);
    }

    // Kiritimati keeps the clock of +210 degrees: the day of a date there is the one its clock says, not the one its longitude (-157) would.
    [Fact]
    public void TheDayIsTheClocksDayBeyondTheDateLine()
    {
        var place = Assert.IsType<PlaceAnswer.Found>(Gazetteer.Find("Kiritimati")).Place;
        var noon = SunDay.For(place, new LocalDate(2026, 11, 3)).Transit.ToInstant();
        Assert.Equal(new LocalDate(2026, 11, 3), place.Zone.ClockAt(noon).Date);
        Assert.InRange(place.Zone.ClockAt(noon).Hour, 11, 13);
    }

    [Fact]
    public void NoDayAnywhereGivesAnythingButAnAnswer()
    {
        var random = new Random(20261125);
        for (var i = 0; i < 1500; i++)
        {
            var place = GeoPoint.FromDegrees(random.NextDouble() * 180.0 - 90.0, random.NextDouble() * 360.0 - 180.0);
            var date = new LocalDate(1900, 1, 1).PlusDays(random.Next(73414));
            var day = SunDay.For(place, date);
            Assert.Equal(0.0, SolarEphemeris.At(day.Transit).HourAngleAt(place.Longitude).Degrees, 1e-7);
            switch (day.Events)
            {
                case SunEvents.RisesAndSets both:
                    Assert.Equal(-50.0 / 60.0, GeocentricAltitude(both.Rise, place), 1e-6);
                    Assert.Equal(-50.0 / 60.0, GeocentricAltitude(both.Set, place), 1e-6);
                    break;
                case SunEvents.NeverSets up:
                    Assert.True(up.Lowest.Degrees >= -50.0 / 60.0);
                    Assert.True(day.TransitAltitude.Degrees >= up.Lowest.Degrees);
                    break;
                case SunEvents.NeverRises down:
                    Assert.True(down.Highest.Degrees < -50.0 / 60.0);
                    Assert.True(day.TransitAltitude.Degrees <= down.Highest.Degrees + 1e-9);
                    break;
                case SunEvents.RisesOnly rise:
                    Assert.Equal(-50.0 / 60.0, GeocentricAltitude(rise.Rise, place), 1e-6);
                    break;
                case SunEvents.SetsOnly set:
                    Assert.Equal(-50.0 / 60.0, GeocentricAltitude(set.Set, place), 1e-6);
                    break;
            }
        }
    }

    private static double GeocentricAltitude(SunInstant instant, GeoPoint place)
    {
        var sun = SolarEphemeris.At(instant);
        var sine = place.Latitude.Angle.Sin * sun.Declination.Angle.Sin
            + place.Latitude.Angle.Cos * sun.Declination.Angle.Cos * sun.HourAngleAt(place.Longitude).Angle.Cos;
        return Math.Asin(sine) * 180.0 / Math.PI;
    }

    private static double Minutes(string clock)
    {
        var parts = clock.Split(':').Select(p => double.Parse(p, System.Globalization.CultureInfo.InvariantCulture)).ToArray();
        return parts[0] * 60.0 + parts[1];
    }
}
