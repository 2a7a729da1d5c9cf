using SunLessons.Sun;

namespace SunLessons.Tests.Sun;

/// <summary>Rise, transit and set against ERFA 2.0, all 150 rows of authorities/sun.</summary>
public sealed class SunDayAccuracyTests
{
    [Fact]
    public void RiseTransitAndSetAtAHundredAndFiftyPlacesAndDays()
    {
        var table = ErfaTable.Read("sun_rise_transit_set_150.csv");
        Differences rise = new(), transit = new(), set = new(), altitude = new();
        foreach (var row in table.Rows)
        {
            var place = GeoPoint.FromDegrees(table.Number(row, "lat_deg"), table.Number(row, "lon_deg"));
            var deltaT = table.Number(row, "tt_minus_ut1_s");

            // Asked from two hours off, so that the transit is found and not merely confirmed.
            var day = SunDay.Around(SunInstant.FromUt1(table.Number(row, "transit_ut1_jd") + 2.0 / 24.0, deltaT), place);
            var events = Assert.IsType<SunEvents.RisesAndSets>(day.Events);
            rise.Add((events.Rise.Ut1JulianDate - table.Number(row, "rise_ut1_jd")) * 86400.0);
            transit.Add((day.Transit.Ut1JulianDate - table.Number(row, "transit_ut1_jd")) * 86400.0);
            set.Add((events.Set.Ut1JulianDate - table.Number(row, "set_ut1_jd")) * 86400.0);
            altitude.Add((day.TransitAltitude.Degrees - table.Number(row, "transit_altitude_geocentric_deg")) * 3600.0);
        }

        Assert.Equal(150, transit.Count);

        // 0.043 s: half of the table's last place (1e-6 day); 0.020 s: the equation of time's own worst; risings add 0.17" of declination,
        // worth up to 0.03 s at these latitudes.
        Assert.True(transit.Worst < 0.07, transit.ToString());
        Assert.True(rise.Worst < 0.10, rise.ToString());
        Assert.True(set.Worst < 0.10, set.ToString());

        // 0.0018": half of the table's last place; 0.17": the declination's own worst.
        Assert.True(altitude.Worst < 0.18, altitude.ToString());
    }
}
