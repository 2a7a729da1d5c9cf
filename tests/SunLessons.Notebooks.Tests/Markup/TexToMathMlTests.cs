using SunLessons.Notebooks.Markup;

namespace SunLessons.Notebooks.Tests.Markup;

public class TexToMathMlTests
{
    private const string Open = "<math xmlns=\"http://www.w3.org/1998/Math/MathML\"><mrow>";
    private const string Close = "</mrow></math>";

    // The expected forms follow the elements of MathML Core (W3C): msub, msup, msubsup, mfrac, msqrt, mroot.
    [Theory]
    [InlineData("x_1", "<msub><mi>x</mi><mn>1</mn></msub>")]
    [InlineData("x^{12}", "<msup><mi>x</mi><mrow><mn>12</mn></mrow></msup>")]
    [InlineData("x_i^2", "<msubsup><mi>x</mi><mi>i</mi><mn>2</mn></msubsup>")]
    [InlineData("x^2_i", "<msubsup><mi>x</mi><mi>i</mi><mn>2</mn></msubsup>")]
    [InlineData(@"\frac{a}{b}", "<mfrac><mrow><mi>a</mi></mrow><mrow><mi>b</mi></mrow></mfrac>")]
    [InlineData(@"\frac12", "<mfrac><mn>1</mn><mn>2</mn></mfrac>")]
    [InlineData(@"\sqrt{2}", "<msqrt><mrow><mn>2</mn></mrow></msqrt>")]
    [InlineData(@"\sqrt[3]{2}", "<mroot><mrow><mn>2</mn></mrow><mrow><mn>3</mn></mrow></mroot>")]
    [InlineData(@"\tan\theta", "<mi>tan</mi><mo>\u2061</mo><mspace width=\"0.167em\"></mspace><mi>θ</mi>")]
    [InlineData(@"\sin(x)", "<mi>sin</mi><mo>\u2061</mo><mrow><mo>(</mo><mi>x</mi><mo>)</mo></mrow>")]
    [InlineData(@"\sin^2 x", "<msup><mi>sin</mi><mn>2</mn></msup><mo>\u2061</mo><mspace width=\"0.167em\"></mspace><mi>x</mi>")]
    [InlineData("-8.72", "<mo>\u2212</mo><mn>8.72</mn>")]
    [InlineData(@"15^\circ", "<mrow><mn>15</mn><mi>°</mi></mrow>")]
    [InlineData("15°", "<mn>15</mn><mi>°</mi>")]
    [InlineData(@"\text{zone time }x", "<mtext>zone time\u00a0</mtext><mi>x</mi>")]
    [InlineData(@"\left(\frac12\right)", "<mrow><mo>(</mo><mfrac><mn>1</mn><mn>2</mn></mfrac><mo>)</mo></mrow>")]
    [InlineData("|a-b|", "<mrow><mo>|</mo><mi>a</mi><mo>\u2212</mo><mi>b</mi><mo>|</mo></mrow>")]
    [InlineData("a<b", "<mi>a</mi><mo>&lt;</mo><mi>b</mi>")]
    [InlineData("C = 4\\,(15 Z - \\lambda)", "<mi>C</mi><mo>=</mo><mn>4</mn><mspace width=\"0.167em\"></mspace><mrow><mo>(</mo><mn>15</mn><mi>Z</mi><mo>\u2212</mo><mi>λ</mi><mo>)</mo></mrow>")]
    public void The_subset_becomes_MathML(string tex, string expected)
    {
        MathMarkup markup = TexToMathMl.Convert(tex, display: false);
        Assert.Null(markup.Problem);
        Assert.Equal(Open + expected + Close, markup.Html);
    }

    [Theory]
    [InlineData(@"\begin{matrix}", "uses \"\\begin\", which is not known")]
    [InlineData(@"\frac{a}", "ends where something must follow")]
    [InlineData("(a", "ends before its \")\"")]
    [InlineData("a)", "has \")\" where nothing of the kind is known")]
    [InlineData("{a", "ends before its \"}\"")]
    [InlineData("x^2^3", "has two \"^\" in a row")]
    [InlineData(@"\text{a{b}}", "has more than plain words inside \\text")]
    [InlineData(@"\left(a", "has \\left without \\right")]
    [InlineData("\\", "ends with a lone \"\\\"")]
    [InlineData("a & b", "has \"&\" where nothing of the kind is known")]
    public void Anything_else_shows_its_source_and_says_what_was_not_understood(string tex, string problem)
    {
        MathMarkup markup = TexToMathMl.Convert(tex, display: false);
        Assert.StartsWith($"The formula \"{tex}\" {problem};", markup.Problem);
        Assert.Equal($"<code>{System.Net.WebUtility.HtmlEncode(tex)}</code>", markup.Html);
    }

    [Fact]
    public void A_formula_nested_without_end_does_not_bring_the_program_down()
    {
        Assert.NotNull(TexToMathMl.Convert(new string('{', 100_000), display: false).Problem);
        Assert.NotNull(TexToMathMl.Convert(string.Concat(Enumerable.Repeat(@"\sqrt", 100_000)), display: false).Problem);
    }

    [Fact]
    public void Markup_in_a_formula_stays_text() =>
        Assert.Equal(Open + "<mtext>&lt;img src=x&gt;</mtext>" + Close, TexToMathMl.Convert(@"\text{<img src=x>}", display: false).Html);
}
