using SunLessons.Magnetism;

namespace SunLessons.Tests.Magnetism;

/// <summary>From compass readings to true azimuths and back, worked by hand in all four quadrants and for all four kinds of instrument.</summary>
public class CompassTests
{
    private const CompassBuild Needle = CompassBuild.NeedleOverFixedCard;
    private const CompassBuild Card = CompassBuild.CardReadAtLubberLine;
    private const CompassGraduation Cw = CompassGraduation.Clockwise;
    private const CompassGraduation Acw = CompassGraduation.Anticlockwise;

    [Theory]

    // Sights at magnetic bearing 30 (quadrant I). Fixed card: the needle lies 30 to the LEFT of the sights. A clockwise card has 330 there,
    // an anticlockwise one 30. Moving card: the mark stands 30 to the RIGHT of the card's 0; clockwise 30 is there, anticlockwise 330.
    [InlineData(Needle, Cw, 330.0, 30.0)]
    [InlineData(Needle, Acw, 30.0, 30.0)]
    [InlineData(Card, Cw, 30.0, 30.0)]
    [InlineData(Card, Acw, 330.0, 30.0)]

    // Bearing 120 (II): needle 120 to the left of the sights: clockwise figure 360 - 120 = 240, anticlockwise 120; moving card the other way about.
    [InlineData(Needle, Cw, 240.0, 120.0)]
    [InlineData(Needle, Acw, 120.0, 120.0)]
    [InlineData(Card, Cw, 120.0, 120.0)]
    [InlineData(Card, Acw, 240.0, 120.0)]

    // Bearing 200 (III): needle 200 to the left = 160 to the right: clockwise figure 160, anticlockwise 200.
    [InlineData(Needle, Cw, 160.0, 200.0)]
    [InlineData(Needle, Acw, 200.0, 200.0)]
    [InlineData(Card, Cw, 200.0, 200.0)]
    [InlineData(Card, Acw, 160.0, 200.0)]

    // Bearing 310 (IV): needle 310 to the left = 50 to the right: clockwise figure 50, anticlockwise 310.
    [InlineData(Needle, Cw, 50.0, 310.0)]
    [InlineData(Needle, Acw, 310.0, 310.0)]
    [InlineData(Card, Cw, 310.0, 310.0)]
    [InlineData(Card, Acw, 50.0, 310.0)]

    // Along the axes: at 0 and 180 every kind agrees; at 90 they part.
    [InlineData(Needle, Cw, 0.0, 0.0)]
    [InlineData(Card, Acw, 180.0, 180.0)]
    [InlineData(Needle, Cw, 270.0, 90.0)]
    [InlineData(Card, Cw, 270.0, 270.0)]
    public void A_reading_gives_the_magnetic_bearing_of_the_sights_and_back(CompassBuild build, CompassGraduation graduation, double reading, double bearing)
    {
        var compass = new Compass(build, graduation);
        Same(bearing, compass.BearingAt(CompassReading.FromDegrees(reading)).Degrees);
        Same(reading, compass.ReadingAt(CompassBearing.FromDegrees(bearing)).Degrees);
    }

    [Theory]

    // Dunedin, declination 26.4 east, magnetic bearing 340: magnetic north stands 26.4 right of true north, the line 20 left of magnetic
    // north, so it stands 6.4 right of true north. (Subtracting would give 313.6, the usual slip.)
    [InlineData(340.0, 26.4, 6.4)]

    // St. John's, 16.6 west: magnetic north 16.6 left of true north. One line in each quadrant.
    [InlineData(40.0, -16.6, 23.4)]
    [InlineData(100.0, -16.6, 83.4)] // II -> I over east
    [InlineData(185.0, -16.6, 168.4)] // III -> II over south
    [InlineData(10.0, -16.6, 353.4)] // I -> IV over north

