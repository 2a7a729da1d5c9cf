using System.Globalization;
using SunLessons.Figures.Layout;

namespace SunLessons.Figures.Tests;

public class CoordinateTests
{
    [Theory]
    [InlineData(0, "0")]
    [InlineData(-0.004, "0")]
    [InlineData(0.005, "0.01")]
    [InlineData(-0.005, "-0.01")]
    [InlineData(0.05, "0.05")]
    [InlineData(0.5, "0.5")]
    [InlineData(9.996, "10")]
    [InlineData(-99.99, "-99.99")]
    [InlineData(100, "100")]
    [InlineData(640.1, "640.1")]
    [InlineData(90071992547409.5, "90071992547409.5")]
    public void A_coordinate_has_two_decimals_and_no_zeros_at_its_end(double value, string written) => Assert.Equal(written, Hundredths.Text(value));

    // The library's pattern writes the same digits, only slowly; it is given the same whole hundredths, so that both stand before the same rounding.
    [Fact]
    public void Thousands_of_coordinates_are_written_as_the_librarys_pattern_writes_them()
    {
        var random = new Random(20261126);
        for (var i = 0; i < 20_000; i++)
        {
            var value = (random.NextDouble() - 0.5) * Math.Pow(10, random.Next(0, 10));
            var hundredths = (decimal)Math.Round(value * 100, MidpointRounding.AwayFromZero);
            Assert.Equal((hundredths / 100).ToString("0.##", CultureInfo.InvariantCulture), Hundredths.Text(value));
        }
    }

    [Fact]
    public void Points_in_a_box_are_counted_as_one_by_one_and_no_further_than_asked()
    {
        var random = new Random(20261126);
        var ink = new InkMap(640, 400);
        var points = Enumerable.Range(0, 3000).Select(_ => (X: random.NextDouble() * 900 - 100, Y: random.NextDouble() * 600 - 100)).ToArray();
        foreach (var (x, y) in points)
        {
            ink.Add(x, y);
        }

        for (var i = 0; i < 500; i++)
        {
            var box = Box.At(random.NextDouble() * 700 - 50, random.NextDouble() * 450 - 50, random.NextDouble() * 120, random.NextDouble() * 40);
            var inside = points.Count(p => box.Contains(p.X, p.Y));
            Assert.Equal(inside, ink.Count(box, double.PositiveInfinity));
            Assert.InRange(ink.Count(box, 3), Math.Min(3, inside), inside);
        }
    }

    [Fact]
    public void Points_along_a_line_stand_at_equal_steps_without_its_ends()
    {
        var ink = new InkMap(100, 100);
        ink.AddAlong(10, 20, 30, 40, 1, 10);
        Assert.Equal(9, ink.Count(Box.At(10, 20, 30, 40), double.PositiveInfinity));
        Assert.Equal(1, ink.Count(Box.At(12.9, 23.9, 0.2, 0.2), double.PositiveInfinity));
        Assert.Equal(0, ink.Count(Box.At(9.9, 19.9, 0.2, 0.2), double.PositiveInfinity));
        Assert.Equal(0, ink.Count(Box.At(39.9, 59.9, 0.2, 0.2), double.PositiveInfinity));
    }
}
