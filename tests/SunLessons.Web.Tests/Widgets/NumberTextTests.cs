using SunLessons.Web.Widgets;
using SunLessons.Words;

namespace SunLessons.Web.Tests.Widgets;

public sealed class NumberTextTests
{
    private static readonly LanguageCulture English = LanguageCulture.Of("en");
    private static readonly LanguageCulture Spanish = LanguageCulture.Of("es");

    [Fact]
    public void A_Spanish_page_writes_a_comma_and_says_what_is_allowed_in_Spanish()
    {
        Assert.Equal("-8,75", NumberText.Write(-8.75, 0.25, Spanish));
        Assert.Equal((8.72, null), NumberText.Read("8.72", -180, 180, "Longitud", Spanish));
        Assert.Equal((null, "«oeste» no es un número; para Longitud escribe uno de -0,5 a 2, como 0,75."), NumberText.Read("oeste", -0.5, 2, "Longitud", Spanish));
    }

    [Theory]
    [InlineData("8.72", 8.72)]
    [InlineData("8,72", 8.72)]
    [InlineData("-8.72", -8.72)]
    [InlineData("\u22128,72", -8.72)]
    [InlineData("  180 ", 180.0)]
    public void A_number_is_read_with_comma_or_point(string text, double value)
    {
        Assert.Equal((value, null), NumberText.Read(text, -180, 180, "Longitude", English));
    }

    [Theory]
    [InlineData("west", "“west” is not a number; for Longitude write one from -180 to 180, such as 0.")]
    [InlineData("", "“” is not a number; for Longitude write one from -180 to 180, such as 0.")]
    [InlineData("NaN", "“NaN” is not a number; for Longitude write one from -180 to 180, such as 0.")]
    [InlineData("1e999", "“1e999” is not a number; for Longitude write one from -180 to 180, such as 0.")]
    [InlineData("190", "190 is outside -180 to 180 for Longitude; write a number in that range.")]
    public void What_cannot_be_used_is_said_in_one_sentence(string text, string sentence)
    {
        Assert.Equal((null, sentence), NumberText.Read(text, -180, 180, "Longitude", English));
    }

    [Theory]
    [InlineData(-8.72, 0.01, "-8.72")]
    [InlineData(5.75, 0.25, "5.75")]
    [InlineData(5.0, 0.25, "5")]
    [InlineData(0.1 + 0.2, 0.1, "0.3")]
    public void A_number_is_written_with_the_decimals_of_its_step(double value, double step, string text)
    {
        Assert.Equal(text, NumberText.Write(value, step, English));
    }

    [Fact]
    public void A_hundred_small_steps_stay_on_the_grid_and_within_the_bounds()
    {
        var value = -8.72;
        for (var step = 0; step < 100; step++)
        {
            value = NumberText.OnGrid(value + 0.01, -180, 180, 0.01);
        }

        Assert.Equal(-7.72, value);
        Assert.Equal(180.0, NumberText.OnGrid(180.01, -180, 180, 0.01));
    }
}
