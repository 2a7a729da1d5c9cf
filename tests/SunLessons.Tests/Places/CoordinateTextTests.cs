using SunLessons.Places;

namespace SunLessons.Tests.Places;

public sealed class CoordinateTextTests
{
    [Theory]
    [InlineData("42.24", 42.24)]
    [InlineData("42,24", 42.24)]
    [InlineData("-45.87", -45.87)]
    [InlineData("\u221245,87", -45.87)]
    [InlineData("45.87 S", -45.87)]
    [InlineData("S 45.87", -45.87)]
    [InlineData("45.87s", -45.87)]
    [InlineData("42° 14′ 24″ N", 42.24)]
    [InlineData("42°14'24\" N", 42.24)]
    [InlineData("42 14 24 n", 42.24)]
    [InlineData("0 7 30 S", -0.125)]
    [InlineData("90", 90.0)]
    public void Latitudes_are_read_as_people_write_them(string text, double degrees)
    {
        Assert.True(CoordinateText.TryReadLatitude(text, out var latitude, out var problem), problem);
        Assert.Equal(degrees, latitude.Degrees, 1e-9);
    }

    [Theory]
    [InlineData("8.72 W", -8.72)]
    [InlineData("8° 43′ 12″ W", -8.72)]
    [InlineData("170,5 E", 170.5)]
    [InlineData("-180", -180.0)]
    public void Longitudes_are_read_as_people_write_them(string text, double degrees)
    {
        Assert.True(CoordinateText.TryReadLongitude(text, out var longitude, out var problem), problem);
        Assert.Equal(degrees, longitude.Degrees, 1e-9);
    }

    [Theory]
    [InlineData("97.3", "Latitude 97.3 degrees is outside -90 to +90 degrees (north positive). Did you swap latitude and longitude?")]
    [InlineData("", "Latitude “” cannot be read; -90 to +90 degrees (north positive) are allowed: write it like 42.24 or 42° 14′ N.")]
    [InlineData("north", "Latitude “north” cannot be read; -90 to +90 degrees (north positive) are allowed: write it like 42.24 or 42° 14′ N.")]
    [InlineData("8.72 W", "Latitude “8.72 W” cannot be read; -90 to +90 degrees (north positive) are allowed: write it like 42.24 or 42° 14′ N.")]
    [InlineData("-45.87 S", "Latitude “-45.87 S” has both a minus sign and the letter S; write only one of them, like 42.24 or 42° 14′ N.")]
    [InlineData("42 75", "Latitude “42 75” has minutes or seconds of 60 or more; they go from 0 to 59: write it like 42.24 or 42° 14′ N.")]
    public void What_cannot_be_used_is_said_in_one_sentence(string text, string sentence)
    {
        Assert.False(CoordinateText.TryReadLatitude(text, out _, out var problem));
        Assert.Equal(sentence, problem);
    }

    [Fact]
    public void A_longitude_beyond_the_date_line_is_refused()
    {
        Assert.False(CoordinateText.TryReadLongitude("190", out _, out var problem));
        Assert.Equal("Longitude 190 degrees is outside -180 to +180 degrees (east positive). Write west as a negative number or with W.", problem);
    }
}
