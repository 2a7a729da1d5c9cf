using NodaTime;
using SunLessons.Dials;
using SunLessons.Magnetism;
using SunLessons.Readings;

namespace SunLessons.Tests.Readings;

/// <summary>
/// Crooked dials in four towns, worked by hand from the Sun to the shadow: the true solar hour is chosen, the reading follows by plane and spherical
/// trigonometry, and the library must find the way back. Declination d and equation of time E from ERFA (authorities/sun/sun_daily_2026_12h_ut1.csv),
/// interpolated through three days.
/// Formulas: sin a = sin f sin d + cos f cos d cos H; tan A = -cos d sin H / (cos f sin d - sin f cos d cos H), A from north through east.
/// On a level plate turned by t clockwise with a style of elevation p towards its north, the shadow has
/// x = -sin p cos a sin(A - t) to the plate's east and y = sin a cos p - sin p cos a cos(A - t) to its north;
/// the scale for latitude s shows tan H' = x / (y sin s). On a southern plate the style points to the plate's south: y = -sin a cos p - sin p cos a cos(A - t)
/// with p positive, and tan H' = x / (-y sin |s|).
/// </summary>
public class FullCorrectionsByHand
{
    [Fact]
    public void Vigo_in_December_with_a_49_degree_dial_set_by_a_line_for_15_west()
    {
        // 22 December 2026, H = -30 (10:00). UT about 10:33: d = -23.4361, E = 1.4697 min. f = 42.24: a = 18.7168, A = 151.0290.
        // Needle 1.0 W today, line 15 W: the plate stands -1.0 + 15 = 14.0 clockwise, A - t = 137.0290.
        // Style and scale 49: x = -0.48723, y = 0.73354, tan H' = -0.48723 / (0.73354 x 0.75471) -> H' = -41.3507: shows 9:14.597.
        // Standing right it would show with A itself H' = -28.7592: scale = 4 (-30 + 28.7592) = -4.963, setting = 4 (-28.7592 + 41.3507) = 50.366.
        // Longitude 94.88, date -1.470, law 0: 9:14.597 - 4.963 + 50.366 + 94.880 - 1.470 = 11:33.410.
        var chain = CorrectionsByHand.OneAt("Vigo", new LocalDate(2026, 12, 22), DialTime.FromHoursMinutes(9, 14.5972), new DialProfile
        {
            ScaleLatitude = Latitude.FromDegrees(49),
            Setting = ByLine(-15.0, today: -1.0),
        });
        Compare(chain, [-4.9630, 50.3658, 94.88, -1.4697, 0.0], 11 * 60 + 33.4103);
        Assert.Equal("subtract 5.0 min: the scale is made for 49° N and the place is at 42.24° N", chain[StepName.Scale].InWords);
        Assert.Equal("add 50.4 min: the noon line points 14.0 degrees clockwise (east) of true north", chain[StepName.Setting].InWords);
    }

    [Fact]
    public void Dunedin_in_December_with_a_45_degree_dial_set_by_the_bare_needle()
    {
        // 22 December 2026, H = +45 (15:00). UT about 03:36: d = -23.4371, E = 1.6132 min. f = -45.87: a = 47.4947, A = 286.2190 (the Sun stands north-west).
        // Needle 26.4 E, no line: the plate stands 26.4 clockwise, A - t = 259.8190.
        // Style and scale 45 S: x = 0.47024, y = -0.43684, tan H' = 0.47024 / (0.43684 x 0.70711) -> H' = 56.6998: shows 15:46.799.
        // Standing right H' = 44.7378: scale = 4 (45 - 44.7378) = 1.049, setting = 4 (44.7378 - 56.6998) = -47.848.
        // Longitude 38.00, date -1.613, law 60: 15:46.799 + 1.049 - 47.848 + 38.000 - 1.613 + 60 = 16:36.387.
        var chain = CorrectionsByHand.OneAt("Dunedin", new LocalDate(2026, 12, 22), DialTime.FromHoursMinutes(15, 46.7991), new DialProfile
        {
            ScaleLatitude = Latitude.FromDegrees(-45),
            Setting = ByLine(0.0, today: 26.4),
        });
        Compare(chain, [1.0487, -47.8477, 38.0, -1.6132, 60.0], 16 * 60 + 36.3868);
    }