    // East declination over the axes.
    [InlineData(80.0, 26.4, 106.4)]
    [InlineData(170.0, 26.4, 196.4)]
    [InlineData(260.0, 26.4, 286.4)]
    public void True_is_magnetic_plus_declination_east_positive(double magnetic, double declination, double azimuth)
    {
        var d = MagneticDeclination.FromDegrees(declination);
        Same(azimuth, CompassSigns.TrueFromMagnetic(CompassBearing.FromDegrees(magnetic), d).Degrees);
        Same(magnetic, CompassSigns.MagneticFromTrue(Azimuth.FromDegrees(azimuth), d).Degrees);
    }

    [Fact]
    public void An_index_error_is_what_the_instrument_reads_too_much()
    {
        // Moving card, clockwise, reads 2 too much: shows 47 when a faultless one shows 45. Bearing 45, declination 10 west: true 35.
        var moving = new Compass(Card, Cw, Angle.FromDegrees(2.0));
        Same(35.0, moving.AzimuthAt(CompassReading.FromDegrees(47.0), MagneticDeclination.FromDegrees(-10.0)).Degrees);
        Same(47.0, moving.ReadingAt(Azimuth.FromDegrees(35.0), MagneticDeclination.FromDegrees(-10.0)).Degrees);

        // Needle over a clockwise card, reads 2 too much: shows 317 when a faultless one shows 315, that is, needle 45 left of the sights:
        // bearing 45, true 35. In figures of the card the error is again +2, though here it makes the bearing too small.
        var fixedCard = new Compass(Needle, Cw, Angle.FromDegrees(2.0));
        Same(35.0, fixedCard.AzimuthAt(CompassReading.FromDegrees(317.0), MagneticDeclination.FromDegrees(-10.0)).Degrees);
        Same(317.0, fixedCard.ReadingAt(Azimuth.FromDegrees(35.0), MagneticDeclination.FromDegrees(-10.0)).Degrees);

        // And it is found again from one known direction.
        Same(2.0, Compass.IndexErrorFrom(Needle, Cw, CompassReading.FromDegrees(317.0), Azimuth.FromDegrees(35.0), MagneticDeclination.FromDegrees(-10.0)).Degrees);
        Same(2.0, Compass.IndexErrorFrom(Card, Cw, CompassReading.FromDegrees(47.0), Azimuth.FromDegrees(35.0), MagneticDeclination.FromDegrees(-10.0)).Degrees);
        Same(-3.0, Compass.IndexErrorFrom(Card, Cw, CompassReading.FromDegrees(358.0), Azimuth.FromDegrees(1.0), default).Degrees);
    }

    [Fact]
    public void A_reversed_needle_is_an_index_error_of_half_a_turn()
    {
        // The wrong end is marked: the needle's marked end lies to the south. Sights to magnetic north: an anticlockwise card reads 180.
        var reversed = new Compass(Needle, Acw, Angle.FromDegrees(180.0));
        Same(0.0, reversed.BearingAt(CompassReading.FromDegrees(180.0)).Degrees);
        Same(90.0, reversed.BearingAt(CompassReading.FromDegrees(270.0)).Degrees);
    }

