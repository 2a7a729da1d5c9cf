namespace SunLessons.Figures.Tests;

public class SvgSnapshotTests
{
    public static TheoryData<string> Names => [.. Samples.All.Keys];

    [Theory]
    [MemberData(nameof(Names))]
    public void A_figure_is_drawn_as_it_was(string name) => Snapshot.Matches(name + ".svg", SvgWriter.Write(Samples.All[name]));

    [Fact]
    public void A_narrow_drawing_is_drawn_as_it_was() =>
        Snapshot.Matches("year-of-four-towns.narrow.svg", SvgWriter.Write(Samples.All["year-of-four-towns"], new SvgOptions { Width = 340, Height = 340, LetterSize = 14 }));

    [Fact]
    public void A_black_drawing_is_drawn_as_it_was() =>
        Snapshot.Matches("year-of-four-towns.black.svg", SvgWriter.Write(Samples.All["year-of-four-towns"], new SvgOptions { BlackOnly = true }));
}
