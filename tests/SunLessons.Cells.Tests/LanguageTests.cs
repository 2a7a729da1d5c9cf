using NodaTime;
using SunLessons.Cells.Checks;
using SunLessons.Figures;
using SunLessons.Places;
using SunLessons.Readings;
using static SunLessons.Cells.Say;

namespace SunLessons.Cells.Tests;

/// <summary>A lesson that says in its first cell that it is written in Spanish.</summary>
public sealed class LanguageTests
{
    private readonly Page _page = new();

    public LanguageTests()
    {
        _page.Lesson.BecomeCurrent();
        Language("es");
    }

    [Fact]
    public void Buttons_and_replies_are_Spanish_with_a_decimal_comma()
    {
        var check = NumberCheck("step", "¿Cuánto?", way => way.Made(UsualSlips.StepWrongWay) ? -94.88 : 94.88, 0.5, "min", [Slip(UsualSlips.StepWrongWay, "Al oeste se suma.")], ["a", "b", "c"], "d");
        Show(check);
        string Reply(string typed)
        {
            _page.Last("TextModel").ChangeFromPage(System.Text.Json.Nodes.JsonValue.Create(typed));
            _page.Press("check-answer");
            return check.Reply;
        }

        Assert.Equal("Comprobar mi respuesta", (string?)_page.Host.Part("step", "check-answer").State["description"]);
        Assert.Equal("Bien: 94,9 min.", Reply("94,88"));
        Assert.Equal("Todavía no: más y menos cambiados. Al oeste se suma.", Reply("-94,9 minutos"));
        Assert.Equal("Todavía no hay nada escrito. Escribe minutos de tiempo, como 12,5 min.", Reply(""));
    }

    [Theory]
    [InlineData("8,72 O", -8.72)]
    [InlineData("8,72° oeste", -8.72)]
    [InlineData("8.72 W", -8.72)]
    [InlineData("15 grados este", 15)]
    public void Sides_of_the_world_are_read_in_Spanish_and_in_English(string typed, double degrees)
    {
        Assert.Equal(degrees, AnswerParser.Read(typed, "longitude").Value);
    }

    [Fact]
    public void Figures_write_months_and_numbers_in_Spanish()
    {
        var figure = Figure.Titled("Mediodía").AcrossYear().Up("Paso", "min").Line("paso", [1, 172], [-3.5, 94.88]);

        Assert.Equal("Gráfico de líneas de Paso (min) según Fecha: paso.", figure.Description);
        Assert.Equal("paso: de −3,5 min en 1 ene a 94,9 min en 21 jun.", figure.Summary);
        Assert.Equal("−3,50", figure.Table.Rows[0][1]);

        // A program reads the other table: nothing of a language is in it.
        Assert.Equal("-3.5", figure.Table.PlainRows[0][1]);
    }

    [Fact]
    public void What_a_cell_writes_itself_follows_the_language_too()
    {
        var minutes = 94.88;

        Assert.Equal("+94,9 min", minutes.ToString("+0.0;−0.0") + " min");
        Assert.Equal("3 de noviembre de 2026", $"{new LocalDate(2026, 11, 3):d 'de' MMMM 'de' uuuu}");
    }

    [Fact]
    public void The_chain_of_the_library_is_told_again_in_Spanish()
    {
        var vigo = Gazetteer.Towns.First(town => town.Name == "Vigo");
        var chain = Steps("chain", "Vigo", () => ClockFromDial.Read(vigo, new LocalDate(2026, 6, 21), DialTime.FromHours(12)));

        Assert.Equal(["lo que marca el cuadrante", "escala", "orientación", "longitud", "fecha", "ley"], chain.Rows.Select(row => row.Name));
        Assert.Equal("suma 94,9 min: el cuadrante está al oeste del meridiano de referencia", chain.Rows[3].Words);
        Assert.StartsWith("suma 60,0 min: rige el horario de verano (reglas de zonas horarias 20", chain.Rows[5].Words, StringComparison.Ordinal);
        Assert.Equal("+94,9 min", chain.Rows[3].Amount);

        // No step's cause is left in English.
        Assert.All(chain.Rows, row => Assert.DoesNotContain(" the ", row.Words, StringComparison.Ordinal));
    }

    [Fact]
    public void A_prediction_is_dated_in_Spanish()
    {
        var guess = Predict("guess", "¿Cuándo?", "12:00", "13:18");
        Show(guess);
        guess.RecordExample();

        Assert.Contains("Anotado el 21 de junio de 2026, 12:00 UT.", (string?)_page.Host.Part("guess", "status").State["value"], StringComparison.Ordinal);
        Assert.Equal("Predicción anotada", (string?)_page.Host.Part("guess", "record-prediction").State["description"]);
    }

    [Fact]
    public void A_date_control_says_its_date_in_Spanish_beside_the_field()
    {
        var day = Date("day", "Fecha", new LocalDate(2026, 11, 3));
        Show(day);
        var picker = _page.Role("date");
        Assert.Equal("3 de noviembre de 2026", (string?)picker.State["_sunlessons_text"]);
        picker.ChangeFromPage(System.Text.Json.Nodes.JsonNode.Parse("""{"value":{"year":2028,"month":1,"date":29}}""")!.AsObject());
        Assert.Equal("29 de febrero de 2028", (string?)picker.State["_sunlessons_text"]);
    }

    [Fact]
    public void A_place_of_ones_own_is_written_with_commas_wherever_it_lies()
    {
        var place = PlaceControl();
        _page.Lesson.MoveTo(new Place("La escuela", GeoPoint.FromDegrees(-33.5, 70.25), "America/Santiago"));
        Assert.Equal("La escuela, 33,5° S 70,25° E", place.Position);
        _page.Lesson.MoveTo(new Place("La escuela", GeoPoint.FromDegrees(33.5, -70.25), "America/Santiago"));
        Assert.Equal("La escuela, 33,5° N 70,25° O", place.Position);
    }

    [Fact]
    public void A_language_without_words_is_refused_in_one_sentence()
    {
        Assert.StartsWith("There are no words in the language 'xx'. Write one of en, es.", Assert.Throws<ArgumentException>(() => Language("xx")).Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Another_lesson_beside_it_stays_English()
    {
        Task<string> english;
        using (ExecutionContext.SuppressFlow())
        {
            english = Task.Run(() => new Page().Lesson.Predict("guess", "When?", "12:00", "13:18").PlainText);
        }

        Assert.Equal("When? No prediction is recorded yet.", await english);
    }
}
