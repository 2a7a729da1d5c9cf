using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using SunLessons.Words;

namespace SunLessons.Figures.Tests;

public class PlotlyWriterTests
{
    private static Figure Day(double size, double end = 18) => Figure.Titled("Error").AcrossClock("Dial time", 6, 18).Up("Error", "min", -12, 4)
        .Curve("error", 6, end, h => -5.4 + size * Math.Cos((h - 12) * Math.PI / 12), points: 13)
        .Line("zero", [6, 18], [0, 0]);

    public static TheoryData<string> Names => [.. Samples.All.Keys];

    [Theory]
    [MemberData(nameof(Names))]
    public void The_whole_figure_has_data_layout_and_config_and_the_series_as_they_are(string name)
    {
        var figure = Samples.All[name];

        var tree = PlotlyWriter.WriteTree(figure);

        Assert.Equal(["config", "data", "layout"], tree.Select(m => m.Key).Order());
        var traces = (JsonArray)tree["data"]!;
        Assert.Equal(figure.Series.Length, traces.Count);
        foreach (var (series, trace) in figure.Series.Zip(traces))
        {
            Assert.Equal(series.Name, trace!["name"]!.GetValue<string>());
            var y = (JsonArray)trace["y"]!;
            for (var i = 0; i < series.Count; i++)
            {
                // Six decimals are written: half of the last one is allowed.
                if (double.IsFinite(series.Y[i]))
                {
                    Assert.Equal(series.Y[i], y[i]!.GetValue<double>(), 0.5e-6);
                }
                else
                {
                    Assert.Null(y[i]);
                }
            }
        }
    }

    [Fact]
    public void The_default_theme_is_left_out() =>
        Assert.False(((JsonObject)PlotlyWriter.WriteTree(Samples.All["one-day"])["layout"]!).ContainsKey("template"));

    [Theory]
    [InlineData("en", ".,")]
    [InlineData("es", ",\u00a0")]
    public void The_numbers_that_plotly_writes_itself_have_the_languages_signs(string language, string signs)
    {
        CultureInfo.CurrentCulture = LanguageCulture.Of(language);
        Assert.Equal(signs, (string?)PlotlyWriter.WriteTree(Samples.All["one-day"])["layout"]!["separators"]);
    }

    [Fact]
    public void A_full_figure_is_written_as_it_was() => Snapshot.Matches(
        "one-day.plotly.json",
        PlotlyWriter.WriteTree(Samples.All["one-day"]).ToJsonString(new JsonSerializerOptions { WriteIndented = true }));

    [Fact]
    public void Only_the_series_that_moved_is_sent()
    {
        var changes = PlotlyWriter.Changes(Day(3), Day(4))!;

        Assert.Equal("[0]", changes["traces"]!.ToJsonString());
        Assert.Equal(13, ((JsonArray)changes["y"]![0]!).Count);
        Assert.Equal(-1.4, ((JsonArray)changes["y"]![0]!)[6]!.GetValue<double>(), 6);
        Assert.Equal("12:00: \u22121.4 min", ((JsonArray)changes["hovertext"]![0]!)[6]!.GetValue<string>());
    }

    [Fact]
    public void A_line_that_ends_elsewhere_takes_its_label_along()
    {
        var changes = PlotlyWriter.Changes(Day(3), Day(3, end: 14))!;

        Assert.True(((JsonObject)changes["layout"]!).ContainsKey("annotations"));
    }

    [Fact]
    public void Nothing_changed_gives_an_empty_object() => Assert.Empty(PlotlyWriter.Changes(Day(3), Day(3))!);

    [Fact]
    public void An_axis_that_grows_is_told_by_a_dotted_key()
    {
        var changes = PlotlyWriter.Changes(
            Figure.Titled("t").Line("a", [0, 1], [0, 1]),
            Figure.Titled("t").Line("a", [0, 1], [0, 3]))!;

        Assert.Equal(0, changes["layout"]!["yaxis.range"]![0]!.GetValue<double>());
        Assert.True(changes["layout"]!["yaxis.range"]![1]!.GetValue<double>() >= 3);
    }

    [Fact]
    public void A_message_holds_all_that_moved_since_the_whole_figure_so_that_earlier_ones_may_be_passed_over()
    {
        static Figure Two(double a, double b) => Figure.Titled("t").Across("x", "", 0, 1).Up("y", "", 0, 9).Line("a", [0, 1], [0, a]).Line("b", [0, 1], [0, b]);
        var columns = new PlotlyColumns(Two(1, 1));

        Assert.Equal("[0]", columns.Next(Two(5, 1))!["traces"]!.ToJsonString());
        var last = columns.Next(Two(1, 7))!;

        Assert.Equal("[0,1]", last["traces"]!.ToJsonString());
        Assert.Equal("[[0,1],[0,7]]", last["y"]!.ToJsonString());
        Assert.True(((JsonObject)last["layout"]!).ContainsKey("annotations"));
        Assert.Empty(columns.Next(Two(1, 7))!);
    }

    [Fact]
    public void A_range_and_its_ticks_move_together()
    {
        var first = Figure.Titled("t").Across("x", "°", 0, 1).Line("a", [0, 1], [0, 1]);

        var changes = PlotlyWriter.Changes(first, first.Across("x", "°", 0, 50))!;

        Assert.Equal(50, changes["layout"]!["xaxis.range"]![1]!.GetValue<double>());
        Assert.Contains("50", changes["layout"]!["xaxis.ticktext"]!.ToJsonString());
    }

    [Fact]
    public void Other_series_need_the_whole_figure()
    {
        Assert.Null(PlotlyWriter.Changes(Day(3), Day(3).Point("p", 12, 0)));
        Assert.Null(PlotlyWriter.Changes(Day(3), Figure.Titled("Error").Curve("other", 6, 18, h => h)));
    }

    [Fact]
    public void Words_of_a_person_stay_words()
    {
        var text = PlotlyWriter.Write(Figure.Titled("a <b>bold</b> & more").Line("<img src=x>", [0, 1], [0, 1]));

        Assert.DoesNotContain("<img", JsonNode.Parse(text)!["layout"]!["annotations"]!.ToJsonString(new JsonSerializerOptions { Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping }));
        Assert.Equal("<b>a &lt;b&gt;bold&lt;/b&gt; &amp; more</b>", JsonNode.Parse(text)!["layout"]!["annotations"]![0]!["text"]!.GetValue<string>());
    }

    [Fact]
    public void The_script_comes_out_of_the_assembly_with_its_licence()
    {
        using var script = new StreamReader(PlotlyScript.Open());
        using var licence = new StreamReader(PlotlyScript.OpenLicence());

        // The head of the file names the version; the licence file is webpack's list of notices, all beginning with a comment.
        var head = new char[200];
        script.ReadBlock(head);
        Assert.Contains("plotly.js v" + PlotlyScript.Version, new string(head));
        Assert.Equal("2.28.0", PlotlyScript.Version);
        Assert.Contains("MIT", licence.ReadToEnd());
    }
}
