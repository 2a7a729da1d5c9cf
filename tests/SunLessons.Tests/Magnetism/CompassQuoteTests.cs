using SunLessons.Magnetism;

namespace SunLessons.Tests.Magnetism;

/// <summary>Variations as people and dials quote them.</summary>
public class CompassQuoteTests
{
    [Theory]
    [InlineData("15 W", -15.0)]
    [InlineData("15W", -15.0)]
    [InlineData("W15", -15.0)]
    [InlineData("15° W", -15.0)]
    [InlineData("15º w", -15.0)]
    [InlineData("15 degrees west", -15.0)]
    [InlineData("15 deg W", -15.0)]
    [InlineData("E 3.5", 3.5)]
    [InlineData("East 3.5°", 3.5)]
    [InlineData("3.5 e", 3.5)]
    [InlineData("  0 W ", 0.0)]
    [InlineData("180 E", 180.0)]
    [InlineData("15°30' W", -15.5)] // 30' is half a degree
    [InlineData("15° 30′ W", -15.5)]
    [InlineData("15d 30' west", -15.5)]
    [InlineData("0°7'30\" W", -0.125)] // 7.5' of 60
    [InlineData("W 15°30′36″", -15.51)] // 36" is 0.01 degree
    public void A_letter_decides_whatever_the_source_counts_positive(string text, double east)
    {
        Assert.Equal(east, CompassQuote.Parse(text).Degrees, 1e-12);
        Assert.Equal(east, CompassQuote.Parse(text, CompassQuoteSign.WestPositive).Degrees, 1e-12);
    }

    [Theory]
    [InlineData("-15", -15.0)]
    [InlineData("\u221215", -15.0)] // the typographer's minus
    [InlineData("- 15°", -15.0)]
    [InlineData("+3.5", 3.5)]
    [InlineData("3.5", 3.5)]
    [InlineData(".5", 0.5)]
    [InlineData("-15°30'", -15.5)]
    [InlineData("-0°7'30\"", -0.125)]
    public void A_number_without_a_letter_follows_the_source(string text, double eastWhenEastPositive)
    {
        Assert.Equal(eastWhenEastPositive, CompassQuote.Parse(text).Degrees, 1e-12);
        Assert.Equal(eastWhenEastPositive, CompassQuote.Parse(text, CompassQuoteSign.EastPositive).Degrees, 1e-12);
        Assert.Equal(-eastWhenEastPositive, CompassQuote.Parse(text, CompassQuoteSign.WestPositive).Degrees, 1e-12);
    }

    [Theory]
    [InlineData(null, "Variation is empty: allowed are 0 to 180 degrees with E or W, or signed degrees from -180 to +180; write 15 W or -15.")]
    [InlineData("  ", "Variation is empty: allowed are 0 to 180 degrees with E or W, or signed degrees from -180 to +180; write 15 W or -15.")]
    [InlineData("-15 W", "Variation \"-15 W\" has both a sign and a letter: allowed is one of them; write 15 W or -15.")]
    [InlineData("W +15", "Variation \"W +15\" has both a sign and a letter: allowed is one of them; write 15 W or -15.")]
    [InlineData("3,5 E", "Variation \"3,5 E\" has a comma: allowed is a decimal point; write 3.5 E, not 3,5 E.")]
    [InlineData("15 O", "Variation \"15 O\" has the letter O, which means west in some languages and east in others: allowed are E and W; write 15 W or 15 E.")]
    [InlineData("15 N", "Variation \"15 N\" has N or S: a variation goes east or west of north, allowed are E and W; write 15 W or 15 E.")]
    [InlineData("15 left", "Variation \"15 left\" has \"left\" where a side belongs: allowed are E and W; write 15 W or 15 E.")]
    [InlineData("195 W", "Variation \"195 W\" is outside 0 to 180 degrees east or west: a compass cannot be out by more; write the smaller angle the other way round.")]
    [InlineData("-181", "Variation \"-181\" is outside 0 to 180 degrees east or west: a compass cannot be out by more; write the smaller angle the other way round.")]
    [InlineData("15°60' W", "Variation \"15°60' W\" has 60 or more minutes or seconds: allowed are 0 up to 60 of each; write 15°30' W or 15.5 W.")]
    [InlineData("15 30 W", "Variation \"15 30 W\" is not understood: allowed are 0 to 180 degrees with E or W, or signed degrees from -180 to +180; write 15 W, 15°30' W or -15.")]
    [InlineData("E 15 W", "Variation \"E 15 W\" is not understood: allowed are 0 to 180 degrees with E or W, or signed degrees from -180 to +180; write 15 W, 15°30' W or -15.")]
    [InlineData("W", "Variation \"W\" is not understood: allowed are 0 to 180 degrees with E or W, or signed degrees from -180 to +180; write 15 W, 15°30' W or -15.")]
    [InlineData("NaN", "Variation \"NaN\" is not understood: allowed are 0 to 180 degrees with E or W, or signed degrees from -180 to +180; write 15 W, 15°30' W or -15.")]
    [InlineData("--15", "Variation \"--15\" is not understood: allowed are 0 to 180 degrees with E or W, or signed degrees from -180 to +180; write 15 W, 15°30' W or -15.")]
    public void What_cannot_be_read_is_refused_in_one_sentence(string? text, string message)
    {
        Assert.Equal(message, Assert.Throws<FormatException>(() => CompassQuote.Parse(text)).Message);
        Assert.False(CompassQuote.TryParse(text, CompassQuoteSign.EastPositive, out var value, out var error));
        Assert.Equal(message, error);
        Assert.Equal(default, value);
    }

    [Fact]
    public void A_long_text_is_not_repeated_whole()
    {
        var error = Assert.Throws<FormatException>(() => CompassQuote.Parse(new string('9', 5_000))).Message;
        Assert.StartsWith("Variation \"" + new string('9', 40) + "...\" is outside 0 to 180 degrees", error, StringComparison.Ordinal);
        Assert.True(CompassQuote.TryParse("15 W", CompassQuoteSign.EastPositive, out _, out var none));
        Assert.Null(none);
    }
}
