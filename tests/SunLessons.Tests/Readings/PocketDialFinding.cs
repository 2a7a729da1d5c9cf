using NodaTime;
using SunLessons.Dials;
using SunLessons.Magnetism;
using SunLessons.Places;
using SunLessons.Readings;

namespace SunLessons.Tests.Readings;

/// <summary>
/// Is a pocket dial with a compass and scales five degrees apart good to 10 to 20 minutes (common practice, no source)? The sizes of the components were
/// fixed before these totals were computed (see <see cref="ReadingComponents"/>). Found, expanded uncertainty k = 2, 2026, solar 7:00 to 17:00 with the Sun
/// at least 10 degrees high, equinoxes and solstices:
/// corrected for the scale, towns from 27.7 to 69.7 degrees: 6.0 to 9.6 minutes; nearest scale not corrected for: 6.0 to 10.6 with the style set for the scale,
/// 6.0 to 13.7 with the style set for the place. So outside the tropics it is as good as said and rather better, if it is used with the care that the sizes
/// suppose: level within a degree, needle within half a millimetre, iron a metre away. An engraved variation line that is 3 degrees out of date
/// alone shifts it by 4 to 12 minutes, which fills the range. In the tropics it is not so: Darwin 7.2 to 12.9 corrected and up to 29 not; at Nairobi 47 minutes and more,
/// because a level plate's hour lines crowd together there and half a millimetre at the style or a tenth at a line is worth many minutes.
/// </summary>
public class PocketDialFinding
{
    private static readonly LocalDate[] Days = [new(2026, 3, 20), new(2026, 6, 21), new(2026, 9, 23), new(2026, 12, 22)];
    private static readonly string[] OutsideTropics = ["Tromso", "St. John's", "Vigo", "Kathmandu", "Dunedin", "Ushuaia"];

    [Theory]
    [InlineData("corrected for the scale", StyleSet.ForScale, false, 6.0, 9.6)]
    [InlineData("nearest scale, style set for it", StyleSet.ForScale, true, 6.0, 10.6)]
    [InlineData("nearest scale, style set for the place", StyleSet.ForPlace, true, 6.0, 13.7)]
    public void Outside_the_tropics_it_comes_out_good_to_6_to_14_minutes(string how, StyleSet style, bool nearest, double least, double most)
    {
        var all = OutsideTropics.SelectMany(town => Expanded(town, style, nearest)).ToList();
        Assert.True(all.Count > 300, how);

        // Rounded to a tenth as stated above.
        Assert.Equal(least, Math.Round(all.Min(), 1), 9);
        Assert.Equal(most, Math.Round(all.Max(), 1), 9);
    }

    [Theory]
    [InlineData("Darwin", false, 7.2, 12.9)]
    [InlineData("Darwin", true, 7.2, 29.1)]
    [InlineData("Nairobi", false, 47.3, 102.2)]
    public void In_the_tropics_a_level_pocket_dial_is_worse(string town, bool nearest, double least, double most)
    {
        var all = Expanded(town, StyleSet.ForPlace, nearest).ToList();
        Assert.Equal(least, Math.Round(all.Min(), 1), 9);
        Assert.Equal(most, Math.Round(all.Max(), 1), 9);
    }

    [Fact]
    public void A_line_three_degrees_out_of_date_shifts_the_noon_of_the_six_towns_by_4_to_12_minutes()
    {
        // Common practice, no source: an old compass correction can be some 3 degrees out of date after a century.
        var shifts = OutsideTropics.SelectMany(town => new[] { 23.44, 0.0, -23.44 }.Select(d => DialError.FastMinutes(
                FlatDial.For(Found(town).Point.Latitude), DialStance.FromDegrees(3), Found(town).Point.Latitude, HourAngle.FromDegrees(0), SolarDeclination.FromDegrees(d))))
            .OfType<double>()
            .Select(Math.Abs)
            .Where(minutes => minutes > 2.0) // Kathmandu's June noon, one degree from overhead, hardly feels a twist.
            .ToList();
        Assert.Equal(16, shifts.Count);
        Assert.InRange(shifts.Min(), 4.0, 4.5);
        Assert.InRange(shifts.Max(), 11.5, 13.0);
    }

    [Fact]
    public void The_largest_parts_are_level_and_compass()
    {
        var chain = Chain("Vigo", new LocalDate(2026, 12, 22), 12.0, StyleSet.ForScale, nearest: false)!;
        Assert.Equal(["reading the compass", "iron near the compass", "model of the Earth's field"], chain.Budget.Largest().Select(line => line.Quantity.Name));
        var june = Chain("Vigo", new LocalDate(2026, 6, 21), 12.0, StyleSet.ForScale, nearest: false)!;
        Assert.Equal("level, east to west", june.Budget.Largest(1).Single().Quantity.Name);
    }

    private static IEnumerable<double> Expanded(string town, StyleSet style, bool nearest)
    {
        foreach (var day in Days)
        {
            for (var hour = 7.0; hour <= 17.0; hour += 0.5)
            {
                if (Chain(town, day, hour, style, nearest) is { SunAltitude.Degrees: >= 10.0 } chain)
                {
                    yield return chain.Budget.ExpandedUncertainty;
                }
            }
        }
    }

    private static ReadingChain? Chain(string town, LocalDate day, double hour, StyleSet style, bool nearest)
    {
        var place = Found(town);
        var north = Assert.IsType<NorthAnswer.Known>(MagneticField.At(place.Point, day.At(LocalTime.Noon).InUtc().ToInstant()));
        var profile = new DialProfile
        {
            Style = style,
            DateByTable = true,
            NearestOfScalesApart = nearest ? Angle.FromDegrees(5.0) : null,
            Setting = new DialSetting.NeedleOnLine(new CompassLine(north.Declination)),
        };
        return ClockFromDial.Read(place, day, DialTime.FromHours(hour), profile) is ClockReading.One one ? one.Chain : null;
    }

    private static Place Found(string town) => Assert.IsType<PlaceAnswer.Found>(Gazetteer.Find(town)).Place;
}
