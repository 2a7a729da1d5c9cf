namespace SunLessons.Figures.Tests;

public class DataTableTests
{
    private static readonly Figure TwoLines = Figure.Titled("Two lines").AcrossClock("Dial time", 6, 18).Up("Error", "min")
        .Line("June", [6, 12], [-1.5, 0.25]).Line("December, cold", [6, 12], [double.NaN, -2]);

    [Fact]
    public void Series_at_the_same_positions_share_rows()
    {
        var table = TwoLines.Table;

        Assert.Equal(["Dial time", "June (min)", "December, cold (min)"], table.Headings);
        Assert.Equal(["06:00", "\u22121.50", "none"], table.Rows[0]);
        Assert.Equal(["12:00", "0.25", "\u22122"], table.Rows[1]);
    }

    [Fact]
    public void The_csv_is_for_programs() => Assert.Equal(
        "Dial time,June (min),\"December, cold (min)\"\r\n6,-1.5,\r\n12,0.25,-2\r\n",
        TwoLines.Table.ToCsv());

    [Fact]
    public void Series_at_different_positions_have_a_row_a_point()
    {
        var table = TwoLines.Point("here", 9, 1).Table;

        Assert.Equal(["Series", "Dial time", "Error (min)"], table.Headings);
        Assert.Equal(4, table.Rows.Length);
        Assert.Equal(["here", "09:00", "1.00"], table.Rows[^1]);
    }

    [Fact]
    public void The_html_ties_heads_to_columns_and_rows_and_hides_nothing_of_what_people_wrote()
    {
        var html = Figure.Titled("a < b").Across("x").Up("y").Line("<i>", [1], [2]).Table.ToHtml();

        Assert.Equal(
            "<table class=\"sunlessons-table\" tabindex=\"0\"><caption>a &lt; b</caption><thead><tr><th scope=\"col\">x</th><th scope=\"col\">&lt;i&gt;</th></tr></thead><tbody><tr><th scope=\"row\">1</th><td>2</td></tr></tbody></table>",
            html);
    }

    [Fact]
    public void A_long_table_shows_evenly_chosen_rows_and_says_so()
    {
        var html = Figure.Titled("long").Curve("c", 0, 1, x => x, points: 97).Table.ToHtml();

        Assert.Contains("(49 of 97 rows)", html);
        Assert.Equal(50, html.Split("<tr>").Length - 1);
    }
}
