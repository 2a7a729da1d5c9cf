using SunLessons.Cells.Checks;

namespace SunLessons.Cells.Tests;

public class AnswerParserTests
{
    [Theory]
    // plain numbers
    [InlineData("1.42", "", 1.42)]
    [InlineData("1,42", "", 1.42)]
    [InlineData(".5", "", 0.5)]
    [InlineData(",5", "", 0.5)]
    [InlineData("5.", "", 5)]
    [InlineData("+7", "", 7)]
    [InlineData("-7", "", -7)]
    [InlineData("\u22127", "", -7)]
    [InlineData("\u20137", "", -7)]
    [InlineData("- 7", "", -7)]
    [InlineData("  12  ", "", 12)]
    [InlineData("\u00A012\u2009", "", 12)]
    [InlineData("= 12", "", 12)]
    [InlineData("\u2248 12", "", 12)]
    [InlineData("-0", "", 0)]
    // minutes of time
    [InlineData("94.9", "min", 94.9)]
    [InlineData("94,9 min", "min", 94.9)]
    [InlineData("94.9min", "min", 94.9)]
    [InlineData("94.9 min.", "min", 94.9)]
    [InlineData("94.9 m", "min", 94.9)]
    [InlineData("94.9 minutes", "min", 94.9)]
    [InlineData("\u221215.8 min", "min", -15.8)]
    [InlineData("1:34", "min", 94)]
    [InlineData("1:34:54", "min", 94.9)]
    [InlineData("-0:15:48", "min", -15.8)]
    [InlineData("1 h 34 min 54 s", "min", 94.9)]
    [InlineData("1h34m54s", "min", 94.9)]
    [InlineData("1h34", "min", 94)]
    [InlineData("94 min 54 s", "min", 94.9)]
    [InlineData("5694 s", "min", 94.9)]
    [InlineData("1.5 hours", "min", 90)]
    // seconds, hours
    [InlineData("12.5 s", "s", 12.5)]
    [InlineData("2 min", "s", 120)]
    [InlineData("90 min", "h", 1.5)]
    [InlineData("1:30", "h", 1.5)]
    // clock times, in hours
    [InlineData("13:18", "clock", 13.3)]
    [InlineData("9:30", "clock", 9.5)]
    [InlineData("09:30:36", "clock", 9.51)]
    [InlineData("13h18", "clock", 13.3)]
    [InlineData("13 18", "clock", 13.3)]
    [InlineData("13", "clock", 13)]
    [InlineData("13:18 h", "clock", 13.3)]
    [InlineData("1:18 pm", "clock", 13.3)]
    [InlineData("12:00 am", "clock", 0)]
    [InlineData("12:30 PM", "clock", 12.5)]
    [InlineData("24:00", "clock", 24)]
    // angles
    [InlineData("33.9", "°", 33.9)]
    [InlineData("33.9°", "°", 33.9)]
    [InlineData("33,9 °", "°", 33.9)]
    [InlineData("33.9 deg", "°", 33.9)]
    [InlineData("33.9 degrees", "°", 33.9)]
    [InlineData("33.9\u00BA", "°", 33.9)]
    [InlineData("42 14 24", "°", 42.24)]
    [InlineData("42 14.4", "°", 42.24)]
    [InlineData("42° 14\u2032 24\u2033", "°", 42.24)]
    [InlineData("42°14'24\"", "°", 42.24)]
    [InlineData("42°14\u201924\u201D", "°", 42.24)]
    [InlineData("42° 14' 24''", "°", 42.24)]
    [InlineData("42d14m24s", "°", 42.24)]
    [InlineData("42d 14m 24s", "°", 42.24)]
    [InlineData("42 deg 14 min 24 sec", "°", 42.24)]
    [InlineData("42:14:24", "°", 42.24)]
    [InlineData("\u22120° 7\u2032", "°", -0.11666666666666667)]
    [InlineData("7'", "°", 0.11666666666666667)]
    [InlineData("122.5°", "bearing", 122.5)]
    // latitudes and longitudes
    [InlineData("42.24 N", "latitude", 42.24)]
    [InlineData("42.24° N", "latitude", 42.24)]
    [InlineData("45.87s", "latitude", -45.87)]
    [InlineData("S 45.87", "latitude", -45.87)]
    [InlineData("45° 52' 12\" S", "latitude", -45.87)]
    [InlineData("45 52 12 S", "latitude", -45.87)]
    [InlineData("45.87 south", "latitude", -45.87)]
    [InlineData("-45.87", "latitude", -45.87)]
    [InlineData("8,72 W", "longitude", -8.72)]
    [InlineData("8°43'12\"W", "longitude", -8.72)]
    [InlineData("W8.72", "longitude", -8.72)]
    [InlineData("130.84 E", "longitude", 130.84)]
    [InlineData("8.72 west", "longitude", -8.72)]
    // lengths, days
    [InlineData("23.6 mm", "mm", 23.6)]
    [InlineData("2.36 cm", "mm", 23.6)]
    [InlineData("0.0236 m", "mm", 23.6)]
    [InlineData("1420 mm", "m", 1.42)]
    [InlineData("1.42 metres", "m", 1.42)]
    [InlineData("111 km", "km", 111)]
    [InlineData("12", "cm", 12)]
    [InlineData("112 days", "days", 112)]
    [InlineData("112 d", "days", 112)]
    public void What_people_write_is_read(string text, string unit, double value)
    {
        var input = AnswerParser.Read(text, unit);

        Assert.Null(input.Problem);

        // Sixtieths are not exact in binary: a billionth is far below any tolerance of a check.
        Assert.Equal(value, input.Value!.Value, 1e-9);
    }

