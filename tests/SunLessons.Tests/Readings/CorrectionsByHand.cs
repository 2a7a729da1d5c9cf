using NodaTime;
using SunLessons.Places;
using SunLessons.Readings;

namespace SunLessons.Tests.Readings;

/// <summary>
/// Readings of a dial that stands right, corrected by hand in four towns. The equation of time comes from ERFA (authorities/sun/sun_daily_2026_12h_ut1.csv),
/// interpolated by hand; longitudes and offsets from the map and the time-zone database.
/// </summary>
public class CorrectionsByHand
{
    [Fact]
    public void Vigo_at_noon_of_the_June_solstice()
    {
        // Longitude: 4 (15 x 1 + 8.72) = 94.88.
        // Date: the clock is near 14:36.7, 12:36.7 UT. ERFA at 12h UT: 21 June -109.036 s, 22 June -122.103 s; 0.612 h later
        //   -109.036 - 13.067 x 0.612/24 = -109.369 s = -1.823 min, so add 1.823.
        // Law: summer time, 60. 12:00 + 94.88 + 1.823 + 60 = 156.703 min = 14:36.703.
        var chain = OneAt("Vigo", new LocalDate(2026, 6, 21), DialTime.FromHoursMinutes(12, 0));
        Compare(chain, [0.0, 0.0, 94.88, 1.823, 60.0], 14 * 60 + 36.703);
        Assert.Equal("add 94.9 min: the dial is west of the zone's meridian", chain[StepName.Longitude].InWords);
        Assert.Equal("add 1.8 min: the Sun is behind the mean clock on this date", chain[StepName.Date].InWords);
        Assert.Equal("add 60.0 min: daylight time is in force", chain[StepName.Law].InWords);
        Assert.StartsWith("14:36.7 on 21 June 2026 (UTC+1 and 60 min daylight time), give or take ", chain.Summary);
    }

    [Fact]
    public void Dunedin_on_a_summer_morning_in_December()
    {
        // Longitude: 4 (15 x 12 - 170.50) = 38.00.
        // Date: the clock is near 11:06, UTC+13, so 22:06 UT of 21 December. ERFA at 12h UT: 21 Dec +116.124 s, 22 Dec +86.396 s; 10.10 h later
        //   116.124 - 29.728 x 10.10/24 = 103.61 s = 1.727 min, so subtract it.
        // Law: 60. 9:30 + 38.00 - 1.727 + 60 = 11:06.273.
        var chain = OneAt("Dunedin", new LocalDate(2026, 12, 22), DialTime.FromHoursMinutes(9, 30));
        Compare(chain, [0.0, 0.0, 38.0, -1.727, 60.0], 11 * 60 + 6.273);
        Assert.Equal("subtract 1.7 min: the Sun is ahead of the mean clock on this date", chain[StepName.Date].InWords);
    }

    [Fact]
    public void Nairobi_on_an_equinox_afternoon()
    {
        // Longitude: 4 (15 x 3 - 36.82) = 32.72. Date: near 11:55 UT; ERFA 20 March 12h UT -446.186 s, changing by +0.74 s an hour:
        //   -446.25 s = -7.437 min, so add it. No daylight time. 14:15 + 32.72 + 7.437 = 14:55.157.
        var chain = OneAt("Nairobi", new LocalDate(2026, 3, 20), DialTime.FromHoursMinutes(14, 15));
        Compare(chain, [0.0, 0.0, 32.72, 7.437, 0.0], 14 * 60 + 55.157);
        Assert.Equal("add 0.0 min: no daylight time is in force", chain[StepName.Law].InWords);
    }

    [Fact]
    public void Kathmandu_in_November_with_its_quarter_hours()
    {
        // Longitude: 4 (15 x 5.75 - 85.32) = 4 x 0.93 = 3.72.
        // Date: near 10:27, so 04:42 UT; the curve is at its top: ERFA 2 Nov 986.541 s, 3 Nov 986.822 s, 4 Nov 986.267 s at 12h UT; second difference -0.836;
        //   p = 0.696 of the first gap: 986.541 + 0.696 x 0.281 + 0.836 x 0.696 x 0.304 / 2 = 986.825 s = 16.447 min, so subtract it.
        // 10:40 + 3.72 - 16.447 = 10:27.273.
        var chain = OneAt("Kathmandu", new LocalDate(2026, 11, 3), DialTime.FromHoursMinutes(10, 40));
        Compare(chain, [0.0, 0.0, 3.72, -16.447, 0.0], 10 * 60 + 27.273);
    }

    internal static ReadingChain OneAt(string town, LocalDate date, DialTime shown, DialProfile? profile = null)
    {
        var place = Assert.IsType<PlaceAnswer.Found>(Gazetteer.Find(town)).Place;
        return Assert.IsType<ClockReading.One>(ClockFromDial.Read(place, date, shown, profile)).Chain;
    }

    internal static void Compare(ReadingChain chain, double[] amounts, double clockMinutes)
    {
        Assert.Equal([StepName.Scale, StepName.Setting, StepName.Longitude, StepName.Date, StepName.Law], chain.Steps.Select(step => step.Name));
        for (var i = 0; i < 5; i++)
        {
            // 0.001 minutes: the hand's arithmetic carries three decimals, and UT1 is a few hundredths of a second off UTC.
            Assert.Equal(amounts[i], chain.Steps[i].Amount.Minutes, 0.0015);
        }

        Assert.Equal(clockMinutes, chain.Clock.TimeOfDay.NanosecondOfDay / 6e10, 0.002);
    }
}
