using SunLessons.Notebooks.Markup;

namespace SunLessons.Notebooks.Tests.Markup;

public class LessonMarkupTests
{
    [Fact]
    public void A_link_to_a_named_value_becomes_a_place_that_the_page_fills() => Assert.Equal(
        "<p>Add <span class=\"value\" data-value=\"vigo-zone-step\">+94.9 min</span> to the dial.</p>\n",
        LessonMarkup.ToHtml("Add [+94.9 min](#value:vigo-zone-step) to the dial."));

    [Fact]
    public void Formulas_in_a_sentence_and_on_their_own_line_become_MathML_and_survive_the_cleaning()
    {
        string html = LessonMarkup.ToHtml("The step is $C$.\n\n$$\nC = \\frac{a}{\\sqrt{b_1^2}} - 15^\\circ\n$$\n");
        Assert.Contains("<math xmlns=\"http://www.w3.org/1998/Math/MathML\"><mrow><mi>C</mi></mrow></math>", html);
        Assert.Contains("<math xmlns=\"http://www.w3.org/1998/Math/MathML\" display=\"block\"><mrow><mi>C</mi><mo>=</mo><mfrac>", html);
        Assert.Contains("<msubsup><mi>b</mi><mn>1</mn><mn>2</mn></msubsup>", html);
    }

    [Fact]
    public void Tables_keep_their_headers_and_their_alignment_and_are_reached_by_keyboard() => Assert.Equal(
        "<table tabindex=\"0\">\n<thead>\n<tr>\n<th>Town</th>\n<th class=\"align-right\">C</th>\n</tr>\n</thead>\n<tbody>\n<tr>\n<td>Vigo</td>\n<td class=\"align-right\">1</td>\n</tr>\n</tbody>\n</table>\n",
        LessonMarkup.ToHtml("| Town | C |\n|---|--:|\n| Vigo | 1 |\n"));

    [Fact]
    public void Headings_get_ids_and_links_to_them_meet() => Assert.Equal(
        "<h2 id=\"n-your-dial\">Your dial</h2>\n<p><a href=\"#n-your-dial\">there</a></p>\n",
        LessonMarkup.ToHtml("## Your dial\n\n[there](#your-dial)"));

    [Fact]
    public void Links_to_other_places_cannot_reach_back_into_the_page() => Assert.Equal(
        "<p><a href=\"https://www.w3.org/TR/mathml-core/\" rel=\"noopener noreferrer\">W3C</a></p>\n",
        LessonMarkup.ToHtml("[W3C](https://www.w3.org/TR/mathml-core/)"));

    [Theory]
    [InlineData("teacher", "## For the teacher\n\nMarks.", "<details class=\"folded\"><summary><h2 id=\"notes-for-the-teacher\">For the teacher</h2></summary>\n<p>Marks.</p>\n</details>\n")]
    [InlineData("teacher", "Marks.", "<p>Marks.</p>\n")]
    [InlineData("activity", "## For you\n\nMarks.", "<h2 id=\"notes-for-you\">For you</h2>\n<p>Marks.</p>\n")]
    public void What_is_for_the_teacher_is_folded_away_under_its_own_heading(string role, string markdown, string html) =>
        Assert.Equal(html, LessonMarkup.CellHtml(Samples.Cell(role, markdown)));

    [Fact]
    public void Money_is_no_formula() => Assert.Equal("<p>It cost $5 then, not $6 more.</p>\n", LessonMarkup.ToHtml("It cost $5 then, not $6 more."));

    [Fact]
    public void Problems_of_formulas_are_listed()
    {
        Assert.Empty(LessonMarkup.FormulaProblems("$a$ and $$b$$\n\n$$\n\\frac12\n$$"));
        Assert.Single(LessonMarkup.FormulaProblems("$\\nonsense$"));
        Assert.Single(LessonMarkup.FormulaProblems("$$\n\\nonsense\n$$"));
    }
}
