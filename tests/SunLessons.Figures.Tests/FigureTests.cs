namespace SunLessons.Figures.Tests;

public class FigureTests
{
    [Fact]
    public void A_verb_leaves_the_old_figure_as_it_was()
    {
        var before = Figure.Titled("t");

        var after = before.Line("a", [0, 1], [2, 3]);

        Assert.Empty(before.Series);
        Assert.Single(after.Series);
    }

    [Fact]
    public void The_summary_changes_with_the_numbers()
    {
        static Figure With(double top) => Figure.Titled("t").Across("hour", "h").Up("height", "°").Line("Sun", [6, 12, 18], [0, top, 0]);

        Assert.Equal("Sun: from 0.0° at 6.0 h to 47.8° at 12.0 h.", With(47.8).Summary);
        Assert.Equal("Sun: from 0.0° at 6.0 h to 24.3° at 12.0 h.", With(24.3).Summary);
        Assert.Equal("Line graph of height (°) against hour (h): Sun.", With(1).Description);
    }

    [Theory]
    [InlineData(9.5, "09:30")]
    [InlineData(13.3, "13:18")]
    [InlineData(-0.25, "23:45")]
    [InlineData(24.0, "00:00")]
    public void Clock_axes_say_times(double hours, string said) => Assert.Equal(said, new Axis("t", Kind: AxisKind.Clock).Say(hours));

    [Theory]
    [InlineData(1, "1 Jan")]
    [InlineData(59, "28 Feb")]
    [InlineData(60, "1 Mar")]
    [InlineData(172, "21 Jun")]
    [InlineData(365, "31 Dec")]
    public void Year_axes_say_dates(double day, string said) => Assert.Equal(said, new Axis("d", Kind: AxisKind.DayOfYear).Say(day));

    [Theory]
    [InlineData(-2.04, "\u22122.0 min")]
    [InlineData(-0.04, "0.0 min")]
    [InlineData(0.05, "0.1 min")]
    [InlineData(double.NaN, "none")]
    public void Number_axes_say_numbers_with_a_real_minus_and_no_minus_zero(double value, string said) => Assert.Equal(said, new Axis("n", "min").Say(value));

    [Fact]
    public void Lists_of_different_length_are_refused_in_one_sentence()
    {
        var error = Assert.Throws<ArgumentException>(() => Figure.Titled("t").Line("a", [1, 2], [1]));

        Assert.StartsWith("Series 'a' has 2 positions but 1 values. Give one value for each position.", error.Message);
    }

    [Fact]
    public void An_axis_the_wrong_way_round_is_refused_in_one_sentence()
    {
        var error = Assert.Throws<ArgumentException>(() => Figure.Titled("t").Across("hour", "h", 18, 6));

        Assert.StartsWith("Axis 'hour' runs from 18.00 to 6.00; give the smaller end first.", error.Message);
    }

    [Fact]
    public void Series_are_equal_when_their_numbers_are_gaps_included()
    {
        Assert.Equal(Series.Of("a", [1, 2], [1, double.NaN]), Series.Of("a", [1, 2], [1, double.NaN]));
        Assert.NotEqual(Series.Of("a", [1, 2], [1, 2]), Series.Of("a", [1, 2], [1, 3]));
    }
}
