using SunLessons.Web.Sessions;

namespace SunLessons.Web.Tests.Sessions;

public sealed class PlaceTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("sunlessons-place-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void A_typed_place_south_of_the_equator_is_kept_for_the_next_start()
    {
        var draft = new PlaceDraft { Name = "Our school", Latitude = "45° 52′ 12″ S", Longitude = "170,5", Zone = "Pacific/Auckland" };
        var place = draft.Read();
        Assert.NotNull(place);
        new LearnerSettings(_folder).MoveTo(place);
        var kept = new LearnerSettings(_folder).Place;
        Assert.Equal(("Our school", -45.87, 170.5, "Pacific/Auckland"), (kept.Name, Math.Round(kept.Point.Latitude.Degrees, 9), kept.Point.Longitude.Degrees, kept.ZoneId));
    }

    [Fact]
    public void Each_field_that_cannot_be_used_says_so_and_the_texts_stay()
    {
        var draft = new PlaceDraft { Name = "x", Latitude = "97.3", Longitude = "200", Zone = "Europe/Madird" };
        Assert.Null(draft.Read());
        Assert.Equal("Latitude 97.3 degrees is outside -90 to +90 degrees (north positive). Did you swap latitude and longitude?", draft.LatitudeProblem);
        Assert.Equal("Longitude 200 degrees is outside -180 to +180 degrees (east positive). Write west as a negative number or with W.", draft.LongitudeProblem);
        Assert.Contains("Did you mean Europe/Madrid?", draft.ZoneProblem, StringComparison.Ordinal);
        Assert.Equal(("97.3", "200", "Europe/Madird"), (draft.Latitude, draft.Longitude, draft.Zone));
    }

    [Theory]
    [InlineData("{ half a file")]
    [InlineData("""{"place":{"name":"x","latitude_degrees":123,"longitude_degrees":0,"zone":"Europe/Madrid"}}""")]
    [InlineData("""{"place":{"name":"x"}}""")]
    [InlineData("[]")]
    public void A_damaged_file_is_set_aside_and_the_default_taken(string content)
    {
        var file = Path.Combine(_folder, "settings.json");
        File.WriteAllText(file, content);
        Assert.Equal(LearnerSettings.DefaultPlace, new LearnerSettings(_folder).Place);
        Assert.Equal(content, File.ReadAllText(file + ".damaged"));
    }
}
