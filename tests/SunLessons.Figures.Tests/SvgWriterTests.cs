using System.Globalization;
using System.Xml.Linq;
using SunLessons.Figures.Layout;

namespace SunLessons.Figures.Tests;

public class SvgWriterTests
{
    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    public static TheoryData<string, double> Drawings
    {
        get
        {
            var rows = new TheoryData<string, double>();
            foreach (var name in Samples.All.Keys)
            {
                foreach (var width in new[] { 320.0, 480.0, 640.0, 1000.0 })
                {
                    rows.Add(name, width);
                }
            }

            return rows;
        }
    }

    [Theory]
    [MemberData(nameof(Drawings))]
    public void It_is_well_formed_named_and_described_and_holds_no_script(string name, double width)
    {
        var figure = Samples.All[name];

        var root = XDocument.Parse(SvgWriter.Write(figure, new SvgOptions { Width = width, IdPrefix = "x" })).Root!;

        Assert.Equal("img", root.Attribute("role")!.Value);
        Assert.Equal("x-t x-d", root.Attribute("aria-labelledby")!.Value);
        Assert.Equal(figure.Title, root.Element(Svg + "title")!.Value);
        Assert.Equal($"{figure.Description} {figure.Summary}", root.Element(Svg + "desc")!.Value);
        Assert.DoesNotContain(root.Descendants(), e => e.Name.LocalName is "script" or "style" or "image" or "use");
        Assert.DoesNotContain(root.Descendants().Attributes(), a => a.Name.LocalName.StartsWith("on", StringComparison.Ordinal) || a.Name.LocalName is "style" or "href");
        Assert.DoesNotContain("NaN", root.ToString());
    }

    [Theory]
    [MemberData(nameof(Drawings))]
    public void No_word_leaves_the_drawing_and_no_two_words_overlap(string name, double width)
    {
        var root = XDocument.Parse(SvgWriter.Write(Samples.All[name], new SvgOptions { Width = width, LetterSize = width < 400 ? 13 : 16 })).Root!;
        var letter = Number(root, "font-size");
        var words = root.Descendants(Svg + "text").Select(t =>
        {
            var size = t.Attribute("font-size") is null ? letter : Number(t, "font-size");
            var wide = TextMeasure.Width(t.Value, size);
            var x = Number(t, "x");
            var left = t.Attribute("text-anchor")?.Value switch { "middle" => x - wide / 2, "end" => x - wide, _ => x };
            // Small letters reach about 0.75 above and 0.2 below the line they stand on.
            return (t.Value, Box: Box.At(left, Number(t, "y") - size * 0.75, wide, size * 0.95));
        }).ToArray();

        var sheet = Box.At(0, 0, Number(root, "width"), Number(root, "height"));
        Assert.All(words, w => Assert.True(sheet.Holds(w.Box), $"'{w.Value}' leaves the drawing: {w.Box} in {sheet}"));
        for (var i = 0; i < words.Length; i++)
        {
            for (var k = i + 1; k < words.Length; k++)
            {
                Assert.False(words[i].Box.Overlaps(words[k].Box), $"'{words[i].Value}' and '{words[k].Value}' overlap");
            }
        }
    }

    [Theory]
    [InlineData("year-of-four-towns")]
    [InlineData("fan")]
    public void Without_colour_no_two_lines_look_the_same(string name)
    {
        var root = XDocument.Parse(SvgWriter.Write(Samples.All[name], new SvgOptions { BlackOnly = true })).Root!;

        var lines = root.Descendants(Svg + "path").Where(p => p.Attribute("stroke-linecap") is not null).Select(p => p.Attribute("stroke-dasharray")?.Value ?? "").ToArray();
        Assert.Equal(Samples.All[name].Series.Length, lines.Length);
        Assert.Equal(lines.Length, lines.Distinct().Count());
        Assert.DoesNotContain(root.Descendants().Attributes(), a => a.Value is "#0072B2" or "#D55E00" or "#009E73");
    }

    [Fact]
    public void Equal_scales_draw_a_circle_as_a_circle()
    {
        var root = XDocument.Parse(SvgWriter.Write(Samples.All["plate"])).Root!;

        var edge = root.Descendants(Svg + "path").First(p => p.Attribute("fill-opacity") is not null).Attribute("d")!.Value;
        var points = edge.Trim('M', 'Z').Split('L').Select(p => p.Split(' ').Select(v => double.Parse(v, CultureInfo.InvariantCulture)).ToArray()).ToArray();
        var wide = points.Max(p => p[0]) - points.Min(p => p[0]);
        var high = points.Max(p => p[1]) - points.Min(p => p[1]);

        // Coordinates carry two decimals, so each length is good to 0.01.
        Assert.Equal(wide, high, 0.02);
        Assert.True(wide > 200);
    }

    [Fact]
    public void The_same_figure_gives_the_same_text_whatever_the_machine_speaks()
    {
        var before = CultureInfo.CurrentCulture;
        var text = SvgWriter.Write(Samples.All["one-day"]);
        try
        {
            CultureInfo.CurrentCulture = new CultureInfo("") { NumberFormat = { NumberDecimalSeparator = ",", NegativeSign = "~" } };
            Assert.Equal(text, SvgWriter.Write(Samples.All["one-day"]));
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Fact]
    public void A_size_out_of_range_is_said_in_one_sentence()
    {
        var error = Assert.Throws<ArgumentOutOfRangeException>(() => SvgWriter.Write(Samples.All["fan"], new SvgOptions { Width = 100 }));

        Assert.StartsWith("Width 100 px is outside 240 to 4000 px. Give a size in CSS pixels.", error.Message);
    }

    [Theory]
    [InlineData(Ink.Black, 21.0)]
    [InlineData(Ink.Blue, 5.2)]
    [InlineData(Ink.Vermilion, 3.9)]
    [InlineData(Ink.Green, 3.4)]
    public void Inks_stand_out_from_white_as_documented(Ink ink, double contrast)
    {
        // Relative luminance and contrast ratio as WCAG 2.2 defines them (https://www.w3.org/TR/WCAG22/#dfn-relative-luminance), from memory.
        var parts = Enumerable.Range(0, 3).Select(i => Convert.ToInt32(ink.Hex().Substring(1 + 2 * i, 2), 16) / 255.0)
            .Select(c => c <= 0.04045 ? c / 12.92 : Math.Pow((c + 0.055) / 1.055, 2.4)).ToArray();
        var luminance = 0.2126 * parts[0] + 0.7152 * parts[1] + 0.0722 * parts[2];

        // The documented numbers have one decimal.
        Assert.Equal(contrast, 1.05 / (luminance + 0.05), 0.051);
        Assert.True(1.05 / (luminance + 0.05) >= 3, "WCAG 2.2, 1.4.11: lines need 3 to 1");
    }

    private static double Number(XElement element, string name) => double.Parse(element.Attribute(name)!.Value, CultureInfo.InvariantCulture);

    [Fact]
    public void A_figure_that_has_nothing_to_show_yet_is_no_higher_than_its_title()
    {
        var asleep = Figure.Titled("Own noon").Says("Record your guess above.");
        Assert.True(asleep.IsEmpty);
        Assert.InRange(HeightOf(asleep), 20, 60);
        Assert.InRange(HeightOf(asleep with { Notes = [new Note(1, 2, "here")] }), 200, 400);

        static double HeightOf(Figure figure) =>
            double.Parse(System.Xml.Linq.XElement.Parse(SvgWriter.Write(figure)).Attribute("height")!.Value, System.Globalization.CultureInfo.InvariantCulture);
    }
}
