using SunLessons.Readings;
using SunLessons.Uncertainty;

namespace SunLessons.Tests.Readings;

public class ComponentSizes
{
    [Fact]
    public void Every_size_has_a_source_and_none_is_negative()
    {
        var sizes = typeof(ReadingComponents).GetProperties().Select(p => (ComponentSize)p.GetValue(null)!).ToList();
        Assert.Equal(12, sizes.Count);
        Assert.All(sizes, size => Assert.True(size.Source.Length > 20 && size.Size > 0.0 && size.StandardUncertainty > 0.0, size.ToString()));
        Assert.Equal(sizes.Count, sizes.Select(size => size.Name).Distinct().Count());
    }

    [Fact]
    public void Sizes_that_are_reasoned_from_lengths_are_what_the_lengths_give()
    {
        // Small angles: 0.1/25, 0.5/20 and 0.5/30 of a radian, 57.3 degrees; 2e-3 relative for the arctangent and the short factor.
        Assert.Equal(0.1 / 25 * 57.3, ReadingComponents.HourLineEngraving.Size, 0.003);
        Assert.Equal(0.5 / 20 * 57.3, ReadingComponents.CompassReading.Size, 0.003);
        Assert.Equal(0.5 / 30 * 57.3, ReadingComponents.StyleHeight.Size, 0.003);
        Assert.Equal(2.1, 2 * ReadingComponents.ShadowEdge.Size, 0.05); // The blur of 2.1 minutes.
    }

    [Fact]
    public void Half_widths_become_standard_uncertainties_as_the_GUM_says()
    {
        // JCGM 100:2008, 4.3.7: a²/3; 4.3.9: a²/6.
        ComponentSize Of(Distribution shape) => new("x", 6.0, ComponentUnit.Minutes, shape, "an example of arithmetic");
        Assert.Equal(3.4641016151377544, Of(Distribution.Uniform).StandardUncertainty, 12);
        Assert.Equal(2.449489742783178, Of(Distribution.Triangular).StandardUncertainty, 12);
        Assert.Equal(6.0, Of(Distribution.Normal).StandardUncertainty, 12);
        Assert.Equal("x: within 6 minutes either way", Of(Distribution.Uniform).ToString());
        Assert.Equal("x: 6 minutes standard", Of(Distribution.Normal).ToString());
    }
}
