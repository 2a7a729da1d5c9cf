using SunLessons.Notebooks.Markup;

namespace SunLessons.Notebooks.Tests.Markup;

public sealed class QuotedValuesTests
{
    private const string Html = """<p>Add <span class="value" data-value="vigo-step">+94.9 min</span> or <span class="value" data-value="other">7</span>.</p>""";

    [Fact]
    public void A_quoted_value_takes_what_its_cell_gave_and_others_keep_their_text()
    {
        Assert.Equal(
            """<p>Add <span class="value" data-value="vigo-step">+38.0 min</span> or <span class="value" data-value="other">7</span>.</p>""",
            QuotedValues.Fill(Html, new Dictionary<string, string> { ["vigo-step"] = "+38.0 min" }));
    }

    [Fact]
    public void Text_of_a_value_is_never_markup()
    {
        var filled = QuotedValues.Fill(Html, new Dictionary<string, string> { ["vigo-step"] = "<script>x</script>" });
        Assert.DoesNotContain("<script", filled, StringComparison.Ordinal);
        Assert.Contains("&lt;script&gt;", filled, StringComparison.Ordinal);
    }
}
