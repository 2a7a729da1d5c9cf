using SunLessons.Web.Widgets;

namespace SunLessons.Web.Tests.Widgets;

public sealed class NumberTextTests
{
    [Theory]
    [InlineData("8.72", 8.72)]
    [InlineData("8,72", 8.72)]
    [InlineData("-8.72", -8.72)]
    [InlineData("\u22128,72", -8.72)]
    [InlineData("  180 ", 180.0)]
    public void A_number_is_read_with_comma_or_point(string text, double value)
    {
        Assert.Equal((value, null), NumberText.Read(text, -180, 180, "Longitude"));
    }

    [Theory]
    [InlineData("west", "“west” is not a number; for Longitude write one from -180 to 180, such as 0.")]
    [InlineData("", "“” is not a number; for Longitude write one from -180 to 180, such as 0.")]
    [InlineData("NaN", "“NaN” is not a number; for Longitude write one from -180 to 180, such as 0.")]
    [InlineData("1e999", "“1e999” is not a number; for Longitude write one from -180 to 180, such as 0.")]
    [InlineData("190", "190 is outside -180 to 180 for Longitude; write a number in that range.")]
    public void What_cannot_be_used_is_said_in_one_sentence(string text, string sentence)
    {
        Assert.Equal((null, sentence), NumberText.Read(text, -180, 180, "Longitude"));
    }

    [Theory]
    [InlineData(-8.72, 0.01, "-8.72")]
    [InlineData(5.75, 0.25, "5.75")]
    [InlineData(5.0, 0.25, "5")]
    [InlineData(0.1 + 0.2, 0.1, "0.3")]
    public void A_number_is_written_with_the_decimals_of_its_step(double value, double step, string text)
    {
        Assert.Equal(text, NumberText.Write(value, step));
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
