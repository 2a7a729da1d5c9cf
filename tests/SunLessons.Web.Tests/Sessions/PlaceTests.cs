using SunLessons.Web.Sessions;
using SunLessons.Words;

namespace SunLessons.Web.Tests.Sessions;

public sealed class PlaceTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("sunlessons-place-").FullName;

    private static readonly LanguageCulture English = LanguageCulture.Of("en");
    private static readonly LanguageCulture Spanish = LanguageCulture.Of("es");

    [Fact]
    public void A_Spanish_page_shows_a_place_with_comma_and_oeste_and_reads_it_back()
    {
        var draft = PlaceDraft.From(LearnerSettings.DefaultPlace, Spanish);
        Assert.Equal(("42,24° N", "8,72° O"), (draft.Latitude, draft.Longitude));
        Assert.Equal(LearnerSettings.DefaultPlace.Point.Longitude.Degrees, draft.Read(Spanish)!.Point.Longitude.Degrees, 9);

        // In an English page the letter O is none: it may as well be meant for east, as in German.
        Assert.Null(draft.Read(English));
        foreach (var east in (string[])["8,72 E", "8.72 e"])
        {
            draft.Longitude = east;
            Assert.Equal(8.72, draft.Read(Spanish)!.Point.Longitude.Degrees, 9);
        }
    }

    [Theory]
    [InlineData("97,3", "La latitud 97,3 está fuera de -90 a +90 grados (norte positivo). ¿Has cambiado la latitud por la longitud?", "8 O", null)]
    [InlineData("mucho", "La latitud «mucho» no se puede leer; se admite de -90 a +90 grados (norte positivo): escríbela como 42,24 o 42° 14′ N.", "-8 O", "La longitud «-8 O» lleva a la vez un signo menos y la letra O; escribe solo uno de los dos, como -8,72 u 8° 43′ O.")]
    [InlineData("", "La latitud está vacía; se admite de -90 a +90 grados (norte positivo): escríbela como 42,24 o 42° 14′ N.", "200 O", "La longitud -200 está fuera de -180 a +180 grados (este positivo). Escribe el oeste con un menos o con una O.")]
    [InlineData("4 61 N", "La latitud «4 61 N» tiene 60 minutos o segundos, o más; van de 0 a 59: escríbela como 42,24 o 42° 14′ N.", "-8 E", "La longitud «-8 E» lleva a la vez un signo menos y la letra E; escribe solo uno de los dos, como -8,72 u 8° 43′ O.")]
    public void What_cannot_be_used_is_said_in_the_pages_language(string latitude, string latitudeProblem, string longitude, string? longitudeProblem)
    {
        var draft = new PlaceDraft { Name = "x", Latitude = latitude, Longitude = longitude, Zone = "Europe/Madird" };
        Assert.Null(draft.Read(Spanish));
        Assert.Equal((latitudeProblem, longitudeProblem), (draft.LatitudeProblem, draft.LongitudeProblem));
        Assert.StartsWith("La zona «Europe/Madird» no está en la base de datos de zonas horarias 20", draft.ZoneProblem, StringComparison.Ordinal);
        Assert.EndsWith("¿Querías decir Europe/Madrid?", draft.ZoneProblem, StringComparison.Ordinal);
    }

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void A_typed_place_south_of_the_equator_is_kept_for_the_next_start()
    {
        var draft = new PlaceDraft { Name = "Our school", Latitude = "45° 52′ 12″ S", Longitude = "170,5", Zone = "Pacific/Auckland" };
        var place = draft.Read(English);
        Assert.NotNull(place);
        new LearnerSettings(_folder).MoveTo(place);
        var kept = new LearnerSettings(_folder).Place;
        Assert.Equal(("Our school", -45.87, 170.5, "Pacific/Auckland"), (kept.Name, Math.Round(kept.Point.Latitude.Degrees, 9), kept.Point.Longitude.Degrees, kept.ZoneId));
    }

    [Fact]
    public void Each_field_that_cannot_be_used_says_so_and_the_texts_stay()
    {
        var draft = new PlaceDraft { Name = "x", Latitude = "97.3", Longitude = "200", Zone = "Europe/Madird" };
        Assert.Null(draft.Read(English));
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
