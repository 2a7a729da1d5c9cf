using NodaTime.TimeZones;
using SunLessons.Places;

namespace SunLessons.Tests.Places;

/// <summary>The eight towns and the database's zone locations.</summary>
public sealed class GazetteerTests
{
    [Theory]
    [InlineData("tromso", "Tromsø")]
    [InlineData("TROMSØ", "Tromsø")]
    [InlineData("St Johns", "St. John's")]
    [InlineData("vigo", "Vigo")]
    [InlineData("Buenos Aires", "Buenos Aires")]
    [InlineData("buenos_aires", "Buenos Aires")]
    public void APlaceIsFoundWhateverCaseAccentsAndPunctuation(string typed, string name) =>
        Assert.Equal(name, Assert.IsType<PlaceAnswer.Found>(Gazetteer.Find(typed)).Place.Name);

    // The longitude correction of each town, 4 minutes of time to the degree (common practice, no source), worked by hand from
    // its map longitude and the base offset of its zone in TZDB 2026f: 60 x hours - 4 x longitude.
    [Theory]
    [InlineData("Tromsø", -15.8)]
    [InlineData("Vigo", 94.9)]
    [InlineData("Kathmandu", 3.7)]
    [InlineData("Nairobi", 32.7)]
    [InlineData("Darwin", 46.6)]
    [InlineData("Dunedin", 38.0)]
    [InlineData("Ushuaia", 93.2)]
    [InlineData("St. John's", 0.8)]
    public void EachTownsLongitudeAndZoneGiveItsLongitudeCorrection(string name, double minutes)
    {
        var place = Gazetteer.Towns.Single(p => p.Name == name);
        var rule = place.Zone.RuleAt(NodaTime.Instant.FromUtc(2026, 1, 15, 12, 0));

        // 0.05: the hand-worked values are rounded to a tenth of a minute.
        Assert.Equal(minutes, 4.0 * (rule.Meridian.Degrees - place.Point.Longitude.Degrees), 0.05 + 1e-9);
    }

    // Positions of the same towns in the time-zone database's zone table, given there to a minute of arc.
    [Theory]
    [InlineData("Kathmandu", "Asia/Kathmandu")]
    [InlineData("Nairobi", "Africa/Nairobi")]
    [InlineData("Darwin", "Australia/Darwin")]
    [InlineData("Ushuaia", "America/Argentina/Ushuaia")]
    [InlineData("St. John's", "America/St_Johns")]
    public void TownsAgreeWithTheZoneTable(string name, string zone)
    {
        var place = Gazetteer.Towns.Single(p => p.Name == name);
        var listed = TzdbDateTimeZoneSource.Default.ZoneLocations!.Single(l => l.ZoneId == zone);

        // 0.02 degrees: half a minute of arc of rounding there, 0.005 degrees here, and a town is some kilometres wide.
        Assert.Equal(listed.Latitude, place.Point.Latitude.Degrees, 0.02);
        Assert.Equal(listed.Longitude, place.Point.Longitude.Degrees, 0.02);
    }

    [Fact]
    public void EveryPlaceHasAKnownZoneAndNoNameOfATownIsListedTwice()
    {
        Assert.Equal(8, Gazetteer.Towns.Count);
        Assert.True(Gazetteer.All.Count > 400, $"{Gazetteer.All.Count} places");
        foreach (var place in Gazetteer.All)
        {
            Assert.Equal(place.ZoneId, place.Zone.Id);
        }

        foreach (var town in Gazetteer.Towns)
        {
            Assert.Single(Gazetteer.All, p => p.Name == town.Name);
        }
    }

    [Fact]
    public void AnUnknownPlaceComesWithNearMatches()
    {
        var unknown = Assert.IsType<PlaceAnswer.Unknown>(Gazetteer.Find("Vgio"));
        Assert.Equal("Vigo", unknown.NearMatches[0].Name);
        Assert.StartsWith($"Place \"Vgio\" is not in the gazetteer of {Gazetteer.All.Count} towns. Did you mean Vigo", unknown.Message, StringComparison.Ordinal);

        var nowhere = Assert.IsType<PlaceAnswer.Unknown>(Gazetteer.Find("qqqqqqqq"));
        Assert.EndsWith("Give latitude, longitude and zone instead, such as 42.24 -8.72 Europe/Madrid.", nowhere.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void SearchSuggestsByPartOfANameOrByCountry()
    {
        Assert.Equal("Dunedin", Gazetteer.Search("dun")[0].Name);
        Assert.Contains(Gazetteer.Search("nepal"), p => p.Name == "Kathmandu");
    }
}