    [Theory]
    [InlineData(null, "min", "Nothing is written yet. Write minutes of time, such as 12.5 min.")]
    [InlineData("", "clock", "Nothing is written yet. Write a clock time, such as 13:18.")]
    [InlineData("   ", "", "Nothing is written yet. Write a number, such as 1.42.")]
    [InlineData("west", "min", "'west' cannot be read as minutes of time. Write it in digits, such as 12.5 min.")]
    [InlineData("-", "min", "'-' cannot be read as minutes of time. Write it in digits, such as 12.5 min.")]
    [InlineData("NaN", "", "'NaN' cannot be read as a number. Write it in digits, such as 1.42.")]
    [InlineData("1e5", "", "'1e5' cannot be read as a number. Write it in digits, such as 1.42.")]
    [InlineData("1.2.3", "", "'1.2.3' cannot be read as a number. Write it in digits, such as 1.42.")]
    [InlineData("1.234,5", "min", "'1.234,5' holds a point and a comma. Write one decimal sign and nothing between thousands, such as 12.5 min.")]
    [InlineData("12345678901234567890", "", "'12345678901234567890' cannot be read as a number. Write it in digits, such as 1.42.")]
    [InlineData("22.5°", "min", "'22.5°' is an angle, but the question asks for minutes of time. Write a number such as 12.5 min.")]
    [InlineData("94.9 min", "mm", "'94.9 min' is an amount of time, but the question asks for millimetres. Write a number such as 23.5 mm.")]
    [InlineData("5 km", "°", "'5 km' is a length, but the question asks for degrees. Write a number such as 33.5°.")]
    [InlineData("13.30", "clock", "'13.30' may mean a part of an hour or minutes. Write a clock time with a colon, such as 13:18.")]
    [InlineData("25:00", "clock", "'25:00' is outside 00:00 to 24:00. Write a clock time, such as 13:18.")]
    [InlineData("13:75", "clock", "'13:75' has minutes or seconds of 60 or more. Write a clock time, such as 13:18.")]
    [InlineData("13:18 pm", "clock", "'13:18 pm' cannot be read as a clock time. Write it in digits, such as 13:18.")]
    [InlineData("42° 75'", "°", "'42° 75'' has minutes or seconds of 60 or more. Write degrees, such as 33.5°.")]
    [InlineData("1 h 75 min", "min", "'1 h 75 min' has minutes or seconds of 60 or more. Write minutes of time, such as 12.5 min.")]
    [InlineData("97.3", "latitude", "'97.3' is outside -90 to +90 degrees (north positive). Did you write a longitude?")]
    [InlineData("197.3", "longitude", "'197.3' is outside -180 to +180 degrees (east positive). Write west with a minus or a W.")]
    [InlineData("8.72 W", "latitude", "'8.72 W' lies east or west, but a latitude lies north or south. Write N or S, such as 42.24 N.")]
    [InlineData("42.24 N", "longitude", "'42.24 N' lies north or south, but a longitude lies east or west. Write E or W, such as 8.72 W.")]
    [InlineData("-8.72 W", "longitude", "'-8.72 W' has a sign and a letter. Write either the sign or the letter, such as 8.72 W.")]
    [InlineData("122.5 S", "bearing", "'122.5 S' cannot be read as degrees from north through east. Write it in digits, such as 122.5°.")]
    [InlineData("1 2 3 4", "°", "'1 2 3 4' cannot be read as degrees. Write it in digits, such as 33.5°.")]
    [InlineData("94 54", "min", "'94 54' cannot be read as minutes of time. Write it in digits, such as 12.5 min.")]
    [InlineData("1.5 h 30 min", "min", "'1.5 h 30 min' cannot be read as minutes of time. Write it in digits, such as 12.5 min.")]
    [InlineData("one hundred and eleven kilometres, or a little more than that", "km", "That is too long to be one number. Write kilometres, such as 111 km.")]
    public void What_cannot_be_read_is_answered_in_one_sentence_or_two_short_ones(string? text, string unit, string problem)
    {
        var input = AnswerParser.Read(text, unit);

        Assert.Equal(problem, input.Problem);
        Assert.Null(input.Value);
    }

    [Fact]
    public void No_text_of_random_signs_breaks_it_or_gives_a_number_that_is_none()
    {
        // Arithmetic of a generator with a printed seed, so that a failure can be run again.
        var seed = Environment.TickCount;
        var random = new Random(seed);
        const string signs = "0123456789.,:-+ °'\"nsewhmdk\u2212x";
        string[] units = ["", "s", "min", "h", "clock", "°", "bearing", "latitude", "longitude", "mm", "km", "days"];
        for (var i = 0; i < 20_000; i++)
        {
            var text = new string([.. Enumerable.Range(0, random.Next(0, 14)).Select(_ => signs[random.Next(signs.Length)])]);
            var input = AnswerParser.Read(text, units[i % units.Length]);
            Assert.True(input.Value is { } value ? double.IsFinite(value) && input.Problem is null : input.Problem!.Length > 0, $"'{text}' as '{units[i % units.Length]}', seed {seed}");
        }
    }

    [Fact]
    public void A_unit_that_nobody_knows_is_refused() =>
        Assert.StartsWith("Unit 'furlong' is not one that answers are read in. Write one of s, min, h, clock,", Assert.Throws<ArgumentException>(() => AnswerParser.Read("1", "furlong")).Message);
}