    [Theory]
    [InlineData(Needle, Cw, 1)]
    [InlineData(Needle, Acw, 2)]
    [InlineData(Card, Cw, 3)]
    [InlineData(Card, Acw, 4)]
    public void A_compass_of_brass_built_in_the_plane_reads_the_same(CompassBuild build, CompassGraduation graduation, int seed)
    {
        // A second route without any sign rule: put the 3600 tenth-degree strokes of the card into the plane as points (x east, y north),
        // let magnet and case turn, and look which stroke comes to lie under the needle's tip or under the mark.
        var random = new Random(seed);
        for (var round = 0; round < 50; round++)
        {
            var azimuth = random.Next(3600) / 10.0;
            var declination = random.Next(-1800, 1801) / 10.0;
            var indexStrokes = random.Next(-30, 31);

            // A point at radius 1 standing so many degrees clockwise of the y axis.
            static (double X, double Y) Clockwise(double degrees) => (Math.Sin(degrees * Math.PI / 180.0), Math.Cos(degrees * Math.PI / 180.0));

            // What carries the card, and what it is read against.
            var (cardTurn, mark) = build == Needle ? (azimuth, Clockwise(declination)) : (declination, Clockwise(azimuth));
            var nearest = Enumerable.Range(0, 3600).MinBy(stroke =>
            {
                var along = graduation == Cw ? stroke / 10.0 : -stroke / 10.0;
                var (x, y) = Clockwise(cardTurn + along);
                return (x - mark.X) * (x - mark.X) + (y - mark.Y) * (y - mark.Y);
            });

            // The engraver shifted every figure by the index error.
            var reading = CompassReading.FromDegrees((nearest + indexStrokes) / 10.0);
            var compass = new Compass(build, graduation, Angle.FromDegrees(indexStrokes / 10.0));
            Same(azimuth, compass.AzimuthAt(reading, MagneticDeclination.FromDegrees(declination)).Degrees);
        }
    }

    [Fact]
    public void A_dial_set_by_its_compass_stands_where_the_sights_point()
    {
        // Vigo, declination 1.0 west (-1.0). Needle brought to 0 of a fixed card: the noon line points to magnetic north, 1.0 anticlockwise of true.
        var compass = new Compass(Needle, Cw);
        Same(-1.0, compass.SettingAt(CompassReading.FromDegrees(0.0), MagneticDeclination.FromDegrees(-1.0)).Twist.Degrees);

        // The owner still uses "15 W": needle brought to 15 left of 0, which a clockwise card calls 345 and an anticlockwise one 15.
        // The sights then point 15 right of magnetic north, 14.0 right of true north.
        Same(14.0, compass.SettingAt(CompassReading.FromDegrees(345.0), MagneticDeclination.FromDegrees(-1.0)).Twist.Degrees);
        Same(14.0, new Compass(Needle, Acw).SettingAt(CompassReading.FromDegrees(15.0), MagneticDeclination.FromDegrees(-1.0)).Twist.Degrees);

        // The right reading for true north at 1.0 west: the needle lies 1.0 left of the noon line: 359 on a clockwise card.
        Same(359.0, compass.ReadingAt(Azimuth.FromDegrees(0.0), MagneticDeclination.FromDegrees(-1.0)).Degrees);
    }

    [Fact]
    public void An_unknown_kind_is_refused()
    {
        var error = Assert.Throws<ArgumentOutOfRangeException>(() => new Compass((CompassBuild)7, Cw));
        Assert.StartsWith(
            "Compass build 7 with graduation Clockwise is not known; use a needle over a fixed card or a card read at a lubber line, graduated clockwise or anticlockwise.",
            error.Message,
            StringComparison.Ordinal);
    }

    [Fact]
    public void Readings_and_bearings_stay_within_one_turn()
    {
        Same(345.0, CompassReading.FromDegrees(-15.0).Degrees);
        Same(5.0, CompassReading.FromDegrees(365.0).Degrees);
        Same(350.0, CompassBearing.FromDegrees(-10.0).Degrees);
        Same(10.0, CompassBearing.FromAngle(Angle.FromDegrees(370.0)).Degrees);
        Assert.Equal("reads 345°", CompassReading.FromDegrees(345.0).ToString());
        Assert.Equal("340° magnetic", CompassBearing.FromDegrees(340.0).ToString());
        Assert.Throws<ArgumentOutOfRangeException>(() => CompassReading.FromDegrees(double.NaN));
        Assert.Throws<ArgumentOutOfRangeException>(() => CompassBearing.FromDegrees(double.PositiveInfinity));
    }

    // 1e-9 degrees: nothing but additions of angles. 359.9999... and 0 are the same direction.
    private static void Same(double expected, double actual) =>
        Assert.Equal(0.0, Angle.FromDegrees(actual - expected).AroundZero().Degrees, 1e-9);
}