    [Fact]
    public void Nairobi_at_the_equinox_with_a_5_degree_dial()
    {
        // 20 March 2026, H = -45 (9:00). UT about 06:40: d = -0.1333, E = -7.5017 min. f = -1.29: a = 44.9896, A = 88.8987.
        // Needle 0.3 E: A - t = 88.5987. Style and scale 5 S: x = -0.06162, y = -0.70580, tan H' = -0.06162 / (0.70580 x 0.08716) -> H' = -45.0498: 8:59.801.
        // Standing right H' = -45.0662: scale = 4 (-45 + 45.0662) = 0.265, setting = 4 (-45.0662 + 45.0498) = -0.066.
        // Longitude 32.72, date 7.502, law 0: 8:59.801 + 0.265 - 0.066 + 32.720 + 7.502 = 9:40.222.
        var chain = CorrectionsByHand.OneAt("Nairobi", new LocalDate(2026, 3, 20), DialTime.FromHoursMinutes(8, 59.8007), new DialProfile
        {
            ScaleLatitude = Latitude.FromDegrees(-5),
            Setting = ByLine(0.0, today: 0.3),
        });
        Compare(chain, [0.2648, -0.0655, 32.72, 7.5017, 0.0], 9 * 60 + 40.2217);
    }

    [Fact]
    public void Kathmandu_in_November_with_a_30_degree_scale_and_the_style_set_for_the_place()
    {
        // 3 November 2026, H = +30 (14:00). UT about 08:02: d = -15.0995, E = 16.4472 min. f = 27.72: a = 38.2427, A = 217.9259.
        // Needle 0.4 E, line 2 W: the plate stands 0.4 + 2 = 2.4 clockwise, A - t = 215.5259.
        // Style 27.72, scale 30: x = 0.21228, y = 0.84528, tan H' = 0.21228 / (0.84528 x 0.5) -> H' = 26.6693: shows 13:46.677.
        // Standing right H' = 28.2407: scale = 4 (30 - 28.2407) = 7.037, setting = 4 (28.2407 - 26.6693) = 6.285.
        // Longitude 4 (86.25 - 85.32) = 3.72, date -16.447, law 0: 13:46.677 + 7.037 + 6.285 + 3.720 - 16.447 = 13:47.273.
        var chain = CorrectionsByHand.OneAt("Kathmandu", new LocalDate(2026, 11, 3), DialTime.FromHoursMinutes(13, 46.6774), new DialProfile
        {
            ScaleLatitude = Latitude.FromDegrees(30),
            Style = StyleSet.ForPlace,
            Setting = ByLine(-2.0, today: 0.4),
        });
        Compare(chain, [7.0372, 6.2854, 3.72, -16.4472, 0.0], 13 * 60 + 47.2728);
        Assert.Equal(
            "add 7.0 min: the scale is made for 30° N and the place is at 27.72° N, with the style set for the place", chain[StepName.Scale].InWords);
    }

    private static DialSetting.NeedleOnLine ByLine(double madeForDegrees, double today) =>
        new(new CompassLine(MagneticDeclination.FromDegrees(madeForDegrees))) { MeasuredDeclination = MagneticDeclination.FromDegrees(today) };

    private static void Compare(ReadingChain chain, double[] amounts, double clockMinutes)
    {
        for (var i = 0; i < 5; i++)
        {
            // 0.003 minutes: angles by hand carry four decimals (0.0004 minutes, times up to 5 at Nairobi) and UT1 is a few hundredths of a second off UTC.
            Assert.Equal(amounts[i], chain.Steps[i].Amount.Minutes, 0.003);
        }

        Assert.Equal(clockMinutes, chain.Clock.TimeOfDay.NanosecondOfDay / 6e10, 0.003);
    }
}
